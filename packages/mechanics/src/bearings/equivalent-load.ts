import { interpolate } from '../numeric/interpolate.ts';
import type { LoadFactors } from './load-factors.ts';

function refuseLoads(name: string, radial: number, axial: number): void {
  if (!(radial >= 0 && axial >= 0 && Number.isFinite(radial + axial))) throw new RangeError(`${name}: loads must be finite and not negative, got ${radial} and ${axial} N`);
}

/**
 * Equivalent dynamic load: the one load under which a bearing lasts as long as under both.
 *
 * @param radial   F_r [N], not negative
 * @param axial    F_a [N], not negative
 * @param factors  e, X and Y of the bearing under this load
 * @returns        P [N]: F_r while F_a/F_r ≤ e, else X·F_r + Y·F_a
 * @throws RangeError when a load is negative or not finite
 * @source ISO 281:2007, 5.2 (from memory)
 * @example equivalentLoad(2500, 1000, { limit: 0.26, radial: 0.56, axial: 1.67 }) // 3070
 */
export function equivalentLoad(radial: number, axial: number, { limit, radial: x, axial: y }: LoadFactors): number {
  refuseLoads('equivalentLoad', radial, axial);
  return axial <= limit * radial ? radial : x * radial + y * axial;
}

const degrees = (value: number): number => (value * Math.PI) / 180;
const angles = [15, 20, 25, 30, 35, 40, 45].map(degrees);
const axialShares = [0.46, 0.42, 0.38, 0.33, 0.29, 0.26, 0.22];

/**
 * Equivalent static load of a single-row radial ball bearing: X_0·F_r + Y_0·F_a, at least F_r.
 *
 * @param radial        F_r [N]
 * @param axial         F_a [N]
 * @param contactAngle  rad; 0 for a deep-groove bearing, else 15° to 45°
 * @returns             P_0 [N]
 * @throws RangeError when the angle is neither, or a load is negative or not finite
 * @source ISO 76:2006, table 2 (from memory): 0.6 and 0.5 for deep grooves, 0.5 and 0.46 to 0.22 for 15° to 45°
 * @example staticEquivalentLoad(200, 400, 0) // 320
 */
export function staticEquivalentLoad(radial: number, axial: number, contactAngle: number): number {
  refuseLoads('staticEquivalentLoad', radial, axial);
  if (contactAngle === 0) return Math.max(radial, 0.6 * radial + 0.5 * axial);
  if (!(contactAngle >= angles[0]! && contactAngle <= angles.at(-1)!)) throw new RangeError(`staticEquivalentLoad: contactAngle must be 0 or 15° to 45°, got ${contactAngle} rad`);
  return Math.max(radial, 0.5 * radial + interpolate(angles, axialShares, contactAngle) * axial);
}

/**
 * Equivalent static load of a thrust ball bearing below 90°: P_0 = 2.3·F_r·tan α + F_a
 *
 * @param contactAngle  rad, below 90°
 * @throws RangeError unless the angle is over 0 and below 90°, and the loads are finite and not negative
 * @source ISO 76:2006, 6.2 (from memory)
 * @neglects that a radial load over 0.44·F_a/tan α leaves the formula less sure
 * @example staticThrustLoad(0, 500, Math.PI / 3) // 500
 */
export function staticThrustLoad(radial: number, axial: number, contactAngle: number): number {
  refuseLoads('staticThrustLoad', radial, axial);
  if (!(contactAngle > 0 && contactAngle < Math.PI / 2)) throw new RangeError(`staticThrustLoad: contactAngle must be over 0 and below π/2, got ${contactAngle} rad`);
  return 2.3 * radial * Math.tan(contactAngle) + axial;
}
