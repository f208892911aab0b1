import { remembered, type Coupling, type Joint, type Machine, type Stack, type Thing } from '@rotorwright/machine';

/** The thing that an id means: itself, or the thing of which it is a copy. */
export function thingIdOf(machine: Machine, id: string): string {
  return machine.thingOf.get(id) ?? id;
}

/** Module of a part, joint or stack, or of a copy of one. */
export function moduleOf(machine: Machine, id: string): string | undefined {
  const thingId = thingIdOf(machine, id);
  return (machine.parts.get(thingId) ?? machine.joints.get(thingId) ?? machine.stacks.get(thingId))?.module;
}

/** Everything that a joint names, once for each time that it does. */
export const namedBy = remembered((joint: Joint): readonly string[] => joint.each.flatMap(({ seat, holds }) => [...(seat === undefined ? [] : [seat]), ...holds]));

/** Parts that a stack brings together: its spindle, its housing, and what is in it. */
export const membersOf = remembered((stack: Stack): readonly string[] => [stack.spindle, ...stack.housing, ...stack.order.flatMap((item) => ('part' in item ? [item.part] : []))]);

/** Joints that close a stack. */
export const closersOf = (machine: Machine, stack: Stack): readonly string[] => stack.order.flatMap((item) => ('joint' in item ? [thingIdOf(machine, item.joint)] : []));

/** Ids of all parts, joints and stacks of a module, and of their copies. */
export function idsIn(machine: Machine, module: string): readonly string[] {
  const { parts, joints, stacks } = machine.modules.get(module) ?? { parts: [], joints: [], stacks: [] };
  const ids = (things: ReadonlyMap<string, Thing>, own: readonly string[]) => own.flatMap((id) => [id, ...(things.get(id)?.instances ?? [])]);
  return [...new Set([...ids(machine.parts, parts), ...ids(machine.joints, joints), ...ids(machine.stacks, stacks)])];
}

/** Joints that name any of some ids, in the order of the file. */
export function jointsNaming(machine: Machine, ids: Iterable<string>): readonly Joint[] {
  return inFileOrder(machine, jointsByName(machine), ids);
}

/** Stacks with any of some parts, in the order of the file. */
export function stacksWith(machine: Machine, ids: Iterable<string>): readonly Stack[] {
  return inFileOrder(machine, stacksByMember(machine), ids);
}

const jointsByName = remembered((machine: Machine) => gathered(machine.joints.values(), namedBy));
const stacksByMember = remembered((machine: Machine) => gathered(machine.stacks.values(), membersOf));
/** Places of joints, then of stacks, in the file. */
export const filePlaces = remembered((machine: Machine): ReadonlyMap<string, number> => new Map([...machine.joints.keys(), ...machine.stacks.keys()].map((id, at) => [id, at])));

function inFileOrder<Kind extends Thing>(machine: Machine, byId: ReadonlyMap<string, readonly Kind[]>, ids: Iterable<string>): readonly Kind[] {
  const places = filePlaces(machine);
  const found = new Set<Kind>();
  for (const id of ids) for (const thing of byId.get(id) ?? []) found.add(thing);
  return [...found].sort((a, b) => (places.get(a.id) ?? 0) - (places.get(b.id) ?? 0));
}

/** For each copy of a part: the couplings of which it is a side. */
export const couplingsOn = remembered((machine: Machine): ReadonlyMap<string, readonly Coupling[]> =>
  gathered(machine.couplings.values(), ({ driver, driven }) => [driver.part, driven.part].filter((part) => part !== undefined)));

/** Items by each of their keys, in the order in which they come. */
export function gathered<Item, Key>(items: Iterable<Item>, keysOf: (item: Item) => Iterable<Key>): ReadonlyMap<Key, readonly Item[]> {
  const found = new Map<Key, Item[]>();
  for (const item of items) {
    for (const key of new Set(keysOf(item))) {
      const known = found.get(key);
      if (known === undefined) found.set(key, [item]);
      else known.push(item);
    }
  }
  return found;
}
