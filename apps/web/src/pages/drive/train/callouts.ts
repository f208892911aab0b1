import type { Machine, Sensor } from '@rotorwright/machine';
import type { FittedTrain, Pixel } from './fit.ts';
import type { PaperMotion } from './motion.ts';
import type { PlacedTrain } from './place.ts';

/** What is said of coaxial shafts that move alike. */
export interface CalloutRow {
  /** The first is the one whose speed is shown. */
  readonly shafts: readonly string[];
  readonly condition: PaperMotion['condition'];
  /** "Crank, Clutch bell". */
  readonly title: string;
}

export interface Callout {
  readonly id: string;
  /** Those that turn come first. */
  readonly rows: readonly CalloutRow[];
  /** "14 and 9 teeth". */
  readonly teeth: readonly number[];
  readonly sensors: readonly Sensor[];
  readonly rotors: readonly string[];
  /** Where it would rather stand. */
  readonly prefers: 'above' | 'below';
}

/** One callout for each station and each shaft in the paper. */
export function calloutsOf(machine: Machine, train: PlacedTrain, motions: ReadonlyMap<string, PaperMotion>): readonly Callout[] {
  const rowsOf = (shafts: readonly string[]): readonly CalloutRow[] => {
    const rows = new Map<string, string[]>();
    for (const shaft of shafts) {
      const motion = motions.get(shaft)!;
      const key = `${motion.condition} ${motion.factor.toPrecision(12)}`;
      rows.set(key, [...(rows.get(key) ?? []), shaft]);
    }
    return [...rows.values()]
      .map((alike): CalloutRow => ({ shafts: alike, condition: motions.get(alike[0]!)!.condition, title: alike.map((shaft) => machine.shafts.get(shaft)!.title).join(', ') }))
      .toSorted((a, b) => Number(b.condition === 'turns') - Number(a.condition === 'turns') || b.shafts.length - a.shafts.length);
  };
  const common = (shafts: readonly string[]) => ({
    rows: rowsOf(shafts),
    sensors: [...machine.sensors.values()].filter(({ reads }) => shafts.includes(reads)),
    rotors: [...machine.rotors.values()].filter(({ on }) => shafts.includes(on)).map(({ id }) => id),
  });
  const covered = (id: string): boolean => {
    const station = train.stations.find((each) => each.id === id)!;
    return train.stations.some((other) => other !== station && Math.hypot(other.at[0] - station.at[0], other.at[1] - station.at[1]) < other.outer);
  };
  return [
    ...train.stations.map((station): Callout => ({ id: station.id, ...common(station.shafts), teeth: station.wheels.flatMap(({ teeth }) => (teeth === undefined ? [] : [teeth])), prefers: covered(station.id) ? 'below' : 'above' })),
    ...train.sides.map((side): Callout => ({ id: side.id, ...common(side.shafts), teeth: side.wheel.teeth === undefined ? [] : [side.wheel.teeth], prefers: side.along[1] < 0 || side.axis[1] > 0 ? 'below' : 'above' })),
  ];
}

export interface PlacedCallout {
  readonly callout: Callout;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** From the callout's edge to what it speaks of. */
  readonly leader: readonly [Pixel, Pixel];
}

export interface Slots {
  readonly columns: number;
  readonly above: number;
  readonly below: number;
}

/** How many slots there are for callouts: two columns on a phone, three or four at the desk. */
export function slotsFor(count: number, width: number): Slots {
  const columns = width < 460 ? 2 : width < 700 ? 3 : 4;
  const above = 1;
  return { columns, above, below: Math.max(1, Math.ceil((count - columns) / columns)) };
}

/** Gives every callout a slot near what it speaks of; one after the other, in the order of the train. */
export function placeCallouts(callouts: readonly Callout[], train: PlacedTrain, fitted: FittedTrain, slots: Slots, row: number): readonly PlacedCallout[] {
  const width = fitted.width / slots.columns;
  const free = Array.from({ length: (slots.above + slots.below) * slots.columns }, (_, index) => {
    const column = index % slots.columns;
    const line = Math.floor(index / slots.columns);
    const isAbove = line < slots.above;
    const top = isAbove ? line * row : fitted.height - (slots.below - (line - slots.above)) * row;
    return { left: column * width, top, above: isAbove, line };
  });
  return callouts.flatMap((callout): PlacedCallout[] => {
    const spot = anchorOf(callout, train, fitted);
    const cost = (slot: (typeof free)[number]): number => Math.abs(slot.left + width / 2 - spot.at[0]) + ((callout.prefers === 'above') === slot.above ? 0 : 170) + (slot.above ? 0 : (slot.line - slots.above) * 60);
    const best = free.reduce<(typeof free)[number] | undefined>((found, slot) => (!found || cost(slot) < cost(found) ? slot : found), undefined);
    if (!best) return [];
    free.splice(free.indexOf(best), 1);
    const from: Pixel = [Math.min(Math.max(spot.at[0], best.left + 16), best.left + Math.min(width - 16, 130)), best.above ? best.top + row - 4 : best.top + 2];
    const aim: Pixel = [spot.at[0] + spot.reach * 0.25 * Math.sign(from[0] - spot.at[0]), spot.at[1] + (best.above ? -1 : 1) * spot.reach * 0.72];
    return [{ callout, left: best.left, top: best.top, width, leader: [from, aim] }];
  });
}

function anchorOf(callout: Callout, train: PlacedTrain, fitted: FittedTrain): { readonly at: Pixel; readonly reach: number } {
  const station = train.stations.find(({ id }) => id === callout.id);
  if (station) {
    const largest = station.wheels[0];
    return { at: fitted.stations.get(station.id)!, reach: (largest ? largest.root : 4) * fitted.scale };
  }
  const side = fitted.sides.find((each) => each.side.id === callout.id)!;
  const across = side.side.rotors.length > 0;
  const at: Pixel = across ? side.end : side.breakAt ? [side.breakAt[0] + (side.end[0] - side.breakAt[0]) * 0.45, side.breakAt[1]] : side.crossing;
  return { at, reach: across ? 8 : 5 };
}
