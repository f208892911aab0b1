import { interpolate } from '@rotorwright/mechanics';

/** Air for which the power of an engine is stated: sea level of ISO 2533:1975, dry. */
const REFERENCE_PRESSURE = 101_325;
const REFERENCE_TEMPERATURE = 288.15;

export interface CurvePoint {
  /** rad/s, ascending */
  readonly speed: number;
  /** W */
  readonly power: number;
}

/**
 * Share of its stated power that an engine with spark ignition and without supercharger gives in other air:
 * (p_d/p_0)^1.2·(T_0/T)^0.6
 *
 * @param dryPressure  p_d, of the air without its vapour [Pa], positive
 * @param temperature  T of the air that it draws [K], positive
 * @returns            1 on a standard day at sea level
 * @neglects what a carburettor does that is not set anew; a two-stroke with a tuned pipe, whose pulses go with √T
 * @source ISO 1585:2020, correction of spark-ignition engines, α_a = (99 kPa/p_d)^1.2·(T/298 K)^0.6 (from memory), here from a standard day
 * @example engineAirFactor(101325, 288.15) // 1
 */
export function engineAirFactor(dryPressure: number, temperature: number): number {
  return (dryPressure / REFERENCE_PRESSURE) ** 1.2 * (REFERENCE_TEMPERATURE / temperature) ** 0.6;
}

/**
 * Power at full throttle between the points of a curve; straight between them.
 *
 * @param speed  [rad/s]
 * @returns      [W]; undefined below the first point and above the last
 * @example enginePowerOnCurve([{ speed: 1000, power: 1000 }, { speed: 1400, power: 2000 }], 1200) // 1500
 */
export function enginePowerOnCurve(curve: readonly CurvePoint[], speed: number): number | undefined {
  const [first, last] = [curve[0]!, curve.at(-1)!];
  if (!(speed >= first.speed && speed <= last.speed)) return undefined;
  return interpolate(curve.map((point) => point.speed), curve.map((point) => point.power), speed);
}

/**
 * Power at full throttle from its peak alone: P = P_max·(x + x² − x³), x = n/n_max
 *
 * @param peakPower  P_max [W]
 * @param peakSpeed  n_max [rad/s]
 * @returns          [W], 0 from the speed on at which the law runs out, x = 1.618
 * @source S. R. Leiderman, spark-ignition engines: all three coefficients 1 (from memory)
 * @example enginePowerFromPeak(2000, 1500, 1500) // 2000
 */
export function enginePowerFromPeak(peakPower: number, peakSpeed: number, speed: number): number {
  const x = speed / peakSpeed;
  return Math.max(0, peakPower * (x + x ** 2 - x ** 3));
}

/** Mean effective pressure of a two-stroke, one power stroke a turn: P/(V·n) [Pa] */
export function meanEffectivePressure(power: number, displacement: number, speed: number): number {
  return (2 * Math.PI * power) / (displacement * speed);
}
