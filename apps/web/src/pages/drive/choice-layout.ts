import type { GearOption } from '@rotorwright/figures';
import type { Window } from '@rotorwright/machine';
import { inUnit } from '@rotorwright/units';

/** A combination that can be drawn: both speeds are known. rpm. */
export interface MapMark {
  readonly option: GearOption;
  readonly main: number;
  readonly tail: number;
}

/** Combinations that share a speed or a ratio, and the tooth counts that make it. */
export interface MapLine {
  /** Main speed in rpm, or turns of the tail for one of the main rotor. */
  readonly value: number;
  readonly label: string;
}

export interface MapPlan {
  readonly marks: readonly MapMark[];
  readonly x: { readonly min: number; readonly max: number };
  readonly y: { readonly min: number; readonly max: number };
  /** One main speed each; none when there are too many to be read. */
  readonly uprights: readonly MapLine[];
  /** One tail ratio each. */
  readonly slopes: readonly MapLine[];
}

/** More lines than this cannot be read. */
const mostLines = 9;

/** Lays the combinations out: range of both axes, lines through those that share a ratio. */
export function planMap(options: readonly GearOption[], mainBand: Window | undefined, tailBand: Window | undefined): MapPlan {
  const marks = options.flatMap((option): MapMark[] => (option.mainSpeed === undefined || option.tailSpeed === undefined ? [] : [{ option, main: inUnit(option.mainSpeed, 'rpm'), tail: inUnit(option.tailSpeed, 'rpm') }]));
  return {
    marks,
    x: range(marks.map(({ main }) => main), mainBand),
    y: range(marks.map(({ tail }) => tail), tailBand),
    uprights: lines(marks, ({ main }) => main),
    slopes: lines(marks, ({ main, tail }) => tail / main),
  };
}

function range(values: readonly number[], band: Window | undefined): { readonly min: number; readonly max: number } {
  const all = [...values, ...(band?.min === undefined ? [] : [inUnit(band.min, 'rpm')]), ...(band?.max === undefined ? [] : [inUnit(band.max, 'rpm')])];
  if (all.length === 0) return { min: 0, max: 1 };
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = (most - least || most * 0.1) * 0.1;
  return { min: least - room, max: most + room };
}

/** Groups by a value; each goes by the tooth counts that are alike within it and differ from other groups. */
function lines(marks: readonly MapMark[], valueOf: (mark: MapMark) => number): readonly MapLine[] {
  const groups = new Map<string, MapMark[]>();
  for (const mark of marks) {
    const key = valueOf(mark).toPrecision(10);
    groups.set(key, [...(groups.get(key) ?? []), mark]);
  }
  if (groups.size > mostLines || groups.size < 2) return [];
  const paths = Object.keys(marks[0]!.option.teeth).filter((path) => {
    const within = [...groups.values()].map((group) => new Set(group.map(({ option }) => option.teeth[path])));
    return within.every((counts) => counts.size === 1) && new Set(within.map((counts) => [...counts][0])).size > 1;
  });
  return [...groups.values()].map((group) => ({ value: valueOf(group[0]!), label: paths.map((path) => group[0]!.option.teeth[path]).join(' : ') })).toSorted((a, b) => a.value - b.value);
}

/** A combination in words: what is on each place with a choice. */
export function optionName(option: GearOption, titleOf: (path: string) => string): string {
  return Object.entries(option.teeth).map(([path, teeth]) => `${titleOf(path)} ${teeth}`).join(', ');
}

export const sameTeeth = (option: GearOption, teeth: Readonly<Record<string, number | undefined>>): boolean => Object.entries(option.teeth).every(([path, count]) => teeth[path] === count);
