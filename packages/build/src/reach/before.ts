import type { Joint, Machine, Stack } from '@rotorwright/machine';
import { stackMembers } from './graph.ts';

/** Why one tie must be undone before another, whatever else is done. */
export type Precedence =
  /** It holds, or sits on, that joint. */
  | 'keeps'
  /** It closes that stack. */
  | 'closes'
  /** It fixes parts inside that stack to each other. */
  | 'fixes'
  /** The stack hides that press fit or bond. */
  | 'hides';

export interface Before {
  /** Joint or stack that comes undone first. */
  readonly first: string;
  /** Joint or stack that needs it. */
  readonly later: string;
  readonly why: Precedence;
}

/** What follows from joints and stacks alone about the order in which they come undone. */
export function beforeRules(machine: Machine): readonly Before[] {
  const thingOf = (id: string) => machine.thingOf.get(id) ?? id;
  const joints = [...machine.joints.values()];
  const byNode = new Map<string, Joint[]>();
  for (const joint of joints) for (const part of new Set(named(joint))) byNode.set(part, [...(byNode.get(part) ?? []), joint]);
  const keeping = joints.flatMap((joint) => named(joint).map(thingOf).filter((id) => id !== joint.id && machine.joints.has(id)).map((later): Before => ({ first: joint.id, later, why: 'keeps' })));
  const stacks = [...machine.stacks.values()].flatMap((stack) => aboutStack(stack, byNode, thingOf));
  return [...new Map([...keeping, ...stacks].map((rule) => [`${rule.first}>${rule.later}`, rule])).values()];
}

function aboutStack(stack: Stack, byNode: ReadonlyMap<string, readonly Joint[]>, thingOf: (id: string) => string): readonly Before[] {
  const closers = new Set(stack.order.flatMap((item) => ('joint' in item ? [thingOf(item.joint)] : [])));
  const members = new Set(stackMembers(stack));
  const near = new Set([...members].flatMap((id) => byNode.get(id) ?? []));
  const between = [...near].filter((joint) => !closers.has(joint.id) && joint.each.some(({ seat, holds }) => seat !== undefined && members.has(seat) && holds.some((held) => members.has(held))));
  const ends = new Set([stack.order.at(0), stack.order.at(-1)].flatMap((item) => (item !== undefined && 'part' in item ? [item.part] : [])));
  const isEnd = (joint: Joint) => joint.each.some(({ holds }) => holds.some((held) => ends.has(held)));
  return [
    ...[...closers].map((first): Before => ({ first, later: stack.id, why: 'closes' })),
    ...between.map((joint): Before =>
      joint.kind === 'press' || joint.kind === 'bond' ? { first: stack.id, later: joint.id, why: 'hides' } : { first: joint.id, later: stack.id, why: isEnd(joint) ? 'closes' : 'fixes' },
    ),
  ];
}

function named(joint: Joint): readonly string[] {
  return joint.each.flatMap(({ seat, holds }) => [...(seat === undefined ? [] : [seat]), ...holds]);
}
