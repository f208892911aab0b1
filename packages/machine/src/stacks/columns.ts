import type { InstanceId, Member, Part, Stack, StackItem } from '../model/assembly.ts';
import type { Machine } from '../model/machine.ts';

/**
 * What stands at one place of a stack.
 *   stop     it is fixed to its member: nothing passes it
 *   loose    it goes with its member and passes on what pushes it
 *   radial   a rolling bearing: one ring belongs to each member
 *   thrust   a thrust bearing: one washer belongs to each member, and the load changes over inside it
 *   unknown  the file does not say with which member it goes
 */
export type PlaceKind = 'stop' | 'loose' | 'radial' | 'thrust' | 'unknown';

export interface StackPlace {
  readonly item: StackItem;
  /** Part, joint that closes the stack, or the part that has the shoulder. */
  readonly id: InstanceId;
  readonly kind: PlaceKind;
  /** Stops and loose things. */
  readonly member?: Member;
}

const partAt = (machine: Machine, id: InstanceId): Part | undefined => machine.parts.get(machine.thingOf.get(id) ?? id);

export function isBearing(part: Part): boolean {
  return /deep-groove|thrust-ball|angular-contact|bearing|needle|roller|one-way/u.test(part.kind);
}

/** Rollers and needles have no ring that stops or carries along the axis: they go with the member that they sit in. */
const carriesNothing = /needle|roller|one-way/u;
export const isThrust = (part: Part): boolean => /thrust/u.test(part.kind);
const rolls = (part: Part): boolean => isBearing(part) && !carriesNothing.test(part.kind);

/** Parts that joints tie to a member, over any number of joints; bearings and the ground end the spread. */
export function tiedTo(machine: Machine, from: readonly InstanceId[]): ReadonlySet<InstanceId> {
  const tied = new Set(from);
  for (const part of tied) {
    const at = partAt(machine, part);
    if (!at || at.ground || isBearing(at)) continue;
    for (const joint of machine.joints.values()) {
      for (const { seat, holds } of joint.each) {
        if (seat === part) for (const held of holds) tied.add(held);
        else if (seat !== undefined && holds.includes(part)) tied.add(seat);
      }
    }
  }
  return tied;
}

/** Sorts the things of a stack into its two columns, in its order from one end to the other. */
export function placesOf(machine: Machine, stack: Stack): readonly StackPlace[] {
  const tied: Readonly<Record<Member, ReadonlySet<InstanceId>>> = { spindle: tiedTo(machine, [stack.spindle]), housing: tiedTo(machine, stack.housing) };
  const tiedMember = (id: InstanceId): Member | undefined => {
    if (id === stack.spindle) return 'spindle';
    if (stack.housing.includes(id)) return 'housing';
    return tied.spindle.has(id) === tied.housing.has(id) ? undefined : tied.spindle.has(id) ? 'spindle' : 'housing';
  };
  const memberOf = (id: InstanceId, seen: readonly InstanceId[] = []): Member | undefined => {
    const next = partAt(machine, id)?.turnsWith;
    return tiedMember(id) ?? (next === undefined || seen.includes(next) ? undefined : memberOf(next, [...seen, id]));
  };
  const closing = (id: InstanceId): Member | undefined => {
    const joint = machine.joints.get(machine.thingOf.get(id) ?? id);
    const one = joint?.each.find((each) => each.id === id) ?? joint?.each[0];
    const members = new Set([one?.seat, ...(one?.holds ?? [])].flatMap((part) => (part === undefined ? [] : (tiedMember(part) ?? []))));
    return members.size === 1 ? [...members][0] : undefined;
  };
  const place = (item: StackItem, id: InstanceId, kind: PlaceKind, member: Member | undefined): StackPlace => (member === undefined ? { item, id, kind: 'unknown' } : { item, id, kind, member });
  return stack.order.map((item): StackPlace => {
    if ('joint' in item) return place(item, item.joint, 'stop', closing(item.joint));
    if ('shoulder' in item) return place(item, item.shoulder, 'stop', tiedMember(item.shoulder));
    const part = partAt(machine, item.part);
    if (part && rolls(part)) return { item, id: item.part, kind: isThrust(part) ? 'thrust' : 'radial' };
    return place(item, item.part, tiedMember(item.part) === undefined ? 'loose' : 'stop', memberOf(item.part));
  });
}
