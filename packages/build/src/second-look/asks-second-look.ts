import type { Joint, Machine, Stack } from '@rotorwright/machine';
import { criticalThings } from './critical-things.ts';
import { ranks, tiesOf } from './ties.ts';

/**
 * A group of which so many copies must fail before anything is lost asks for no second look: that takes three separate slips.
 */
const toSpare = 3;

/**
 * Steps that ask for a second look: joints and stacks that hold what a crash or an injury hangs on, down to the ground.
 *
 * What holds a part is: joints that hold it, stacks that it stands in, and what ties it to something nearer to the ground;
 * what closes such a stack, and joints that hold such a joint; then in the same way what holds that nearer part.
 *
 * @returns ids of joints and stacks, which are the ids of their steps
 * @source flight controls, rotors and drive as what is looked at again: EASA AMC 145.A.48(b) (read); how deep to follow what holds them: our own choice
 */
export function asksSecondLook(machine: Machine): ReadonlySet<string> {
  const thingOf = (id: string) => machine.thingOf.get(id) ?? id;
  const ties = tiesOf(machine);
  const rank = ranks(machine, ties);
  const rankOf = (id: string) => rank.get(id) ?? Infinity;
  const keepers = gathered([...machine.joints.values()], (joint) => joint.each.flatMap(({ holds }) => holds).map(thingOf).filter((id) => machine.joints.has(id)));
  const asking = new Set<string>();
  const seen = new Set<string>();
  const open = criticalThings(machine).map(thingOf);
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    for (const { thing, parts, held } of ties.get(id) ?? []) {
      const nearer = parts.filter((part) => rankOf(part) < rankOf(id));
      if (nearer.length > 0 || held.includes(id)) open.push(thing.id, ...nearer);
    }
    const thing = machine.joints.get(id) ?? machine.stacks.get(id);
    if (thing === undefined) continue;
    if (!('each' in thing) || lostWith(machine, thing) < toSpare) asking.add(id);
    open.push(...('each' in thing ? (keepers.get(id) ?? []).map((keeper) => keeper.id) : closersOf(thing).map(thingOf)));
  }
  return asking;
}

/** How many copies of a joint, or of its group, must be lost before it holds no more. */
function lostWith(machine: Machine, joint: Joint): number {
  const group = joint.group === undefined ? [joint] : [...machine.joints.values()].filter((other) => other.group === joint.group && other.module === joint.module);
  const copies = group.reduce((sum, { instances }) => sum + instances.length, 0);
  const enough = group.find((each) => each.enough !== undefined)?.enough ?? copies;
  return copies - enough + 1;
}

/** What closes a stack at its ends: a joint, or a part that a joint keeps. */
function closersOf({ order }: Stack): readonly string[] {
  return [order.at(0), order.at(-1)].flatMap((item) => (item === undefined || 'shoulder' in item ? [] : ['joint' in item ? item.joint : item.part]));
}

function gathered<Thing>(things: readonly Thing[], keysOf: (thing: Thing) => readonly string[]): ReadonlyMap<string, readonly Thing[]> {
  const found = new Map<string, Thing[]>();
  for (const thing of things) for (const key of new Set(keysOf(thing))) found.set(key, [...(found.get(key) ?? []), thing]);
  return found;
}
