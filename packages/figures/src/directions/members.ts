import type { InstanceId, Joint, JointInstance, Machine, Part } from '@rotorwright/machine';

/** Which parts turn with which shaft, and how torque may pass between them. */
export interface Members {
  readonly shaftOf: ReadonlyMap<InstanceId, string>;
  /** Joints through which torque passes, with the part that has the seat and the parts that are held. */
  readonly ties: readonly Tie[];
}

export interface Tie {
  readonly joint: Joint;
  readonly instance: JointInstance;
  readonly seat: InstanceId;
  readonly held: readonly InstanceId[];
}

/** Joints that keep things in place or move, and pass no torque unless the file says so. */
const withoutTorque = new Set<Joint['kind']>(['circlip', 'ball-link']);

/** Bearings and one-way clutches. */
export const isBearing = (part: Part): boolean => /groove|thrust|contact|needle|roller|bearing|ball-|one-way/.test(part.kind);

/** Copies of a module are alike: tells the things of the first of them, which stands for all. */
export function inFirstCopy(machine: Machine): (thing: { readonly module: string }) => boolean {
  const first = new Set(new Map([...machine.modules.values()].toReversed().map((module) => [module.key, module.id])).values());
  return ({ module }) => first.has(module);
}

/** The part of which an instance is one. */
export const partAt = (machine: Machine, instance: InstanceId | undefined): Part | undefined => (instance === undefined ? undefined : machine.parts.get(machine.thingOf.get(instance) ?? instance));

/**
 * Spreads each shaft from the parts that the drive names over the joints that carry torque.
 * Bearings and what everything is mounted on end the spread.
 */
export function membersOf(machine: Machine): Members {
  const ties: Tie[] = [];
  const meeting = new Map<InstanceId, InstanceId[]>();
  const blocked = (instance: InstanceId): boolean => {
    const part = partAt(machine, instance);
    return !part || part.ground || isBearing(part);
  };
  for (const joint of machine.joints.values()) {
    if (joint.carries ? !joint.carries.includes('torque') : withoutTorque.has(joint.kind)) continue;
    for (const instance of joint.each) {
      const seat = instance.seat;
      const held = instance.holds.filter((each) => partAt(machine, each));
      if (seat === undefined || held.length === 0 || !partAt(machine, seat)) continue;
      ties.push({ joint, instance, seat, held });
      for (const each of held) {
        meeting.set(seat, [...(meeting.get(seat) ?? []), each]);
        meeting.set(each, [...(meeting.get(each) ?? []), seat]);
      }
    }
  }
  const shaftOf = new Map<InstanceId, string>();
  const claim = (instance: InstanceId | undefined, shaft: string): void => {
    if (instance !== undefined && partAt(machine, instance) && !shaftOf.has(instance)) shaftOf.set(instance, shaft);
  };
  for (const shaft of machine.shafts.values()) claim(shaft.part, shaft.id);
  for (const coupling of machine.couplings.values()) for (const side of [coupling.driver, coupling.driven]) claim(side.part, side.on);
  for (const rotor of machine.rotors.values()) claim(rotor.part, rotor.on);
  // Map iteration takes in what is added on the way: breadth first from all shafts at once.
  for (const [instance, shaft] of shaftOf) {
    if (blocked(instance)) continue;
    for (const next of meeting.get(instance) ?? []) if (!blocked(next)) claim(next, shaft);
  }
  return { shaftOf, ties };
}
