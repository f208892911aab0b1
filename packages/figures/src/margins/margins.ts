import type { Machine } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import { builderFor, entry, type Builder, type Memory } from '../set/builder.ts';
import { Outcomes } from '../set/outcomes.ts';
import type { FigureSet } from '../set/figure-set.ts';
import { addBearings } from './bearing-margins.ts';
import { marginBench, repeatMargins, type MarginBench } from './bench.ts';
import { addBoomMargins } from './boom-margins.ts';
import { addHousings } from './clamp-margins.ts';
import { addControlMargins } from './control-margins.ts';
import { addGearMargins } from './gear-margins.ts';
import { addLimits } from './limit-margins.ts';
import { loadCases, type LoadCase, type LoadCaseId } from './load-cases.ts';
import { addLockMargins } from './lock-margins.ts';
import type { Margin, MarginWord } from './margin.ts';
import { addRotorMargins } from './rotor-margins.ts';
import { standingMargins } from './standing-margins.ts';
import { addTwists } from './tube-twist.ts';
import { addTorqueMargins } from './torque-margins.ts';
import { addVibration, shakingOrders, type NaturalMode, type ShakingOrder } from './vibration.ts';

/** Every margin of a machine, tightest first, those that are not assessed last. */
export interface Margins {
  readonly all: readonly Margin[];
  /** The figures of the machine and those that the margins stand on: any of them opens into its working. */
  readonly set: FigureSet;
  readonly cases: readonly LoadCase[];
  /** What shakes, and what may answer: the map of speeds and frequencies. */
  readonly orders: readonly ShakingOrder[];
  readonly modes: readonly NaturalMode[];
  /** For a run after this one. */
  readonly reckoned: Reckoned;
}

/** What a run leaves to the next. */
interface Reckoned {
  readonly outcomes: Memory['before'];
  readonly one: LoadCaseId | undefined;
  readonly bench: MarginBench;
  readonly modes: readonly NaturalMode[];
}

/**
 * What each part bears over what it sees.
 *
 * @param set     figures of the driven machine
 * @param one     a single load case; the hardest of all for each part when left out
 * @param before  an earlier run, of the same machine at another speed for one: what stays is not reckoned again, and what was done is done again with other numbers
 */
export function margins(set: FigureSet, one?: LoadCaseId, before?: Pick<Margins, 'reckoned'>): Margins {
  const machine = set.fitted;
  const last = before?.reckoned;
  const memory: Memory = { before: last?.outcomes ?? new Outcomes(), now: new Outcomes() };
  const figures = (): Builder => builderFor(machine, set.all, memory, entry('machine.mass', set.machine.mass, 'kg'));
  const again = last?.one === one && last?.bench.machine === machine ? repeatMargins(last.bench, figures()) : undefined;
  const { bench, modes } = last && again ? last : reckon(figures(), machine, one);
  const { builder, margins: all } = again ?? bench.made;
  return { all: told(all, machine).toSorted(byTightness), set: { ...set, all: builder.all(), get: builder.get }, cases: loadCases(machine), orders: shakingOrders(machine), modes, reckoned: { outcomes: memory.now, one, bench, modes } };
}

function reckon(builder: Builder, machine: Machine, one: LoadCaseId | undefined): Pick<Reckoned, 'bench' | 'modes'> {
  const cases = loadCases(machine);
  const bench = marginBench(builder, machine, one === undefined ? cases : cases.filter(({ id }) => id === one));
  addRotorMargins(bench);
  addTorqueMargins(bench);
  addBearings(bench);
  addHousings(bench);
  addBoomMargins(bench);
  addGearMargins(bench);
  addTwists(bench);
  addControlMargins(bench);
  const modes = addVibration(bench);
  addLimits(bench);
  addLockMargins(bench);
  // What a blade hangs on is held against its pull already: it stays.
  bench.adopt(standingMargins(machine));
  return { bench, modes };
}

/** Titles that several margins share say the module too. */
function told(all: readonly Margin[], machine: Machine): readonly Margin[] {
  const counts = new Map<string, number>();
  for (const { title } of all) counts.set(title, (counts.get(title) ?? 0) + 1);
  return all.map((margin) => {
    const module = margin.module === undefined || counts.get(margin.title) === 1 ? undefined : machine.modules.get(margin.module);
    return module === undefined ? margin : { ...margin, title: `${margin.title} (${inSentence(module.title)})` };
  });
}

const byTightness = (a: Margin, b: Margin): number => (a.value ?? Infinity) - (b.value ?? Infinity) || (a.value === undefined ? 1 : 0) - (b.value === undefined ? 1 : 0);

/** How many margins are exceeded, tight, hold, are not assessed. */
export function countMargins(all: readonly Margin[]): Readonly<Record<MarginWord, number>> {
  const counts = { exceeded: 0, tight: 0, holds: 0, unknown: 0 };
  for (const { word } of all) counts[word] += 1;
  return counts;
}
