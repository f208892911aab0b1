import type { Joint, Machine, Stack } from '@rotorwright/machine';

/** Who puts what in its place: looked up often while the order is worked out. */
export interface Placing {
  /** Steps that put a part in place, or that make a joint, a stack, or fix a module to the rest of the machine. */
  readonly of: (id: string) => readonly string[];
  /** Joints that fix a module copy to others. */
  readonly mounting: (module: string) => readonly string[];
}

export function placingIn(machine: Machine): Placing {
  const byPart = new Map<string, Set<string>>();
  const note = (instance: string, step: string) => {
    for (const id of new Set([instance, machine.thingOf.get(instance) ?? instance])) byPart.set(id, (byPart.get(id) ?? new Set()).add(step));
  };
  for (const joint of machine.joints.values()) for (const { holds } of joint.each) for (const held of holds) note(held, joint.id);
  for (const stack of machine.stacks.values()) for (const id of membersOf(stack)) note(id, stack.id);

  const mountings = new Map([...machine.modules.keys()].map((module) => [module, mountingOf(machine, module)]));
  const mounting = (module: string) => mountings.get(module) ?? [];
  const of = (id: string): readonly string[] => {
    const thingId = machine.thingOf.get(id) ?? id;
    if (machine.joints.has(thingId) || machine.stacks.has(thingId) || machine.measurements.has(thingId) || machine.steps.has(thingId)) return [thingId];
    return machine.modules.has(id) ? mounting(id) : [...(byPart.get(id) ?? [])];
  };
  return { of, mounting };
}

/** Parts that a stack brings together: what is in it, its spindle and its housing. */
export function membersOf(stack: Stack): readonly string[] {
  return [...stack.order.flatMap((item) => ('part' in item ? [item.part] : [])), stack.spindle, ...stack.housing];
}

/** Everything that a joint names. */
export function namedBy(joint: Joint): readonly string[] {
  return joint.each.flatMap(({ seat, holds }) => [...(seat === undefined ? [] : [seat]), ...holds]);
}

export function moduleOf(machine: Machine, id: string): string | undefined {
  const thingId = machine.thingOf.get(id) ?? id;
  return (machine.parts.get(thingId) ?? machine.joints.get(thingId) ?? machine.stacks.get(thingId))?.module;
}

function mountingOf(machine: Machine, module: string): readonly string[] {
  const own = (machine.modules.get(module)?.joints ?? []).filter((id) => reachesOut(machine, machine.joints.get(id)));
  if (own.length > 0) return own;
  const holdsOurs = (joint: Joint) => joint.module !== module && joint.each.some(({ holds }) => holds.some((held) => moduleOf(machine, held) === module));
  return [...machine.joints.values()].filter(holdsOurs).map(({ id }) => id);
}

export function reachesOut(machine: Machine, joint: Joint | undefined): boolean {
  return joint !== undefined && namedBy(joint).some((id) => {
    const home = moduleOf(machine, id);
    return home !== undefined && home !== joint.module;
  });
}
