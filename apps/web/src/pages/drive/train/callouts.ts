import type { Machine } from '@rotorwright/machine';
import type { FittedTrain, Pixel } from './fit.ts';
import type { PaperMotion } from './motion.ts';
import type { PlacedTrain, Station } from './place.ts';

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
  readonly rotors: readonly string[];
  /** Where it would rather stand. */
  readonly prefers: 'above' | 'below';
}

/**
 * One callout for each station and each shaft in the paper.
 *
 * @param idle  shafts that stand even while the machine is driven, such as that of a starter: not worth a line beside others
 */
export function calloutsOf(machine: Machine, train: PlacedTrain, motions: ReadonlyMap<string, PaperMotion>, idle: ReadonlySet<string>): readonly Callout[] {
  const titleOf = (shaft: string): string => machine.shafts.get(shaft)!.title;
  const rowsOf = (shafts: readonly string[]): readonly CalloutRow[] => {
    const rows = new Map<string, string[]>();
    const worth = shafts.filter((shaft) => !idle.has(shaft));
    for (const shaft of worth.length > 0 ? worth : shafts) {
      const motion = motions.get(shaft)!;
      const key = `${motion.condition} ${motion.factor.toPrecision(12)}`;
      rows.set(key, [...(rows.get(key) ?? []), shaft]);
    }
    return [...rows.values()]
      .map((alike): CalloutRow => ({ shafts: alike, condition: motions.get(alike[0]!)!.condition, title: alike.map((shaft, index) => (index === 0 ? titleOf(shaft) : inSentence(titleOf(shaft)))).join(', ') }))
      .toSorted((a, b) => Number(b.condition === 'turns') - Number(a.condition === 'turns') || b.shafts.length - a.shafts.length);
  };
  const common = (shafts: readonly string[]) => ({
    rows: rowsOf(shafts),
    rotors: [...machine.rotors.values()].filter(({ on }) => shafts.includes(on)).map(({ id }) => id),
  });
  const covered = (id: string): boolean => {
    const station = train.stations.find((each) => each.id === id)!;
    return train.stations.some((other) => other !== station && Math.hypot(other.at[0] - station.at[0], other.at[1] - station.at[1]) < other.outer);
  };
  return [
    ...train.stations.map((station): Callout => ({ id: station.id, ...common(station.shafts), teeth: teethOf(station, rowsOf(station.shafts)[0]?.shafts ?? []), prefers: covered(station.id) ? 'below' : 'above' })),
    ...train.sides.map((side): Callout => ({ id: side.id, ...common(side.shafts), teeth: side.wheel.teeth === undefined ? [] : [side.wheel.teeth], prefers: side.along[1] < 0 || side.axis[1] > 0 ? 'below' : 'above' })),
  ];
}

const teethOf = (station: Station, shafts: readonly string[]): readonly number[] => station.wheels.flatMap(({ teeth, shaft }) => (teeth === undefined || !shafts.includes(shaft) ? [] : [teeth]));

/** "Clutch bell" becomes "clutch bell"; what is written in capitals stays so. */
const inSentence = (title: string): string => (/^[A-Z][a-z]/.test(title) ? title[0]!.toLowerCase() + title.slice(1) : title);

export interface PlacedCallout {
  readonly callout: Callout;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** From the callout's edge to what it speaks of; none from a row that others part from the picture. */
  readonly leader?: readonly [Pixel, Pixel];
}

export interface Slots {
  readonly columns: number;
  readonly above: number;
  readonly below: number;
}

/** Room for callouts: two columns on a phone, three or four at the desk; one row above, below as many as it takes. */
export function slotsFor(callouts: readonly Callout[], width: number): Slots {
  const columns = width < 460 ? 2 : width < 700 ? 3 : 4;
  return { columns, above: 1, below: Math.ceil((callouts.length - rowAbove(callouts, columns).length) / columns) };
}

/** Those that would stand above, as far as there is room. */
const rowAbove = (callouts: readonly Callout[], columns: number): readonly Callout[] => callouts.filter(({ prefers }) => prefers === 'above').slice(0, columns);

/** How far left of its spot a callout begins, px, so that its leader runs at a slant. */
const slant = 56;

/** Gives every callout a place in a row above or below, as near as may be to what it speaks of, none over another. */
export function placeCallouts(callouts: readonly Callout[], train: PlacedTrain, fitted: FittedTrain, slots: Slots, row: number): readonly PlacedCallout[] {
  const width = fitted.width / slots.columns;
  const above = rowAbove(callouts, slots.columns);
  const below = callouts.filter((callout) => !above.includes(callout)).map((callout) => ({ callout, x: anchorOf(callout, train, fitted).at[0] })).toSorted((a, b) => a.x - b.x).map(({ callout }) => callout);
  const rows = [above, ...Array.from({ length: slots.below }, (_, line) => below.slice(line * slots.columns, (line + 1) * slots.columns))];
  return rows.flatMap((members, line) => {
    const top = line === 0 ? 0 : fitted.height - (slots.below - line + 1) * row;
    const spots = members.map((callout) => ({ callout, ...anchorOf(callout, train, fitted) })).toSorted((a, b) => a.at[0] - b.at[0]);
    const lefts = spread(spots.map(({ at }) => at[0] - slant), width, fitted.width);
    return spots.map(({ callout, at, reach }, index): PlacedCallout => {
      const left = lefts[index]!;
      const from: Pixel = [left + 12, line === 0 ? row - 6 : top - 2];
      const aim: Pixel = [at[0] + reach * 0.3 * Math.sign(from[0] - at[0]), at[1] + (line === 0 ? -1 : 1) * reach * 0.66];
      return { callout, left, top, width, ...(line <= 1 ? { leader: [from, aim] as const } : {}) };
    });
  });
}

/** Moves pieces of one width apart until none covers another, and all within the room; in the order given. */
function spread(wanted: readonly number[], width: number, room: number): readonly number[] {
  const lefts: number[] = [];
  for (const want of wanted) lefts.push(Math.max(want, lefts.length > 0 ? lefts.at(-1)! + width : 0, 0));
  let limit = room - width;
  for (let index = lefts.length - 1; index >= 0; index -= 1) {
    lefts[index] = Math.max(0, Math.min(lefts[index]!, limit));
    limit = lefts[index]! - width;
  }
  return lefts;
}

function anchorOf(callout: Callout, train: PlacedTrain, fitted: FittedTrain): { readonly at: Pixel; readonly reach: number } {
  const station = train.stations.find(({ id }) => id === callout.id);
  if (station) {
    const spoken = callout.rows[0]?.shafts ?? [];
    const largest = station.wheels.find(({ shaft }) => spoken.includes(shaft)) ?? station.wheels[0];
    return { at: fitted.stations.get(station.id)!, reach: (largest ? largest.root : 4) * fitted.scale };
  }
  const side = fitted.sides.find((each) => each.side.id === callout.id)!;
  const across = side.side.rotors.length > 0;
  const at: Pixel = across ? side.end : side.breakAt ? [side.breakAt[0] + (side.end[0] - side.breakAt[0]) * 0.45, side.breakAt[1]] : side.crossing;
  return { at, reach: across ? 8 : 5 };
}
