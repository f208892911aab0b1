import { catalogue } from '@rotorwright/calculations';
import type { EntryPath } from '@rotorwright/machine';
import { fromUnit, inUnit, showQuantity, writeQuantity } from '@rotorwright/units';
import type { Figure, FigureInput } from '../figure.ts';
import { builderFor } from '../set/builder.ts';
import type { FigureSet } from '../set/figure-set.ts';
import { usual } from '../working/working.ts';
import { HOLDS_FROM } from './margin.ts';
import type { Margins } from './margins.ts';

/** An entry of the file that alone, the rest as it is, would take a margin to where it holds. */
export interface Remedy {
  readonly entry: EntryPath;
  /** As the file has it and as it would have to be at least, or at most, SI. */
  readonly now: number;
  readonly wanted: number;
  /** Unit in which it is told; "-" for a plain number. */
  readonly shown: string;
  /** The wanted value as the file would say it: "325 N". */
  readonly written: string;
  /** What the margin would then be, other parts of the reckoning as they are. */
  readonly margin: number;
}

/** Sections that are not moved to make a part hold: what a part may bear, what was measured, what is asked of all. */
const fixed: ReadonlySet<string> = new Set(['limits', 'flown', 'loads']);
/** Entries that are not moved by parts of themselves, or that come in series. */
const unmoved: ReadonlySet<string> = new Set(['blades', 'cells', 'module', 'roughness']);
/** How far an entry is moved at most, logarithm. */
const farthest = Math.log(1.5);
/** Step by which the pull of an entry is felt, and the least pull that is worth a look, both logarithms. */
const feeler = 0.02;
const leastPull = 0.1;
/** How near above the wanted margin the search ends, and how long it may take. */
const enough = 1e-4;
const mostSteps = 8;
/** Digits to which a wanted value is rounded, away from danger, and how often one more is tried. */
const digits = 3;
const mostRoundings = 3;

/** An entry under the margin that can be moved. */
interface Lever {
  readonly entry: EntryPath;
  readonly now: number;
  readonly shown: string;
  readonly whole: boolean;
}

/**
 * Which entries would take a margin to where it holds, each alone: those under its working, moved until it does.
 *
 * @param name  of a margin, as `Margin.name`
 * @returns     the smallest move first; none where it holds already, is not known, or nothing would help that moves by a half at most
 * @neglects    that another load case may come to govern, and what a change asks of other parts: **Change** tells both
 */
export function remedies({ set }: Margins, name: string): readonly Remedy[] {
  const before = set.get(name)?.value;
  if (before === undefined || before >= HOLDS_FROM || !(before > 0)) return [];
  const below = figuresBelow(set, name);
  return leversOf(below)
    .flatMap((lever) => remedyOf(lever, before, trial(set, below, lever.entry, name)) ?? [])
    .toSorted((a, b) => Math.abs(Math.log(a.wanted / a.now)) - Math.abs(Math.log(b.wanted / b.now)));
}

/** "326 N or more, now 255 N". */
export function remedyWords({ now, wanted, shown }: Pick<Remedy, 'now' | 'wanted' | 'shown'>): string {
  const words = (value: number): string => showQuantity(value, shown, { significant: digits + 1 });
  return `${words(wanted)} or ${wanted > now ? 'more' : 'less'}, now ${words(now)}`;
}

/** The figures that one stands on, each behind those that it stands on itself, and the one. */
function figuresBelow(set: FigureSet, name: string, found = new Map<string, Figure>()): ReadonlyMap<string, Figure> {
  const figure = set.get(name);
  if (figure === undefined || found.has(name)) return found;
  visit(figure.inputs, (input) => void ('figure' in input && figuresBelow(set, input.figure, found)));
  found.set(name, figure);
  return found;
}

/** Every input of figures, rows and records, but for the lists and records themselves. */
function visit(inputs: Readonly<Record<string, FigureInput>>, each: (input: FigureInput, label: string) => void): void {
  for (const [label, input] of Object.entries(inputs)) {
    if ('list' in input) for (const row of input.list) visit(row, each);
    else if ('record' in input) visit(input.record, each);
    else each(input, label);
  }
}

/** What was made of an entry that grows with it: nothing, or its half. */
const shares: ReadonlyMap<string | undefined, number> = new Map([[undefined, 1], ['half of', 0.5]]);

/** Numbers of the file that are read as they stand, wherever they are read. */
function leversOf(below: ReadonlyMap<string, Figure>): readonly Lever[] {
  const levers = new Map<EntryPath, Lever | undefined>();
  for (const figure of below.values()) {
    const specs = figure.calculation === undefined ? undefined : catalogue.get(figure.calculation)?.inputs;
    visit(figure.inputs, (input, label) => {
      if (!('entry' in input)) return;
      // What others stand on besides would have to be made anew with them.
      for (const other of input.with ?? []) levers.set(other, undefined);
      const path = input.entry.split('.');
      if (fixed.has(path[0]!) || unmoved.has(path.at(-1)!)) return;
      const share = 'value' in input && input.with === undefined ? shares.get(input.as) : undefined;
      if ('table' in input || share === undefined) return void levers.set(input.entry, undefined);
      if (typeof input.value !== 'number' || input.value === 0 || (levers.has(input.entry) && levers.get(input.entry) === undefined)) return;
      const spec = specs?.[label];
      const shown = (spec?.kind === 'number' ? spec.shown : undefined) ?? usual[input.unit] ?? input.unit;
      levers.set(input.entry, { entry: input.entry, now: input.value / share, shown, whole: input.entry.endsWith('.teeth') });
    });
  }
  return [...levers.values()].filter((lever) => lever !== undefined);
}

