import { tubeSection } from './tube.ts';

export interface ShaftStress {
  /** At the outside, Pa, each not negative. */
  readonly bending: number;
  readonly shear: number;
  readonly pull: number;
  /** Of all of them together. */
  readonly equivalent: number;
}

/**
 * Stress at the outside of a round shaft that is bent, twisted and pulled at once: σ_v = √((σ_b + σ_n)² + 3τ²).
 *
 * @param outer   D [m]
 * @param inner   d [m], 0 for a solid shaft
 * @param moment  M [N·m], any sign
 * @param torque  T [N·m], any sign
 * @param pull    N [N] along the axis, any sign
 * @throws RangeError unless 0 ≤ inner < outer and the loads are finite
 * @neglects notches: holes, grooves, threads, steps
 * @source beam theory and Saint-Venant torsion; distortion energy (von Mises)
 * @example shaftStress(0.012, 0.007, 0, 20, 0).shear // 66665392.0
 */
export function shaftStress(outer: number, inner: number, moment: number, torque: number, pull: number): ShaftStress {
  if (!Number.isFinite(moment + torque + pull + outer)) throw new RangeError(`shaftStress: loads must be finite, got ${moment} N·m, ${torque} N·m and ${pull} N`);
  const { area, secondMoment, polarMoment } = tubeSection(outer, inner);
  const bending = (Math.abs(moment) * outer) / (2 * secondMoment);
  const shear = (Math.abs(torque) * outer) / (2 * polarMoment);
  const along = Math.abs(pull) / area;
  return { bending, shear, pull: along, equivalent: Math.hypot(bending + along, Math.sqrt(3) * shear) };
}
