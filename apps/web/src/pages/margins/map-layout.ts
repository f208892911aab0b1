import type { Crossing, FrequencyMap } from '@rotorwright/figures';

export const mapFrame = { left: 46, top: 14, width: 470, height: 330, right: 190 } as const;

/** Within this share of the flown speed a crossing is near. Common practice, no source. */
export const nearShare = 0.1;

export const isNear = ({ share }: Crossing): boolean => Math.abs(share - 1) < nearShare;

type Point = readonly [x: number, y: number];

export interface LaidOrder {
  readonly order: FrequencyMap['orders'][number];
  readonly from: Point;
  readonly to: Point;
  /** Height of its name beside the frame; absent where the line leaves through the top. */
  readonly label?: number;
}

export interface LaidMode {
  readonly mode: FrequencyMap['modes'][number];
  /** Height of its name */
  readonly label: number;
}

export interface LaidMap {
  readonly x: (speed: number) => number;
  readonly y: (frequency: number) => number;
  /** Speeds of the main rotor at both edges, rad/s. */
  readonly least: number;
  readonly most: number;
  /** Names of the natural frequencies, each above its line. */
  readonly modes: readonly LaidMode[];
  /** Grid lines, Hz and rad/s. */
  readonly frequencies: readonly number[];
  readonly speeds: readonly number[];
  readonly orders: readonly LaidOrder[];
}

/** Between two names, one above the other. */
const room = 14;
/** Of a name above its line. */
const above = 5;

/** Places a map on its frame: from a third of the flown speed to half as much again. */
export function layMap(map: FrequencyMap): LaidMap {
  const [least, most] = [map.flown / 3, map.flown * 1.5];
  const all = [...map.modes.map(({ frequency }) => frequency), ...map.orders.map(({ slope }) => slope * map.flown)];
  const [low, high] = [Math.min(...all) / 1.6, Math.max(...all) * 1.4];
  const place = (value: number, from: number, to: number): number => Math.log(value / from) / Math.log(to / from);
  const x = (speed: number): number => mapFrame.left + mapFrame.width * place(speed, least, most);
  const y = (frequency: number): number => mapFrame.top + mapFrame.height * (1 - place(frequency, low, high));
  const laid = map.orders.map((order): LaidOrder => {
    const starts = Math.max(least, low / order.slope);
    const ends = Math.min(most, high / order.slope);
    return { order, from: [x(starts), y(order.slope * starts)], to: [x(ends), y(order.slope * ends)], ...(ends === most ? { label: y(order.slope * ends) } : {}) };
  });
  return { x, y, least, most, frequencies: rounds(low, high), speeds: rounds((least * 30) / Math.PI, (most * 30) / Math.PI).map((rpm) => (rpm * Math.PI) / 30), orders: spread(laid), modes: spread(map.modes.map((mode) => ({ mode, label: y(mode.frequency) - above }))) };
}

/** 1, 2 and 5 times the powers of ten between two values. */
function rounds(least: number, most: number): readonly number[] {
  const first = Math.floor(Math.log10(least));
  const last = Math.ceil(Math.log10(most));
  return Array.from({ length: last - first + 1 }, (_, index) => 10 ** (first + index)).flatMap((power) => [power, 2 * power, 5 * power]).filter((value) => value >= least && value <= most);
}

/** Names make room for each other, from the bottom up. */
function spread<Named extends { readonly label?: number }>(all: readonly Named[]): readonly Named[] {
  let next = Infinity;
  return all.toSorted((a, b) => (b.label ?? 0) - (a.label ?? 0)).map((named) => {
    if (named.label === undefined) return named;
    const label = Math.min(named.label, next);
    next = label - room;
    return { ...named, label };
  });
}
