import { greatestCommonDivisor } from './ratio.ts';

export interface ToothHunting {
  /** Greatest common divisor of the tooth counts; 1 means that every tooth meets every other. */
  readonly commonFactor: number;
  /** Turns of gear 1 until the same teeth meet again. */
  readonly pinionTurnsToRepeat: number;
  /** Frequency at which one pair of teeth meets, over the mesh frequency. */
  readonly huntingFrequencyRatio: number;
}

/**
 * How often the same two teeth meet: after lcm(z₁, z₂) meshes.
 *
 * @param teeth1  z₁, tooth count of the pinion
 * @param teeth2  z₂, tooth count of the gear
 * @throws RangeError when a count is not a positive whole number
 * @source definition: f_ht/f_m = gcd(z₁, z₂)/(z₁·z₂)
 * @example toothHunting(18, 84).pinionTurnsToRepeat // 14
 */
export function toothHunting(teeth1: number, teeth2: number): ToothHunting {
  positiveWhole('toothHunting', 'teeth1', teeth1);
  positiveWhole('toothHunting', 'teeth2', teeth2);
  const commonFactor = greatestCommonDivisor(teeth1, teeth2);
  return {
    commonFactor,
    pinionTurnsToRepeat: teeth2 / commonFactor,
    huntingFrequencyRatio: commonFactor / teeth1 / teeth2,
  };
}

/**
 * Frequency at which equal things on a shaft pass a fixed point: teeth through a mesh, magnets past a sensor,
 * blades over the boom, pulley teeth into a belt.
 *
 * @param count  things round the shaft, positive and whole
 * @param speed  ω [rad/s], any sign
 * @returns      f = count·|ω|/2π [Hz]
 * @throws RangeError when count is not a positive whole number or speed is not finite
 * @source definition
 * @example passingFrequency(2, 10 * Math.PI) // 10
 */
export function passingFrequency(count: number, speed: number): number {
  positiveWhole('passingFrequency', 'count', count);
  if (!Number.isFinite(speed)) throw new RangeError(`passingFrequency: speed [rad/s] must be finite, got ${speed}`);
  return (count * Math.abs(speed)) / (2 * Math.PI);
}

/**
 * Frequency at which a belt comes round, the mark that a damaged belt leaves.
 *
 * @param pulleyTeeth  z
 * @param speed        of that pulley, ω [rad/s], any sign
 * @param beltTeeth    z_b
 * @returns            f = z·|ω|/(2π·z_b) [Hz]
 * @throws RangeError when a count is not a positive whole number or speed is not finite
 * @source definition
 * @example beltTurnFrequency(20, 10 * Math.PI, 400) // 0.25
 */
export function beltTurnFrequency(pulleyTeeth: number, speed: number, beltTeeth: number): number {
  positiveWhole('beltTurnFrequency', 'beltTeeth', beltTeeth);
  return passingFrequency(pulleyTeeth, speed) / beltTeeth;
}

function positiveWhole(where: string, name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 1) throw new RangeError(`${where}: ${name} must be a positive whole number, got ${value}`);
}
