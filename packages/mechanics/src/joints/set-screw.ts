import type { Thread } from './thread.ts';

/** Torque on a screw over preload times diameter, dry steel. */
const nutFactor = 0.2;

/**
 * Force with which a set screw presses on its shaft: T/(K·d), K = 0.2
 *
 * @param seatingTorque  N·m, positive
 * @returns              N
 * @throws RangeError unless the torque is positive
 * @source nut factor of dry steel, handbooks of machine design
 * @example setScrewForce(metricThread('M4'), 2.2) // 2750
 */
export function setScrewForce({ diameter }: Thread, seatingTorque: number): number {
  if (!(seatingTorque > 0)) throw new RangeError(`setScrewForce: seatingTorque must be positive, got ${seatingTorque} N·m`);
  return seatingTorque / (nutFactor * diameter);
}

/**
 * Force along the shaft that set screws hold by friction, at their tips and at the wall of the bore across from them.
 *
 * @param force     of one screw on the shaft [N]
 * @param count     of screws, in a row along the shaft
 * @param friction  of tip and wall on the shaft
 * @returns         2·μ·F·n [N]; times half the shaft's diameter, the torque that they hold
 * @throws RangeError unless count is a whole number above 0, and force and friction are not negative
 * @neglects the dent of a cup point and the stop of a flat, both of which hold more; vibration, which holds less
 * @source friction at two contacts; with 0.12 within a fifth of the lower of two public tables of holding power, 0.32 meets the higher
 * @example setScrewHold(2750, 1, 0.12) // 660
 */
export function setScrewHold(force: number, count: number, friction: number): number {
  if (!(Number.isInteger(count) && count > 0)) throw new RangeError(`setScrewHold: count must be a whole number above 0, got ${count}`);
  if (!(force >= 0 && friction >= 0 && Number.isFinite(2 * friction * force * count))) throw new RangeError(`setScrewHold: force and friction must not be negative, got ${force} N and ${friction}`);
  return 2 * friction * force * count;
}
