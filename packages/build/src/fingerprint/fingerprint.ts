import type { Coupling, Joint, Machine, Measurement, Part, Sensor, Stack, StackItem, StackLoad, WrittenStep } from '@rotorwright/machine';
import { canonicalJson, sha256Hex } from '../canonical/index.ts';
import { thingWith } from '../words/index.ts';
import { gearsOf } from './gears.ts';
import { normalNumber, normalThread, normalWords } from './normal.ts';

/**
 * Versions of the rule below; a rule that hashes anything else gets a new number. New signatures carry the newest.
 * f1: a stack whose thrust comes from a mesh holds the whole mesh, so that a pinion of one tooth more made every stack
 *     fall that its mate's thrust runs through. f2: it holds which way the thrust goes, which is all that its order depends on.
 */
export type FingerprintRule = 'f1' | 'f2';
const newest: FingerprintRule = 'f2';

/**
 * Hash over what is done at a thing, in values alone: units normalised, numbers to 12 significant digits. Ids are not in
 * it, so that a thing may be renamed; words, masses, positions, access, prices, windows and computed values are not either.
 *
 * @param thingId id of a part, joint, stack, measurement or written step, of one of its copies, or of a module (its stripping)
 * @returns       `f2:` and 64 hex digits
 * @throws RangeError when the machine has no such thing
 */
export function fingerprint(machine: Machine, thingId: string): string {
  if (thingWith(machine, machine.thingOf.get(thingId) ?? thingId) === undefined && !machine.modules.has(thingId)) throw new RangeError(`fingerprint: the machine has no thing ${thingId}`);
  return fingerprinter(machine)(thingId);
}

/** As `fingerprint`, for many things of one machine: each is hashed once. */
export function fingerprinter(machine: Machine, rule: FingerprintRule = newest): (thingId: string) => string {
  const known = new Map<string, string>();
  /** Things on the way down: two joints that hold each other would go round for ever. */
  const open = new Set<string>();
  let loops = 0;

  const print = (id: string): string => {
    const thingId = machine.thingOf.get(id) ?? id;
    const done = known.get(thingId);
    if (done !== undefined) return done;
    if (open.has(thingId)) {
      loops += 1;
      return 'itself';
    }
    const loopsBefore = loops;
    open.add(thingId);
    const content = describe(thingId);
    open.delete(thingId);
    // A reference that leads nowhere is a finding of the reader; here it is only something else than any thing.
    const hash = `${rule}:${sha256Hex(canonicalJson(content ?? { nothing: thingId }))}`;
    // What was met inside a loop depends on where one came in; such a hash is kept only for the thing that was asked for.
    if (open.size === 0 || loops === loopsBefore) known.set(thingId, hash);
    return hash;
  };

  const describe = (id: string): unknown => {
    const part = machine.parts.get(id);
    if (part !== undefined) return describePart(machine, part);
    const joint = machine.joints.get(id);
    if (joint !== undefined) return describeJoint(joint, print);
    const stack = machine.stacks.get(id);
    if (stack !== undefined) return describeStack(machine, stack, print, rule);
    const measurement = machine.measurements.get(id);
    if (measurement !== undefined) return describeMeasurement(machine, measurement, print);
    const step = machine.steps.get(id);
    if (step !== undefined) return describeWritten(step, print);
    return machine.modules.has(id) ? { strip: 'as it came' } : undefined;
  };

  return print;
}

type Print = (id: string) => string;

function describePart(machine: Machine, part: Part): unknown {
  return {
    part: part.kind,
    type: part.type,
    material: part.material === undefined ? undefined : normalWords(part.material),
    thread: part.thread === undefined ? undefined : normalThread(part.thread),
    sizes: Object.fromEntries(Object.entries(part.sizes).map(([name, size]) => [name, normalNumber(size)])),
    gears: gearsOf(machine, part.instances),
  };
}

function describeJoint(joint: Joint, print: Print): unknown {
  return {
    joint: joint.kind,
    thread: joint.thread === undefined ? undefined : normalThread(joint.thread),
    class: joint.class,
    head: joint.head,
    material: joint.material === undefined ? undefined : normalWords(joint.material),
    length: optional(joint.length),
    diameter: optional(joint.diameter),
    engagement: optional(joint.engagement),
    onto: joint.onto,
    fit: joint.fit === undefined ? undefined : normalWords(joint.fit),
    locks: joint.locks?.map((lock) => lock.grade).sort(),
    torque: typeof joint.torque === 'number' ? normalNumber(joint.torque) : joint.torque,
    each: joint.each.map(({ seat, holds }) => ({ seat: seat === undefined ? undefined : print(seat), holds: holds.map(print).sort() })),
  };
}

