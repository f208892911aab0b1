import type { Joint, JointInstance, JointKind, Machine, Stack } from '@rotorwright/machine';
import { membersOf } from '../lookup.ts';
import { grouped, push } from './grouping.ts';

/** What can be in its place or not: one copy of a part, or of a joint that something else sits on (a link on a ball stud). */
export type Body = string;

export interface JointCopy {
  readonly joint: Joint;
  readonly copy: JointInstance;
}

/** One copy of a joint between two bodies. */
export interface Tie extends JointCopy {
  readonly between: readonly [Body, Body];
}

/** Copies that answer together for `enough`: those of one joint, or of all joints with the same `group`. */
export interface Group {
  readonly id: string;
  readonly joints: readonly Joint[];
  /** How many of its copies may be lost before it is. */
  readonly spare: number;
}

export interface Assembly {
  readonly machine: Machine;
  readonly bodies: ReadonlySet<Body>;
  readonly ground: ReadonlySet<Body>;
  readonly allTies: readonly Tie[];
  /** The same, those of one group between the same two bodies together. */
  readonly bundles: readonly (readonly Tie[])[];
  /** By body, in the order of the file. */
  readonly ties: ReadonlyMap<Body, readonly Tie[]>;
  /** Copies of joints that keep a copy of a joint where it is. */
  readonly keepers: ReadonlyMap<string, readonly JointCopy[]>;
  readonly groupOf: ReadonlyMap<string, Group>;
  readonly stacksOf: ReadonlyMap<Body, readonly Stack[]>;
}

/** What a joint passes on where the file does not say. A ball link turns on its ball, a ring only stops. */
const passedOn: Readonly<Record<JointKind, readonly string[]>> = (() => {
  const rigid = ['torque', 'place', 'motion'];
  return {
    screw: rigid, 'set-screw': rigid, bolt: rigid, nut: rigid, stud: rigid, 'threaded-end': rigid, 'threaded-rod': rigid,
    pin: rigid, clamp: rigid, press: rigid, bond: rigid, circlip: ['place'], 'ball-link': ['place', 'motion'],
  };
})();

const placeOnly: readonly string[] = ['place'];

/** A second line keeps in place; that it also drives or moves something must be said. */
export function carries(joint: Joint, what: 'torque' | 'place' | 'motion'): boolean {
  return (joint.carries ?? (joint.backup ? placeOnly : passedOn[joint.kind])).includes(what);
}

export function assemblyOf(machine: Machine): Assembly {
  const bodies = new Set<Body>();
  const ground = new Set<Body>();
  for (const { instances, ground: isGround } of machine.parts.values()) {
    for (const id of instances) {
      bodies.add(id);
      if (isGround) ground.add(id);
    }
  }
  for (const { kind, each } of machine.joints.values()) {
    for (const { seat, holds } of each) {
      if (seat !== undefined) bodies.add(seat);
      if (kind === 'ball-link') for (const held of holds) bodies.add(held);
    }
  }
  const allTies: Tie[] = [];
  const keepers = new Map<string, JointCopy[]>();
  for (const joint of machine.joints.values()) {
    for (const copy of joint.each) {
      allTies.push(...tiesOf(joint, copy, bodies));
      if (joint.kind !== 'ball-link') for (const held of copy.holds) if (machine.joints.has(machine.thingOf.get(held) ?? held)) push(keepers, held, { joint, copy });
    }
  }
  const ties = new Map<Body, Tie[]>();
  for (const tie of allTies) for (const body of tie.between) push(ties, body, tie);
  const stacksOf = new Map<Body, Stack[]>();
  for (const stack of machine.stacks.values()) for (const body of new Set(membersOf(stack))) push(stacksOf, body, stack);
  const groupOf = groupsOf(machine.joints.values());
  const bundles = [...grouped(allTies, ({ joint, between: [a, b] }) => `${groupOf.get(joint.id)!.id}|${a < b ? `${a}|${b}` : `${b}|${a}`}`).values()];
  return { machine, bodies, ground, allTies, bundles, ties, keepers, groupOf, stacksOf };
}

/**
 * The seat and each thing held; without a seat (a bolt with its own nut) all that is held, one with another. A stud that
 * something else sits on is itself tied to what it is screwed into.
 */
function tiesOf(joint: Joint, copy: JointInstance, bodies: ReadonlySet<Body>): readonly Tie[] {
  const { seat } = copy;
  const held = [...copy.holds, copy.id].filter((id) => bodies.has(id) && id !== seat);
  if (seat !== undefined) return held.map((body) => ({ joint, copy, between: [seat, body] }));
  return held.flatMap((body, i) => held.slice(i + 1).map((other): Tie => ({ joint, copy, between: [body, other] })));
}

function groupsOf(joints: Iterable<Joint>): ReadonlyMap<string, Group> {
  const members = grouped(joints, (joint) => (joint.group === undefined ? joint.id : `${joint.module}/(${joint.group})`));
  const found = new Map<string, Group>();
  for (const [id, group] of members) {
    const count = group.reduce((sum, { each }) => sum + each.length, 0);
    // Where the joints of a group say different numbers, the largest is the safe one.
    const wanted = group.reduce((most, { enough = 0 }) => Math.max(most, enough), 0);
    const known = { id, joints: group, spare: wanted === 0 ? 0 : Math.max(0, count - wanted) };
    for (const joint of group) found.set(joint.id, known);
  }
  return found;
}
