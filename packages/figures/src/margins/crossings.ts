import { rotorsOf } from '../drive/solve.ts';
import type { Margins } from './margins.ts';
import type { NaturalMode, ShakingOrder } from './vibration.ts';

/** A line of the map of speeds and frequencies: what shakes. Straight through the origin. */
export interface OrderLine extends ShakingOrder {
  /** Hz for each rad/s of the main rotor. */
  readonly slope: number;
}

/** A level of the map: what may answer. */
export interface ModeLevel extends NaturalMode {
  /** Hz */
  readonly frequency: number;
}

/** Where what shakes meets what may answer. */
export interface Crossing {
  readonly order: OrderLine;
  readonly mode: ModeLevel;
  /** Speed of the main rotor there, rad/s. */
  readonly speed: number;
  /** That speed over the one that is flown. */
  readonly share: number;
}

/** The map of rotor speeds and frequencies. */
export interface FrequencyMap {
  readonly orders: readonly OrderLine[];
  readonly modes: readonly ModeLevel[];
  /** Nearest to the speed that is flown first. */
  readonly crossings: readonly Crossing[];
  /** Speed of the main rotor that is flown, rad/s. */
  readonly flown: number;
}

/** Natural frequencies against every order of the machine, over the speed of its main rotor; undefined where nothing is known of either. */
export function frequencyMap({ set, orders, modes }: Margins): FrequencyMap | undefined {
  const main = rotorsOf(set.machine).main;
  const flown = main && set.get(`speed ${main.on}`)?.value;
  if (flown === undefined || flown === 0) return undefined;
  const lines = orders.flatMap((order): OrderLine[] => {
    const speed = set.get(order.speed)?.value;
    return speed === undefined || speed === 0 ? [] : [{ ...order, slope: Math.abs((order.order * speed) / flown) / (2 * Math.PI) }];
  });
  const levels = modes.flatMap((mode): ModeLevel[] => {
    const figure = set.get(mode.figure);
    return figure?.value === undefined ? [] : [{ ...mode, frequency: figure.unit === 'rad/s' ? figure.value / (2 * Math.PI) : figure.value }];
  });
  if (levels.length === 0 || lines.length === 0) return undefined;
  const size = Math.abs(flown);
  const crossings = levels.flatMap((mode) => lines.filter((order) => mode.shaft === undefined || mode.shaft === order.shaft).map((order): Crossing => {
    const speed = mode.frequency / order.slope;
    return { order, mode, speed, share: speed / size };
  }));
  return { orders: lines, modes: levels, crossings: crossings.toSorted((a, b) => Math.abs(Math.log(a.share)) - Math.abs(Math.log(b.share))), flown: size };
}
