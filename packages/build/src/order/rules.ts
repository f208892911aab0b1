import { rememberedOf, type Access, type Joint, type Machine, type Measurement, type Stack, type Thing } from '@rotorwright/machine';
import { cureOf, isGlued } from '../rules/index.ts';
import { closersOf, jointsNaming, membersOf, moduleOf, namedBy, stacksWith, thingIdOf } from '../lookup.ts';
import type { Edge } from './graph.ts';
import { placingIn, type Placing } from './placing.ts';

/** Steps that come before what `behind` names is put in place; one of several ways may do. */
export interface AccessRule {
  readonly steps: readonly string[];
  readonly behind: Access;
  /** Side of the module that stays on: the last to be chosen. */
  readonly keep?: string;
}

export interface OrderRules {
  /** Facts: a loop among them is a fault of the file. */
  readonly must: readonly Edge[];
  readonly access: readonly AccessRule[];
  /** What usually follows from what holds what; gives way to facts. */
  readonly usual: readonly Edge[];
}

/** Everything that the file says about what comes first. */
export function orderRules(machine: Machine, placing: Placing): OrderRules {
  const joints = [...machine.joints.values()];
  const stacks = [...machine.stacks.values()];
  const measuring = [...machine.measurements.values()].map((measurement) => aboutMeasuring(machine, measurement));
  return {
    must: [
      ...strippingFirst(machine),
      ...stacks.flatMap((stack) => stack.order.flatMap((item) => ('joint' in item ? placing.of(item.joint).map((later) => ({ first: stack.id, later })) : []))),
      ...joints.flatMap((joint) => jointOnJoint(machine, joint, placing)),
      ...measuring.flatMap(({ must }) => must),
      ...writtenOrder(machine, placing),
      ...[...machine.parts.values()].flatMap((part) => placing.of(part.id).map((later) => ({ first: part.id, later }))),
    ],
    access: accessRules(machine, placing),
    usual: [
      ...stacks.flatMap((stack) => jointsInStack(machine, stack)),
      ...joints.filter(isGlued).flatMap((glued) => afterGlue(machine, glued, placing)),
      ...[...joints, ...stacks].flatMap((thing) => afterForeign(machine, thing, placing)),
      ...measuring.flatMap(({ usual }) => usual),
    ],
  };
}

function strippingFirst(machine: Machine): readonly Edge[] {
  return [...machine.modules.values()]
    .filter((module) => module.comes === 'assembled')
    .flatMap((module) => stepsOf(machine, module.id).map((later) => ({ first: module.id, later })));
}

/** Ids of all steps of a module but its stripping. */
function stepsOf(machine: Machine, module: string): readonly string[] {
  const { parts, joints, stacks, measurements, steps } = machine.modules.get(module) ?? { parts: [], joints: [], stacks: [], measurements: [], steps: [] };
  return [...parts, ...stacks, ...joints, ...measurements, ...steps];
}

/** A screw that keeps a pin comes after the pin; a link after its stud, whose thread must not turn any more. */
function jointOnJoint(machine: Machine, joint: Joint, placing: Placing): readonly Edge[] {
  return namedBy(joint).flatMap((id) => {
    const other = machine.joints.get(thingIdOf(machine, id));
    return other === undefined ? [] : placing.of(other.id).map((first) => ({ first, later: joint.id, cured: cureOf(machine, other) > 0 }));
  });
}

/** Steps that a measurement rests on: what puts in place what is measured, what closes it, what sets it. */
export function restsOn(machine: Machine, measurement: Measurement): readonly string[] {
  const { must, usual } = aboutMeasuring(machine, measurement);
  return [...must, ...usual].map(({ first }) => first);
}

const aboutMeasuring = rememberedOf((machine, measurement: Measurement): Pick<OrderRules, 'must' | 'usual'> => {
  const placing = placingIn(machine);
  return { must: beforeMeasuring(machine, measurement, placing), usual: [...afterMounting(machine, measurement, placing), ...feltWhole(machine, measurement)] };
});

/** What is measured is there first, and so is what sets it. It is measured while the compound is still wet. */
function beforeMeasuring(machine: Machine, measurement: Measurement, placing: Placing): readonly Edge[] {
  const stack = machine.stacks.get(thingIdOf(machine, measurement.of ?? ''));
  const placed = measured(machine, measurement).flatMap((id) => {
    const steps = placing.of(id);
    // A part is there when its own module has put it there; who else hangs on it later does not matter.
    return machine.parts.has(thingIdOf(machine, id)) ? steps.filter((step) => moduleOf(machine, step) === moduleOf(machine, id)) : steps;
  });
  return [...placed, ...(stack === undefined ? [] : closersOf(machine, stack)), ...measurement.setBy.flatMap(placing.of)].map((first) => ({ first, later: measurement.id }));
}