/** The margin with an entry so many times what it is; undefined where it cannot be reckoned. */
type Trial = (factor: number) => number | undefined;

function trial(set: FigureSet, below: ReadonlyMap<string, Figure>, moved: EntryPath, name: string): Trial {
  const touched = new Set<string>();
  for (const figure of below.values()) visit(figure.inputs, (input) => void ((('entry' in input && input.entry === moved) || ('figure' in input && touched.has(input.figure))) && touched.add(figure.name)));
  const order = [...below.values()].filter((figure) => touched.has(figure.name));
  return (factor) => {
    const builder = builderFor(set.fitted, set.all);
    for (const figure of order) {
      const inputs = movedIn(figure.inputs, moved, factor);
      const { title, unit, shown, calculation, output } = figure;
      if (calculation === undefined || output === undefined) builder.given(figure.name, title, unit, shown, inputs['value'], []);
      else builder.add({ name: figure.name, title, unit, shown, calculation, output, inputs });
    }
    return builder.get(name)?.value;
  };
}

function movedIn(inputs: Readonly<Record<string, FigureInput>>, moved: EntryPath, factor: number): Readonly<Record<string, FigureInput>> {
  return Object.fromEntries(Object.entries(inputs).map(([label, input]): [string, FigureInput] => {
    if ('list' in input) return [label, { ...input, list: input.list.map((row) => movedIn(row, moved, factor)) }];
    if ('record' in input) return [label, { record: movedIn(input.record, moved, factor) }];
    return [label, 'value' in input && input.entry === moved && typeof input.value === 'number' ? { ...input, value: exactly(input.value * factor) } : input];
  }));
}

/** A product as it was meant: 113 · 114/113 is 114. */
const exactly = (value: number): number => Number(value.toPrecision(15));

function remedyOf({ entry, now, shown, whole }: Lever, before: number, marginAt: Trial): Remedy | undefined {
  const found = whole ? wholeSteps(now, before, marginAt) : rounded(now, shown, marginAt, factorFor(before, marginAt));
  return found && { entry, now, shown, ...found, written: hasUnit(shown) ? writeQuantity(found.wanted, shown) : String(found.wanted) };
}

const hasUnit = (shown: string): boolean => shown !== '-' && shown !== '';

type Reached = Pick<Remedy, 'wanted' | 'margin'>;

/** The value that so many times the present one is, with few digits, on the side on which the margin holds. */
function rounded(now: number, shown: string, marginAt: Trial, factor: number | undefined): Reached | undefined {
  if (factor === undefined) return undefined;
  const told = (value: number): number => (hasUnit(shown) ? inUnit(value, shown) : value);
  const exact = told(now * factor);
  const step = 10 ** (Math.floor(Math.log10(Math.abs(exact))) - digits + 1);
  const up = exact > told(now);
  // The search ends a little beyond: the nearer one may hold.
  const nearest = (up ? Math.floor : Math.ceil)(exact / step);
  for (let round = 0; round < mostRoundings; round += 1) {
    const value = Number(((nearest + (up ? round : -round)) * step).toPrecision(digits + 1));
    const wanted = hasUnit(shown) ? fromUnit(value, shown) : value;
    const margin = marginAt(wanted / now);
    if (margin !== undefined && margin >= HOLDS_FROM) return { wanted, margin };
  }
  return undefined;
}

/** The nearest factor at which the margin holds, by its pull near one and then by secants; both as logarithms, for loads and strengths go by powers. */
function factorFor(before: number, marginAt: Trial): number | undefined {
  const wanted = Math.log(HOLDS_FROM * (1 + enough / 2));
  const start = Math.log(before);
  const felt = marginAt(Math.exp(feeler));
  if (felt === undefined || !(felt > 0)) return undefined;
  let pull = (Math.log(felt) - start) / feeler;
  let [last, lastValue] = [0, start];
  for (let step = 0; step < mostSteps; step += 1) {
    if (!(Math.abs(pull) > leastPull)) return undefined;
    const next = last + (wanted - lastValue) / pull;
    if (!(Math.abs(next) <= farthest)) return undefined;
    const margin = marginAt(Math.exp(next));
    if (margin === undefined || !(margin > 0)) return undefined;
    const value = Math.log(margin);
    if (margin >= HOLDS_FROM && margin <= HOLDS_FROM * (1 + enough)) return Math.exp(next);
    if (next === last) return undefined;
    pull = (value - lastValue) / (next - last);
    [last, lastValue] = [next, value];
  }
  return undefined;
}

/** Tooth by tooth, to the side on which the margin grows. */
function wholeSteps(now: number, before: number, marginAt: Trial): Reached | undefined {
  for (const side of [1, -1]) {
    let last = before;
    for (let at = now + side; Math.abs(Math.log(at / now)) <= farthest; at += side) {
      const margin = marginAt(at / now);
      if (margin === undefined || !(margin > last)) break;
      if (margin >= HOLDS_FROM) return { wanted: at, margin };
      last = margin;
    }
  }
  return undefined;
}
