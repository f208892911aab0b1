import { remembered, type Joint, type Machine, type Stack } from '@rotorwright/machine';
import { closersOf, jointsNaming, membersOf, namedBy, thingIdOf } from '../lookup.ts';

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
export const beforeRules = remembered((machine: Machine): readonly Before[] => {
  const keeping = [...machine.joints.values()].flatMap((joint) => namedBy(joint).map((id) => thingIdOf(machine, id)).filter((id) => id !== joint.id && machine.joints.has(id)).map((later): Before => ({ first: joint.id, later, why: 'keeps' })));
  const stacks = [...machine.stacks.values()].flatMap((stack) => aboutStack(machine, stack));
  return [...new Map([...keeping, ...stacks].map((rule) => [`${rule.first}>${rule.later}`, rule])).values()];
});

function aboutStack(machine: Machine, stack: Stack): readonly Before[] {
  const closers = new Set(closersOf(machine, stack));
  const members = new Set(membersOf(stack));
  const between = jointsNaming(machine, members).filter((joint) => !closers.has(joint.id) && joint.each.some(({ seat, holds }) => seat !== undefined && members.has(seat) && holds.some((held) => members.has(held))));
  const ends = new Set([stack.order.at(0), stack.order.at(-1)].flatMap((item) => (item !== undefined && 'part' in item ? [item.part] : [])));
  const isEnd = (joint: Joint) => joint.each.some(({ holds }) => holds.some((held) => ends.has(held)));
  return [
    ...[...closers].map((first): Before => ({ first, later: stack.id, why: 'closes' })),
    ...between.map((joint): Before =>
      joint.kind === 'press' || joint.kind === 'bond' ? { first: stack.id, later: joint.id, why: 'hides' } : { first: joint.id, later: stack.id, why: isEnd(joint) ? 'closes' : 'fixes' },
    ),
  ];
}
