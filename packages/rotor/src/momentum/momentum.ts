import { integrate } from '@rotorwright/mechanics';

/**
 * Induced speed of a rotor that moves along its axis: climbing −V/2 + √(V²/4 + v_h²), in fast descent −V/2 − √(V²/4 − v_h²)
 *
 * @param climbRate   V [m/s], negative in descent
 * @param hoverSpeed  v_h [m/s], induced speed of hover, not negative
 * @returns           v [m/s]; undefined between a descent at twice v_h and hover, where there is no steady wake
 * @source momentum theory of the actuator disc: normal working state, windmill brake state
 * @example axialInducedSpeed(0, 3) // 3
 * @example axialInducedSpeed(8, 3) // 1
 * @example axialInducedSpeed(-10, 3) // 1
 */
export function axialInducedSpeed(climbRate: number, hoverSpeed: number): number | undefined {
  if (climbRate >= 0) return hoverSpeed ** 2 / (climbRate / 2 + Math.sqrt(climbRate ** 2 / 4 + hoverSpeed ** 2)) || 0;
  if (climbRate > -2 * hoverSpeed) return undefined;
  return hoverSpeed ** 2 / (-climbRate / 2 + Math.sqrt(climbRate ** 2 / 4 - hoverSpeed ** 2));
}

/**
 * Share of its induced power that a hovering rotor needs near the ground at the same thrust: 1 − (R/4z)²
 *
 * @param heightOverRadius  z/R of the rotor above the ground, at least 0.5
 * @throws RangeError when the height is less, or not finite
 * @source I. C. Cheeseman, W. E. Bennett, R&M 3021 (1955) (from memory): T/T_free = 1/(1 − (R/4z)²) at the same power
 * @example groundEffectPowerShare(1) // 0.9375
 */
export function groundEffectPowerShare(heightOverRadius: number): number {
  if (!(heightOverRadius >= 0.5) || !Number.isFinite(heightOverRadius)) throw new RangeError(`groundEffectPowerShare: the height over the radius must be at least 0.5, got ${heightOverRadius}`);
  return 1 - 1 / (16 * heightOverRadius ** 2);
}

/**
 * Thrust that holds a weight in hover while the wake blows on what hangs below: T = W/(1 − f/A), for the drag ½ρ(2v)²·f is T·f/A
 *
 * @param weight     W [N]
 * @param dragArea   f of the fuselage from above [m²], less than the disc
 * @param discArea   A [m²], positive
 * @throws RangeError when the drag area is negative, or not less than the disc
 * @neglects where in the wake the fuselage stands: right under the rotor the wake has not its full speed, 2v, and this asks too much
 * @source momentum theory: v² = T/2ρA in the disc, 2v in the wake
 * @example thrustUnderDownload(50, 0.02, 2) // 50.505050505050505
 */
export function thrustUnderDownload(weight: number, dragArea: number, discArea: number): number {
  if (!(dragArea >= 0 && dragArea < discArea)) throw new RangeError(`thrustUnderDownload: dragArea [m²] must lie between 0 and the disc, ${discArea}, got ${dragArea}`);
  return weight / (1 - dragArea / discArea);
}

export interface SmallAngleHover {
  /** C_T */
  readonly thrustCoefficient: number;
  /** Of the induced power: ∫λ dC_T */
  readonly powerCoefficient: number;
  /** κ: over that of an even inflow, C_T·√(C_T/2) */
  readonly inducedFactor: number;
}

/**
 * Hover of untwisted blades of constant chord by blade elements and momentum, at small angles and without losses:
 * λ(x) = (σa/16)·(√(1 + 32θx/σa) − 1), dC_T = 4λ²x dx.
 *
 * @param solidity   σ, positive
 * @param liftSlope  a [1/rad], positive
 * @param pitch      θ [rad], positive
 * @source A. Gessow, NACA TN 1542 (1948) (from memory); each ring’s lift σa/2·(θx² − λx)dx is its momentum 4λ²x dx
 */
export function smallAngleHover(solidity: number, liftSlope: number, pitch: number): SmallAngleHover {
  const q = (solidity * liftSlope) / 16;
  // √(1 + y) − 1 in the form that keeps its digits where y is small.
  const inflow = (x: number): number => {
    const y = (2 * pitch * x) / q;
    return (q * y) / (1 + Math.sqrt(1 + y));
  };
  const thrustCoefficient = integrate((x) => 4 * inflow(x) ** 2 * x, 0, 1, 64);
  const powerCoefficient = integrate((x) => 4 * inflow(x) ** 3 * x, 0, 1, 64);
  return { thrustCoefficient, powerCoefficient, inducedFactor: powerCoefficient / (thrustCoefficient * Math.sqrt(thrustCoefficient / 2)) };
}
