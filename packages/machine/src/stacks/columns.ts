import type { InstanceId, Member, Part, Stack, StackItem } from '../model/assembly.ts';
import type { Machine } from '../model/machine.ts';
import { isBearing, isThrust } from './bearings.ts';
import { tiedIn } from './tied.ts';

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

/** Rollers and needles have no ring that stops or carries along the axis: they go with the member that they sit in. */
const carriesNothing = /needle|roller|one-way/u;
const rolls = (part: Part): boolean => isBearing(part) && !carriesNothing.test(part.kind);

/** The member that joints tie a part to, over any number of them; nothing where they tie it to both or to neither. */
export function tiedMemberIn(machine: Machine, stack: Stack): (id: InstanceId) => Member | undefined {
  const tied = tiedIn(machine);
  const [toSpindle, toHousing] = [tied([stack.spindle]), tied(stack.housing)];
  return (id) => (toSpindle(id) === toHousing(id) ? undefined : toSpindle(id) ? 'spindle' : 'housing');
}

/** Sorts the things of a stack into its two columns, in its order from one end to the other. */
export function placesOf(machine: Machine, stack: Stack): readonly StackPlace[] {
  const tied = tiedMemberIn(machine, stack);
  const tiedMember = (id: InstanceId): Member | undefined => (id === stack.spindle ? 'spindle' : stack.housing.includes(id) ? 'housing' : tied(id));
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
