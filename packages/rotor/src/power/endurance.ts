import { integrate } from '@rotorwright/mechanics';

/** Power drawn for a share of the time. */
export interface PowerShare {
  /** W, not negative */
  readonly power: number;
  /** On any scale, positive */
  readonly share: number;
}

export interface Pack {
  /** Charge of the full pack [A·s], positive */
  readonly capacity: number;
  /** Of the whole pack [Ω], not negative */
  readonly resistance: number;
  /** Open-circuit voltage of the whole pack over its charge, 0 to 1, in ascending charge; linear between, held beyond the ends. */
  readonly openVoltage: readonly { readonly charge: number; readonly voltage: number }[];
  /** Charge at take-off and at the end, 1 = full. */
  readonly startCharge: number;
  readonly endCharge: number;
}

/** Even parts in which each straight piece of the voltage curve is summed. */
const PARTS = 16;

/**
 * Current at which a pack gives a power: (V − √(V² − 4RP))/2R
 *
 * @param voltage     V, open circuit [V]
 * @param resistance  R [Ω], may be 0
 * @returns           [A]; undefined when the pack cannot give it, V² < 4RP
 * @source P = (V − R·I)·I, the smaller current
 * @example packCurrent(40, 0.1, 390) // 10
 */
export function packCurrent(voltage: number, resistance: number, power: number): number | undefined {
  const under = voltage ** 2 - 4 * resistance * power;
  // The form with the sum below the line holds for R = 0 as well.
  return under >= 0 && voltage > 0 ? (2 * power) / (voltage + Math.sqrt(under)) : undefined;
}

/** Mean of the powers over their shares [W]. */
export function meanPower(profile: readonly PowerShare[]): number {
  return meanOver(profile, ({ power }) => power);
}

export interface PackEndurance {
  /** s */
  readonly time: number;
  /** At the end charge, highest power of the profile: A, and V at the terminals. */
  readonly peakCurrent: number;
  readonly lowestVoltage: number;
}

/**
 * How long a pack lasts when the powers of a profile alternate so fast that each is met at every state of charge:
 * ∫ capacity/(mean current) over the charge used.
 *
 * @returns undefined when the pack cannot give the highest power at some charge on the way
 * @throws RangeError when the end charge is not below the start, or no power is drawn
 * @neglects warming, sag that builds up over seconds, charge lost to high currents
 * @source balance of charge, Gauss-Legendre sums over each straight piece of the voltage curve
 * @example packEndurance([{ power: 400, share: 1 }], { capacity: 3600, resistance: 0, openVoltage: [{ charge: 0, voltage: 40 }], startCharge: 1, endCharge: 0 }).time // 360
 */
export function packEndurance(profile: readonly PowerShare[], pack: Pack): PackEndurance | undefined {
  const { capacity, resistance, openVoltage, startCharge, endCharge } = pack;
  if (!(endCharge < startCharge)) throw new RangeError(`packEndurance: endCharge must lie below startCharge, got ${endCharge} and ${startCharge}`);
  if (!(meanPower(profile) > 0)) throw new RangeError('packEndurance: the profile must draw some power');
  const highest = Math.max(...profile.map(({ power }) => power));
  const inside = openVoltage.map(({ charge }) => charge).filter((charge) => charge > endCharge && charge < startCharge);
  const places = [endCharge, ...inside, startCharge];
  // The voltage is straight between these places, so its lowest lies at one of them.
  if (places.some((charge) => packCurrent(voltageAt(openVoltage, charge), resistance, highest) === undefined)) return undefined;
  let time = 0;
  for (let piece = 1; piece < places.length; piece++) {
    time += integrate((charge) => {
      const voltage = voltageAt(openVoltage, charge);
      return capacity / meanOver(profile, ({ power }) => packCurrent(voltage, resistance, power) ?? Infinity);
    }, places[piece - 1]!, places[piece]!, PARTS);
  }
  const last = voltageAt(openVoltage, endCharge);
  const peakCurrent = packCurrent(last, resistance, highest)!;
  return { time, peakCurrent, lowestVoltage: last - resistance * peakCurrent };
}

function meanOver<Share extends PowerShare>(profile: readonly Share[], of: (share: Share) => number): number {
  let [sum, shares] = [0, 0];
  for (const one of profile) {
    sum += one.share * of(one);
    shares += one.share;
  }
  return sum / shares;
}

function voltageAt(curve: Pack['openVoltage'], charge: number): number {
  const after = curve.findIndex((point) => point.charge > charge);
  if (after === 0) return curve[0]!.voltage;
  if (after < 0) return curve.at(-1)!.voltage;
  const [from, to] = [curve[after - 1]!, curve[after]!];
  return from.voltage + ((to.voltage - from.voltage) * (charge - from.charge)) / (to.charge - from.charge);
}

/**
 * Fuel that a profile burns: Σ share·power·consumption over Σ share [kg/s]
 *
 * @param profile  with the consumption of each power [kg/J]
 * @source balance of mass
 */
export function fuelFlow(profile: readonly (PowerShare & { readonly specificConsumption: number })[]): number {
  return meanOver(profile, ({ power, specificConsumption }) => power * specificConsumption);
}
