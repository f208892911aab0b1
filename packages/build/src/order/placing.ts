import { remembered, rememberedOf, type Joint, type Machine } from '@rotorwright/machine';
import { idsIn, jointsNaming, membersOf, moduleOf, namedBy, thingIdOf } from '../lookup.ts';

/** Who puts what in its place: looked up often while the order is worked out. */
export interface Placing {
  /** Steps that put a part in place, or that make a joint, a stack, or fix a module to the rest of the machine. */
  readonly of: (id: string) => readonly string[];
  /** Joints that fix a module copy to others. */
  readonly mounting: (module: string) => readonly string[];
}

export const placingIn = remembered((machine: Machine): Placing => {
  const byPart = new Map<string, string[]>();
  // What one step puts in place is noted in one go: it is in the list already when it is the last there.
  const noteAt = (id: string, step: string) => {
    const known = byPart.get(id);
    if (known === undefined) byPart.set(id, [step]);
    else if (known.at(-1) !== step) known.push(step);
  };
  const note = (instance: string, step: string) => {
    noteAt(instance, step);
    noteAt(thingIdOf(machine, instance), step);
  };
  for (const joint of machine.joints.values()) for (const { holds } of joint.each) for (const held of holds) note(held, joint.id);
  for (const stack of machine.stacks.values()) for (const id of membersOf(stack)) note(id, stack.id);

  const mountings = new Map([...machine.modules.keys()].map((module) => [module, mountingOf(machine, module)]));
  const mounting = (module: string) => mountings.get(module) ?? [];
  const of = (id: string): readonly string[] => {
    const thingId = thingIdOf(machine, id);
    if (machine.joints.has(thingId) || machine.stacks.has(thingId) || machine.measurements.has(thingId) || machine.steps.has(thingId)) return [thingId];
    return machine.modules.has(id) ? mounting(id) : (byPart.get(id) ?? []);
  };
  return { of, mounting };
});

function mountingOf(machine: Machine, module: string): readonly string[] {
  const isMounting = (joint: Joint | undefined) => joint !== undefined && reachesOut(machine, joint);
  const own = (machine.modules.get(module)?.joints ?? []).filter((id) => isMounting(machine.joints.get(id)));
  if (own.length > 0) return own;
  const holdsOurs = (joint: Joint) => joint.module !== module && joint.each.some(({ holds }) => holds.some((held) => moduleOf(machine, held) === module));
  return jointsNaming(machine, idsIn(machine, module)).filter(holdsOurs).map(({ id }) => id);
}

/** A joint that names a thing of another module. */
export const reachesOut = rememberedOf((machine, joint: Joint): boolean => namedBy(joint).some((id) => {
  const home = moduleOf(machine, id);
  return home !== undefined && home !== joint.module;
}));
