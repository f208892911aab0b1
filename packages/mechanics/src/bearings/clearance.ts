export interface WarmRing {
  /** Diameter on which the elements run at the outer ring, about (4·D + d)/5 [m]. */
  readonly racewayDiameter: number;
  /** Radial clearance that is lost [m]. */
  readonly loss: number;
}

/**
 * Radial clearance that a bearing loses when its inner ring and elements run warmer than its outer ring.
 *
 * @param bore        d [m]
 * @param outer       D [m]
 * @param difference  by how much the inner ring is warmer [K]; negative gains clearance
 * @param expansion   of the rings, 1/K
 * @throws RangeError unless 0 < bore < outer and all are finite
 * @source public bearing catalogue, equations 9.6 and 9.7: δ = α·ΔT·D_e, D_e = (4·D + d)/5
 * @example clearanceLost(0.04, 0.08, 10, 12.5e-6).loss // 9e-6
 */
export function clearanceLost(bore: number, outer: number, difference: number, expansion: number): WarmRing {
  if (!(bore > 0 && bore < outer)) throw new RangeError(`clearanceLost: 0 < bore < outer is needed, got ${bore} and ${outer} m`);
  const racewayDiameter = (4 * outer + bore) / 5;
  const loss = expansion * difference * racewayDiameter;
  if (!Number.isFinite(loss)) throw new RangeError(`clearanceLost: finite numbers are needed, got ${outer} m, ${difference} K and ${expansion} 1/K`);
  return { racewayDiameter, loss };
}
