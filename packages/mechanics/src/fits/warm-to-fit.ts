/**
 * Rise of temperature at which a housing lets a part of room temperature drop in (or out).
 *
 * @param nominal          diameter of the seat, m
 * @param interference     on diameter at room temperature, m; negative when it is loose already
 * @param clearanceWanted  on diameter while fitting, m
 * @param expansion        of the housing, 1/K
 * @returns                K, not below zero
 * @neglects warming of the part while it goes in
 * @throws RangeError unless nominal and expansion are positive and all are finite
 * @source linear thermal expansion: ΔT = (I + c)/(α·D)
 * @example warmingToFit(0.022, 15e-6, 5e-6, 23.4e-6) // 38.850039
 */
export function warmingToFit(nominal: number, interference: number, clearanceWanted: number, expansion: number): number {
  if (!(nominal > 0)) throw new RangeError(`warmingToFit: nominal must be positive, got ${nominal} m`);
  if (!(expansion > 0)) throw new RangeError(`warmingToFit: expansion must be positive, got ${expansion} 1/K`);
  if (!Number.isFinite(interference + clearanceWanted + expansion * nominal)) throw new RangeError(`warmingToFit: finite numbers are needed, got ${interference} and ${clearanceWanted} m, ${expansion} 1/K, ${nominal} m`);
  const rise = (interference + clearanceWanted) / (expansion * nominal);
  if (Number.isNaN(rise)) throw new RangeError(`warmingToFit: an expansion that can be told from 0 is needed, got ${expansion} 1/K on ${nominal} m`);
  return Math.max(0, rise);
}

/**
 * Interference that a joint loses when both parts warm alike and the outer one expands more.
 *
 * @param nominal         diameter of the joint, m
 * @param outerExpansion  of the part with the bore, 1/K
 * @param innerExpansion  of the part inside, 1/K
 * @param rise            of both, K; negative when they cool
 * @returns               m, on diameter; negative is gained
 * @throws RangeError unless nominal is positive and the rest finite
 * @source linear thermal expansion: (α_o − α_i)·D·ΔT
 * @example interferenceLost(0.022, 23.4e-6, 12.5e-6, 60) // 0.000014388
 */
export function interferenceLost(nominal: number, outerExpansion: number, innerExpansion: number, rise: number): number {
  if (!(nominal > 0)) throw new RangeError(`interferenceLost: nominal must be positive, got ${nominal} m`);
  const lost = (outerExpansion - innerExpansion) * nominal * rise;
  if (!Number.isFinite(lost)) throw new RangeError(`interferenceLost: finite numbers are needed, got ${outerExpansion} and ${innerExpansion} 1/K, ${rise} K`);
  return lost;
}
