import type { InstanceId, Machine, Part, Stack, StackItem } from '@rotorwright/machine';
import { isBearing } from './members.ts';

/** What a thing in a stack goes with: the spindle, the housing, both (a bearing), or the file does not say. */
export type Column = 'spindle' | 'housing' | 'bearing' | 'unknown';

export interface StackPlace {
  readonly item: StackItem;
  /** Part, or joint that closes the stack. */
  readonly id: InstanceId;
  readonly column: Column;
}

const partAt = (machine: Machine, instance: InstanceId): Part | undefined => machine.parts.get(machine.thingOf.get(instance) ?? instance);

/** Parts that joints tie to some part, over any number of joints; bearings and the ground end the spread. */
function tiedTo(machine: Machine, from: readonly InstanceId[]): ReadonlySet<InstanceId> {
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
    if (at.turnsWith !== undefined) tied.add(at.turnsWith);
  }
  return tied;
}

/** Sorts the things of a stack into its two columns, in its order from one end to the other. */
export function columnsOf(machine: Machine, stack: Stack): readonly StackPlace[] {
  const spindle = tiedTo(machine, [stack.spindle]);
  const housing = tiedTo(machine, stack.housing);
  const columnOfPart = (id: InstanceId): Column => {
    if (id === stack.spindle) return 'spindle';
    if (stack.housing.includes(id)) return 'housing';
    const part = partAt(machine, id);
    const goesWith = part?.turnsWith;
    if (goesWith !== undefined) return columnOfPart(goesWith);
    const onSpindle = spindle.has(id);
    return onSpindle === housing.has(id) ? 'unknown' : onSpindle ? 'spindle' : 'housing';
  };
  const columnOfJoint = (id: InstanceId): Column => {
    const joint = machine.joints.get(machine.thingOf.get(id) ?? id);
    const instance = joint?.each.find((each) => each.id === id) ?? joint?.each[0];
    const columns = new Set([instance?.seat, ...(instance?.holds ?? [])].filter((part) => part !== undefined && partAt(machine, part)).map((part) => columnOfPart(part!)).filter((column) => column === 'spindle' || column === 'housing'));
    return columns.size === 1 ? [...columns][0]! : 'unknown';
  };
  return stack.order.map((item): StackPlace => {
    if ('joint' in item) return { item, id: item.joint, column: columnOfJoint(item.joint) };
    if ('shoulder' in item) return { item, id: item.shoulder, column: columnOfPart(item.shoulder) };
    const part = partAt(machine, item.part);
    return { item, id: item.part, column: part && isBearing(part) ? 'bearing' : columnOfPart(item.part) };
  });
}

/** Which bearings take a push, or the things whose column must be known first. */
export interface Carriers {
  readonly bearings: readonly InstanceId[];
  readonly unknown: readonly InstanceId[];
}

/**
 * A bearing carries a push when it is backed by a stop of the pushed column on the side that the push comes from,
 * and by a stop of the other column on the side that it goes to. Between two bearings every stop counts for both;
 * bearings that touch pass the push on.
 *
 * @param towards  0 or 1: the end of the stack that the pushed column is pushed to
 */
export function carriersOf(places: readonly StackPlace[], pushed: 'spindle' | 'housing', towards: 0 | 1): Carriers {
  const order = towards === 1 ? places : places.toReversed();
  const other = pushed === 'spindle' ? 'housing' : 'spindle';
  const unknown = new Set<InstanceId>();
  const backed = (from: number, step: 1 | -1, column: Column): boolean => {
    let between = false;
    const doubtful: InstanceId[] = [];
    for (let index = from + step; order[index]; index += step) {
      const place = order[index]!;
      if (place.column === 'bearing') {
        if (between) break;
        continue;
      }
      between = true;
      if (place.column === column) return true;
      if (place.column === 'unknown') doubtful.push(place.id);
    }
    for (const id of doubtful) unknown.add(id);
    return false;
  };
  const bearings = order.flatMap((place, index) => (place.column === 'bearing' && backed(index, -1, pushed) && backed(index, 1, other) ? [place.id] : []));
  return { bearings, unknown: [...unknown] };
}
