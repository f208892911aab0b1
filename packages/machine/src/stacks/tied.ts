import type { InstanceId } from '../model/assembly.ts';
import type { Machine } from '../model/machine.ts';
import { remembered } from '../remembered.ts';
import { isBearing } from './bearings.ts';

/** Whether joints tie a part to any of `from`, over any number of joints; bearings end the spread, and so does the ground unless it is what was asked for. */
export type Tied = (from: readonly InstanceId[]) => (part: InstanceId) => boolean;

/**
 * Sorts the parts of a machine into groups, once: those between which ties lead without passing an end. A part that is
 * no end is in one group; an end, such as a bearing, is in that of each part that it is tied to.
 */
export const tiedIn = remembered((machine: Machine): Tied => {
  const partOf = (id: InstanceId) => machine.parts.get(machine.thingOf.get(id) ?? id);
  const isGround = (id: InstanceId): boolean => partOf(id)?.ground === true;
  const isEnd = (id: InstanceId): boolean => {
    const part = partOf(id);
    return part === undefined || part.ground || isBearing(part);
  };
  const beside = neighbours(machine);
  const groups = new Map<InstanceId, Set<number>>();
  const put = (id: InstanceId, group: number) => void (groups.get(id)?.add(group) ?? groups.set(id, new Set([group])));
  let count = 0;
  for (const start of beside.keys()) {
    if (isEnd(start) || groups.has(start)) continue;
    put(start, count);
    const open = [start];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      for (const other of beside.get(id) ?? []) {
        if (groups.get(other)?.has(count) === true) continue;
        put(other, count);
        if (!isEnd(other)) open.push(other);
      }
    }
    count += 1;
  }
  return (from) => {
    const own = new Set(from.flatMap((id) => (isEnd(id) && !isGround(id) ? [] : [...(groups.get(id) ?? [])])));
    // Between two ends there is no group.
    const beneath = new Set(from.filter(isGround).flatMap((id) => beside.get(id) ?? []));
    return (id) => from.includes(id) || beneath.has(id) || [...(groups.get(id) ?? [])].some((group) => own.has(group));
  };
});

/** For each part those that a joint brings together with it: seats with what they hold. */
function neighbours(machine: Machine): ReadonlyMap<InstanceId, readonly InstanceId[]> {
  const beside = new Map<InstanceId, InstanceId[]>();
  const note = (id: InstanceId, other: InstanceId) => void (beside.get(id)?.push(other) ?? beside.set(id, [other]));
  for (const joint of machine.joints.values()) {
    for (const { seat, holds } of joint.each) {
      if (seat === undefined) continue;
      for (const held of holds) {
        note(seat, held);
        note(held, seat);
      }
    }
  }
  return beside;
}