function describeStack(machine: Machine, stack: Stack, print: Print, rule: FingerprintRule): unknown {
  return {
    stack: 'in this order',
    spindle: print(stack.spindle),
    housing: stack.housing.map(print),
    order: stack.order.map((item) => describeItem(machine, stack, item, print)),
    loads: stack.loads.map((load) => describeLoad(machine, stack, load, print, rule)),
  };
}

function describeItem(machine: Machine, stack: Stack, item: StackItem, print: Print): unknown {
  // What closes the stack is signed for itself; here only that it stands there.
  if ('joint' in item) return { closed: machine.joints.get(machine.thingOf.get(item.joint) ?? item.joint)?.kind };
  if ('shoulder' in item) return { shoulder: print(item.shoulder) };
  const part = machine.parts.get(machine.thingOf.get(item.part) ?? item.part);
  const facing = Object.entries(part?.facing ?? {}).map(([side, towards]) => [side, end(stack, towards)]);
  return { part: print(item.part), facing: Object.fromEntries(facing), grease: part?.grease };
}

function describeLoad(machine: Machine, stack: Stack, load: StackLoad, print: Print, rule: FingerprintRule): unknown {
  if ('pushes' in load) return { pushes: print(load.pushes), towards: end(stack, load.towards) };
  const coupling = machine.couplings.get(load.coupling);
  return { thrust: coupling === undefined ? undefined : rule === 'f1' ? describeCoupling(coupling, print) : describeThrust(machine, coupling) };
}

/** What decides which way a mesh pushes: hand of the helix, side of a bevel, sense of rotation of engine or motor. */
function describeThrust({ power }: Machine, { kind, helix, driver, driven }: Coupling): unknown {
  const lies = (direction: readonly number[] | undefined) => direction?.map(normalNumber);
  return { kind, hand: helix === undefined || helix.angle === 0 ? undefined : helix.hand, driver: lies(driver.lies), driven: lies(driven.lies), turns: lies((power.engine ?? power.motor)?.turns) };
}

/** The two words for the ends may change; which of them is meant may not. */
function end(stack: Stack, towards: string): string | number {
  const at = stack.ends.indexOf(towards);
  return at === -1 ? normalWords(towards) : at;
}

function describeMeasurement(machine: Machine, measurement: Measurement, print: Print): unknown {
  return { measured: measurement.quantity, of: measurement.of === undefined ? undefined : describeTarget(machine, measurement.of, print), setBy: measurement.setBy.map(print).sort() };
}

/** What is measured, and what it depends on: for a stack also what closes it. */
function describeTarget(machine: Machine, of: string, print: Print): unknown {
  const id = machine.thingOf.get(of) ?? of;
  const stack = machine.stacks.get(id);
  if (stack !== undefined) return { stack: print(id), closed: stack.order.flatMap((item) => ('joint' in item ? [print(item.joint)] : [])) };
  if (machine.parts.has(id) || machine.joints.has(id)) return print(id);
  const coupling = machine.couplings.get(of);
  if (coupling !== undefined) return describeCoupling(coupling, print);
  const sensor = machine.sensors.get(of);
  return sensor === undefined ? { named: of } : describeSensor(sensor, print);
}

function describeCoupling(coupling: Coupling, print: Print): unknown {
  const side = (part: string | undefined) => (part === undefined ? undefined : print(part));
  return {
    coupling: coupling.kind,
    helix: coupling.helix === undefined ? undefined : { angle: normalNumber(coupling.helix.angle), hand: coupling.helix.hand },
    driver: side(coupling.driver.part),
    driven: side(coupling.driven.part),
    teeth: [coupling.driver.teeth, coupling.driven.teeth].map((teeth) => teeth ?? null),
  };
}

function describeSensor(sensor: Sensor, print: Print): unknown {
  return { sensor: sensor.magnets, part: sensor.part === undefined ? undefined : print(sensor.part) };
}

/** A written step is its words, and the things that it comes after: a check of a bearing falls with the bearing. */
function describeWritten(step: WrittenStep, print: Print): unknown {
  return { do: step.do.trim().replace(/\s+/gu, ' '), after: step.after.map(print).sort() };
}

function optional(value: number | undefined): number | undefined {
  return value === undefined ? undefined : normalNumber(value);
}