/** Parts of a measured mesh or sensor; else the thing that is measured. */
export function measured(machine: Machine, { of }: Measurement): readonly string[] {
  if (of === undefined) return [];
  const coupling = machine.couplings.get(of);
  const parts = coupling === undefined ? [machine.sensors.get(of)?.part] : [coupling.driver.part, coupling.driven.part];
  const known = parts.filter((part) => part !== undefined);
  return machine.thingOf.has(of) || known.length === 0 ? [of] : known;
}

/** Steps that a written step names. */
export function namedSteps(machine: Machine, id: string, placing: Placing): readonly string[] {
  return machine.modules.has(id) ? stepsOf(machine, id) : placing.of(id);
}

function writtenOrder(machine: Machine, placing: Placing): readonly Edge[] {
  const named = (id: string) => namedSteps(machine, id, placing);
  return [...machine.steps.values()].flatMap((step) => [
    ...step.after.flatMap(named).map((first) => ({ first, later: step.id })),
    ...step.before.flatMap(named).map((later) => ({ first: step.id, later })),
  ]);
}

function accessRules(machine: Machine, placing: Placing): readonly AccessRule[] {
  const rule = (thing: Thing & { readonly behind?: Access }, steps: readonly string[]): readonly AccessRule[] => {
    const keep = machine.modules.get(thing.module)?.keep;
    return thing.behind === undefined ? [] : [{ steps, behind: thing.behind, ...(keep === undefined ? {} : { keep }) }];
  };
  const modules = [...machine.modules.values()].flatMap((module) => {
    const mounting = placing.mounting(module.id);
    return module.behind === undefined ? [] : [{ steps: mounting.length > 0 ? mounting : stepsOf(machine, module.id), behind: module.behind }];
  });
  return [
    ...modules,
    ...[...machine.joints.values()].flatMap((joint) => rule(joint, [joint.id])),
    ...[...machine.parts.values()].flatMap((part) => rule(part, placing.of(part.id))),
  ];
}

/** Joints between two members of a stack: pressed and glued ones come ready into the stack, the others fix what stands in it. */
function jointsInStack(machine: Machine, stack: Stack): readonly Edge[] {
  const members = new Set(membersOf(stack));
  const closers = new Set(closersOf(machine, stack));
  const isBetween = (joint: Joint) => joint.each.some(({ seat, holds }) => seat !== undefined && members.has(seat) && holds.some((held) => members.has(held)));
  return jointsNaming(machine, members)
    .filter((joint) => !closers.has(joint.id) && isBetween(joint))
    .map((joint) => (joint.kind === 'press' || joint.kind === 'bond' ? { first: joint.id, later: stack.id, cured: isGlued(joint) } : { first: stack.id, later: joint.id }));
}

/** Nothing is built on a bond before it holds. */
function afterGlue(machine: Machine, glued: Joint, placing: Placing): readonly Edge[] {
  // What belongs to another module is in its place already: a pad on a plate does not keep the plate from being fitted.
  const parts = new Set(namedBy(glued).filter((id) => moduleOf(machine, id) === glued.module));
  const users = [...new Set([...parts].flatMap(placing.of))];
  const seated = jointsNaming(machine, parts).filter((joint) => joint.each.some(({ seat }) => seat !== undefined && parts.has(seat))).map(({ id }) => id);
  return [...new Set([...users, ...seated])].map((later) => ({ first: glued.id, later, cured: true }));
}

/** A part of another module stands in its own module before something is fixed to it. */
function afterForeign(machine: Machine, thing: Joint | Stack, placing: Placing): readonly Edge[] {
  const named = 'each' in thing ? namedBy(thing) : membersOf(thing);
  return named.flatMap((id) => {
    const home = moduleOf(machine, id);
    if (home === undefined || home === thing.module) return [];
    return placing.of(id).filter((step) => moduleOf(machine, step) === home).map((first) => ({ first, later: thing.id }));
  });
}

/** A mesh is measured with both modules in the machine. */
function afterMounting(machine: Machine, measurement: Measurement, placing: Placing): readonly Edge[] {
  const coupling = measurement.of === undefined ? undefined : machine.couplings.get(measurement.of);
  const parts = [coupling?.driver.part, coupling?.driven.part].filter((part) => part !== undefined);
  return parts.flatMap((part) => placing.mounting(moduleOf(machine, part) ?? '')).map((first) => ({ first, later: measurement.id }));
}

/** How freely a part moves is felt when everything in its module that touches it is on. */
function feltWhole(machine: Machine, { id, quantity, of, module }: Measurement): readonly Edge[] {
  const part = of === undefined ? undefined : machine.parts.get(thingIdOf(machine, of));
  if (quantity !== 'drag' || part === undefined) return [];
  const copies = [part.id, ...part.instances];
  return [...stacksWith(machine, copies), ...jointsNaming(machine, copies)].filter((thing) => thing.module === module).map((thing) => ({ first: thing.id, later: id }));
}
