/** Kinds that differ in how soon they use up their grease. */
export type GreasedKind = 'deep-groove' | 'needle' | 'thrust-ball';

const kindFactors: Readonly<Record<GreasedKind, number>> = { 'deep-groove': 10, needle: 5, 'thrust-ball': 1 };

export interface GreaseDuty {
  readonly kind: GreasedKind;
  /** m */
  readonly bore: number;
  /** rad/s, any sign, not zero */
  readonly speed: number;
  /** Of the bearing, K. */
  readonly temperature: number;
  readonly verticalShaft: boolean;
}

/**
 * Running time after which a bearing wants fresh grease.
 *
 * In hours, n in rpm, d in mm: k·(14·10⁶/(n·√d) − 4·d), with k = 10, 5 or 1. Halved for every 15 K over 70 °C, lengthened
 * below it by the same rule but no more than doubled; halved on a vertical shaft.
 *
 * @returns  s; undefined where the rule gives no time at all, which is at a speed too high for it
 * @throws RangeError unless the bore is positive, the speed not zero, and both and the temperature finite
 * @neglects dirt, water, load, and the grease itself
 * @source public lubrication guide of an electric motor maker
 * @example regreaseInterval({ kind: 'deep-groove', bore: 0.008, speed: 12000 * Math.PI / 30, temperature: 343.15, verticalShaft: false }) / 3600 // 3804.789557
 */
export function regreaseInterval({ kind, bore, speed, temperature, verticalShaft }: GreaseDuty): number | undefined {
  if (!(bore > 0 && Math.abs(speed) > 0 && Number.isFinite(bore + speed + temperature))) throw new RangeError(`regreaseInterval: a positive bore and a speed other than zero are needed, and a temperature, got ${bore} m, ${speed} rad/s and ${temperature} K`);
  const rpm = (Math.abs(speed) * 30) / Math.PI;
  const millimetres = bore * 1000;
  const hours = kindFactors[kind] * (14e6 / (rpm * Math.sqrt(millimetres)) - 4 * millimetres);
  const warmth = Math.min(2, 2 ** ((343.15 - temperature) / 15));
  const interval = hours * 3600 * warmth * (verticalShaft ? 0.5 : 1);
  if (Number.isNaN(interval)) throw new RangeError(`regreaseInterval: no bearing is so small, slow or hot: got ${bore} m, ${speed} rad/s and ${temperature} K`);
  return hours > 0 ? interval : undefined;
}

/**
 * Grease to put in at each turn: in grams, 0.005·D·B with both in mm.
 *
 * @param outer  D [m]
 * @param width  B [m]
 * @returns      kg
 * @throws RangeError unless both are positive
 * @source public lubrication guide of an electric motor maker
 * @example regreaseMass(0.022, 0.007) // 0.00077
 */
export function regreaseMass(outer: number, width: number): number {
  if (!(outer > 0 && width > 0)) throw new RangeError(`regreaseMass: outer and width must be positive, got ${outer} and ${width} m`);
  return 5 * outer * width;
}
