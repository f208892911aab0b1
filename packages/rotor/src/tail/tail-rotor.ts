export interface UniformInflowRotor {
  /** σ = b·c/(πR), positive */
  readonly solidity: number;
  /** a [1/rad], positive */
  readonly liftSlope: number;
}

/**
 * Thrust coefficient of an untwisted rotor of constant chord at a pitch: C_T = (σa/2)(θ/3 − λ/2), λ = √(C_T/2)
 *
 * @param pitch  θ [rad]; a negative one gives the same thrust the other way
 * @returns      C_T = T/(ρA(ΩR)²)
 * @neglects tip loss, root cutout, stall; inflow taken as uniform
 * @source blade elements and momentum over the whole disc, solved for √C_T
 * @example thrustCoefficientAtPitch({ solidity: 0.12, liftSlope: 5 }, 0.248) // 0.0128
 */
export function thrustCoefficientAtPitch({ solidity, liftSlope }: UniformInflowRotor, pitch: number): number {
  const half = (solidity * liftSlope) / (8 * Math.SQRT2);
  const root = (solidity * liftSlope * Math.abs(pitch)) / 6;
  // −half + √(half² + root), written so that small pitches keep their digits.
  const squareRoot = root / (half + Math.sqrt(half ** 2 + root));
  return Math.sign(pitch) * squareRoot ** 2;
}

/**
 * Pitch at which that rotor has a thrust coefficient: the same equations the other way round.
 *
 * @param thrustCoefficient  C_T, any sign
 * @returns                  θ [rad]
 * @source as thrustCoefficientAtPitch
 * @example pitchForThrustCoefficient({ solidity: 0.12, liftSlope: 5 }, 0.0128) // 0.248
 */
export function pitchForThrustCoefficient({ solidity, liftSlope }: UniformInflowRotor, thrustCoefficient: number): number {
  const size = Math.abs(thrustCoefficient);
  return Math.sign(thrustCoefficient) * ((6 * size) / (solidity * liftSlope) + 1.5 * Math.sqrt(size / 2));
}

/**
 * Thrust of a tail rotor that holds a machine against the torque of its main rotor and turns it as fast as asked:
 * (Q + J·ψ̈)/(l·(1 − blockage))
 *
 * @param mainTorque    Q [N·m]
 * @param yawMoment     J·ψ̈ [N·m], positive asks for more tail thrust
 * @param arm           l [m], positive
 * @param blockage      share of the thrust lost on the fin, 0 to below 1
 * @returns             [N], of the rotor
 * @source balance of moments about the mast
 * @example tailThrustNeeded(4.5, 0, 0.9, 0) // 5
 */
export function tailThrustNeeded(mainTorque: number, yawMoment: number, arm: number, blockage: number): number {
  return (mainTorque + yawMoment) / (arm * (1 - blockage));
}
