import type { Coupling, EntryPath, Machine, Window } from '@rotorwright/machine';
import { greatestCommonDivisor, ratio, ratioText } from '@rotorwright/mechanics';
import { reach } from '../drive/reach.ts';
import { solveDrive, type DriveSolution } from '../drive/solve.ts';
import { figures } from '../set/figures.ts';
import { withTeeth } from '../set/conditions.ts';
import { axesOf, type Axis } from './axes.ts';
import { centreTable, type CentreMove } from './centres.ts';
import { add, factorsOf, monomialOf, powersOf, type Monomial } from './monomials.ts';

/** One gear that is not the fitted one. */
export interface GearChange {
  readonly coupling: string;
  readonly side: 'driver' | 'driven';
  /** Entry of the tooth count. */
  readonly path: EntryPath;
  readonly fitted?: number;
  readonly teeth: number;
  readonly code?: string;
  readonly price?: string;
}

/** Why a combination is ruled out. `exclusionText` puts it into words. */
export interface Exclusion {
  readonly kind: 'band' | 'limit' | 'centre' | 'loop';
  /** Figure, or coupling, that it concerns. */
  readonly of: string;
  /** Entry that sets the limit. */
  readonly path: EntryPath;
  readonly value?: number;
  readonly min?: number;
  readonly max?: number;
  readonly shown?: string;
}

/** One combination of gears that can be bought. */
export interface GearOption {
  /** Every tooth count with a choice, by its entry: goes straight into `Conditions.teeth`. */
  readonly teeth: Readonly<Record<EntryPath, number>>;
  /** What is not fitted yet, and so must be bought. */
  readonly changes: readonly GearChange[];
  /** rad/s */
  readonly mainSpeed?: number;
  readonly tailSpeed?: number;
  /** Turns of the source for one of the main rotor, exact: "58/7". */
  readonly ratio?: string;
  /** Turns of the tail for one of the main rotor, exact. */
  readonly tailRatio?: string;
  readonly centres: readonly CentreMove[];
  readonly ruledOut: readonly Exclusion[];
  /** 1 is best. */
  readonly rank: number;
}

export interface GearChoices {
  /** Best first; those that are ruled out stand last. */
  readonly options: readonly GearOption[];
  readonly count: number;
  /** How many are ruled out. */
  readonly excluded: number;
  /** Figures of `limits` that no tooth count changes, or that are not known: not assessed. */
  readonly notAssessed: readonly string[];
  /** More combinations than are looked at: nothing was computed. */
  readonly tooMany?: number;
}

export interface ChoiceConditions {
  /** Wanted speeds by rotor, rad/s; the `wanted` of the file when not given. */
  readonly bands?: Readonly<Record<string, Window>>;
  /** rad/s */
  readonly sourceSpeed?: number;
}

/** More than these are refused: they would take memory, and nobody reads them. */
const mostCombinations = 200_000;

/** A figure that must stay within a window, or a loop that must close: all follow from one product of tooth counts. */
interface Rule {
  readonly monomial: Monomial;
  readonly exclusion: Omit<Exclusion, 'value'>;
  readonly min: number;
  readonly max: number;
}

/**
 * Every combination of the gears that the file offers: speeds, what must be bought, how centre distances move, and
 * what rules it out. Ranked: not ruled out, fewest to buy, nearest the middle of the wanted bands (without bands:
 * nearest to what is fitted).
 */
export function gearChoices(machine: Machine, conditions: ChoiceConditions = {}): GearChoices {
  return choicesOver(machine, axesOf(machine), conditions);
}

/** As `gearChoices`, over some of the places with a choice; the others keep what is fitted. */
export function choicesOver(machine: Machine, axes: readonly Axis[], conditions: ChoiceConditions): GearChoices {
  const count = axes.reduce((product, axis) => product * axis.options.length, 1);
  if (count > mostCombinations) return { options: [], count: 0, excluded: 0, notAssessed: [], tooMany: count };
  // 1. The base: what is fitted, or the smallest on offer where nothing is.
  const baseTeeth = axes.map((axis) => axis.fitted ?? axis.options[0]!.teeth);
  const fitted = withTeeth(machine, Object.fromEntries(axes.map((axis, index) => [axis.path, baseTeeth[index]!]))).machine;
  const drive = solveDrive(fitted);
  const base = figures(fitted, conditions.sourceSpeed === undefined ? {} : { sourceSpeed: conditions.sourceSpeed });
  const { mainRotor, tailRotor } = drive;
  const speedOf = (shaft: string | undefined): Monomial | undefined => (shaft === undefined ? undefined : monomialOf(fitted, drive, base, `speed ${shaft}`));
  const main = speedOf(mainRotor?.on);
  const tail = speedOf(tailRotor?.on);
  const { rules, notAssessed } = rulesOf(fitted, drive, base, conditions);
  const aims = aimsOf(rules, main, tail);

  // 2. One pass over all combinations, the last axis turning fastest, for each product that is asked for.
  const products = (monomial: Monomial | undefined): Float64Array | undefined => monomial && productsOf(monomial, axes, baseTeeth, count);
  const mainSpeeds = products(main);
  const tailSpeeds = products(tail);
  const broken = new Uint16Array(count);
  const values = rules.map(({ monomial, min, max }) => {
    const all = products(monomial)!;
    for (let index = 0; index < count; index += 1) if (!(all[index]! >= min && all[index]! <= max)) broken[index]! += 1;
    return all;
  });
  const centres = centreTables(fitted, axes, baseTeeth);
  const strides = stridesOf(axes);
  for (const table of centres) {
    for (let index = 0; index < count; index += 1) if (table.at(index).fits === false) broken[index]! += 1;
  }

  // 3. Rank.
  const toBuy = new Uint8Array(count);
  axes.forEach((axis, number) => {
    for (let index = 0; index < count; index += 1) if (!optionAt(axis, strides[number]!, index).fitted) toBuy[index]! += 1;
  });
  const away = new Float64Array(count);
  for (const { monomial, middle } of aims) {
    const all = products(monomial)!;
    for (let index = 0; index < count; index += 1) away[index]! += Math.abs(all[index]! - middle) / middle;
  }
  const order = Uint32Array.from({ length: count }, (_, index) => index).sort((a, b) => broken[a]! - broken[b]! || toBuy[a]! - toBuy[b]! || away[a]! - away[b]! || a - b);

  // 4. Words and numbers for each.
  const mainRatio = mainRotor && exactOf(drive, mainRotor.on, -1);
  const tailRatio = mainRotor && tailRotor && exactOf(drive, tailRotor.on, 1, mainRotor.on);
  const fixedTeeth = teethOf(fitted);
  const exact = (powers: ReadonlyMap<string, number>, teeth: Readonly<Record<EntryPath, number>>): string => {
    let above = 1;
    let below = 1;
    for (const [path, power] of powers) {
      const each = (teeth[path] ?? fixedTeeth.get(path)!) ** Math.abs(power);
      if (power > 0) above *= each;
      else below *= each;
    }
    // Beyond 2^53 the products of a long train are taken with whole numbers of any size.
    if (!Number.isSafeInteger(above) || !Number.isSafeInteger(below)) return exactText(powers, (path) => teeth[path] ?? fixedTeeth.get(path)!);
    const common = greatestCommonDivisor(above, below);
    return below === common ? `${above / common}` : `${above / common}/${below / common}`;
  };
  let excluded = 0;
  const options = Array.from(order, (index, position): GearOption => {
    const teeth: Record<EntryPath, number> = {};
    const changes: GearChange[] = [];
    axes.forEach((axis, number) => {
      const option = optionAt(axis, strides[number]!, index);
      teeth[axis.path] = option.teeth;
      if (option.fitted) return;
      const { choice } = option;
      changes.push({
        coupling: axis.coupling.id, side: axis.side, path: axis.path, teeth: option.teeth,
        ...(axis.fitted === undefined ? {} : { fitted: axis.fitted }),
        ...(choice?.code === undefined ? {} : { code: choice.code }),
        ...(choice?.price === undefined ? {} : { price: choice.price }),
      });
    });
    const ruledOut: Exclusion[] = [];
    if (broken[index]! > 0) {
      excluded += 1;
      rules.forEach(({ exclusion, min, max }, number) => {
        const value = values[number]![index]!;
        if (!(value >= min && value <= max)) ruledOut.push({ ...exclusion, value });
      });
    }
    const moves = centres.map((table) => table.at(index));
    for (const move of moves) if (move.fits === false) ruledOut.push({ kind: 'centre', of: move.coupling, path: move.path, value: move.centre!, ...move.slot, shown: 'mm' });
    return {
      teeth,
      changes,
      ...(mainSpeeds ? { mainSpeed: mainSpeeds[index]! } : {}),
      ...(tailSpeeds ? { tailSpeed: tailSpeeds[index]! } : {}),
      ...(mainRatio ? { ratio: exact(mainRatio, teeth) } : {}),
      ...(tailRatio ? { tailRatio: exact(tailRatio, teeth) } : {}),
      centres: moves,
      ruledOut,
      rank: position + 1,
    };
  });
  return { options, count, excluded, notAssessed };
}

/** How many combinations pass before an axis turns to its next option; the last axis turns fastest. */
function stridesOf(axes: readonly Axis[]): readonly number[] {
  const strides: number[] = [];
  let stride = 1;
  for (const axis of axes.toReversed()) {
    strides.unshift(stride);
    stride *= axis.options.length;
  }
  return strides;
}

const optionAt = (axis: Axis, stride: number, index: number): Axis['options'][number] => axis.options[Math.floor(index / stride) % axis.options.length]!;

function productsOf(monomial: Monomial, axes: readonly Axis[], baseTeeth: readonly number[], count: number): Float64Array {
  const all = new Float64Array(count).fill(monomial.base);
  let done = count;
  axes.forEach((axis, number) => {
    const size = axis.options.length;
    const run = done / size;
    done = run;
    if (!monomial.powers.get(axis.path)) return;
    const factors = factorsOf(monomial, axis, baseTeeth[number]!);
    for (let start = 0, option = 0; start < count; start += run, option = (option + 1) % size) {
      const factor = factors[option]!;
      for (let index = start; index < start + run; index += 1) all[index]! *= factor;
    }
  });
  return all;
}

function rulesOf(machine: Machine, drive: DriveSolution, base: ReturnType<typeof figures>, conditions: ChoiceConditions): { readonly rules: readonly Rule[]; readonly notAssessed: readonly string[] } {
  const rules: Rule[] = [];
  const notAssessed: string[] = [];
  const within = (kind: 'band' | 'limit', name: string, path: EntryPath, { min, max }: Window): void => {
    const monomial = monomialOf(machine, drive, base, name);
    if (!monomial) {
      notAssessed.push(name);
      return;
    }
    const shown = base.get(name)!.shown;
    rules.push({ monomial, exclusion: { kind, of: name, path, ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }), shown }, min: min ?? -Infinity, max: max ?? Infinity });
  };
  for (const rotor of machine.rotors.values()) {
    const band = conditions.bands?.[rotor.id] ?? rotor.wanted;
    if (band && (band.min !== undefined || band.max !== undefined)) within('band', `speed ${rotor.on}`, `${rotor.path}.wanted`, band);
  }
  for (const limit of machine.limits.values()) within('limit', limit.of, limit.path, limit.window);
  return { rules: [...rules, ...loopRules(drive)], notAssessed };
}

/** Couplings that close a loop must agree with the other way round it: their product is 1. */
function loopRules(drive: DriveSolution): readonly Rule[] {
  const driven = drive.states.get('driven');
  if (!driven) return [];
  const { engaged, paths } = reach(drive.legs, driven.source, { clutchesOpen: false });
  const used = new Set([...paths.values()].flat().map((hop) => hop.leg));
  return [...drive.legs.values()].filter((leg) => engaged.has(leg.coupling.id) && !used.has(leg) && leg.missing.length === 0).map((leg): Rule => {
    const powers = powersOf([...paths.get(leg.driver)!, { leg, forward: true, from: leg.driver, to: leg.driven }]);
    for (const [path, power] of powersOf(paths.get(leg.driven)!, -1)) add(powers, path, power);
    let base = 1;
    for (const [path, power] of powers) base *= countAt(drive, path) ** power;
    // Two ways of whole tooth counts that differ at all differ by far more than rounding does.
    return { monomial: { name: leg.coupling.id, base, powers }, exclusion: { kind: 'loop', of: leg.coupling.id, path: leg.coupling.path }, min: 1 - 1e-11, max: 1 + 1e-11 };
  });
}

function countAt(drive: DriveSolution, path: EntryPath): number {
  for (const { coupling } of drive.legs.values()) for (const side of [coupling.driver, coupling.driven]) if (`${side.path}.teeth` === path) return side.teeth!;
  return 1;
}

/** What to be near to: the middles of the bands; without any, the speeds with what is fitted. */
function aimsOf(rules: readonly Rule[], main: Monomial | undefined, tail: Monomial | undefined): readonly { readonly monomial: Monomial; readonly middle: number }[] {
  const bands = rules.filter(({ exclusion, min, max }) => exclusion.kind === 'band' && Number.isFinite(min + max) && min + max > 0).map(({ monomial, min, max }) => ({ monomial, middle: (min + max) / 2 }));
  if (bands.length > 0) return bands;
  return [main, tail].filter((monomial) => monomial !== undefined && monomial.base > 0).map((monomial) => ({ monomial: monomial!, middle: monomial!.base }));
}

function exactOf(drive: DriveSolution, shaft: string, power: 1 | -1, over?: string): ReadonlyMap<string, number> | undefined {
  const motions = drive.states.get('driven')?.motions;
  const motion = motions?.get(shaft);
  if (motion?.condition !== 'turns') return undefined;
  const powers = powersOf(motion.path, power);
  const below = over === undefined ? undefined : motions?.get(over);
  if (over !== undefined && below?.condition !== 'turns') return undefined;
  for (const [path, each] of below ? powersOf(below.path, -power) : []) add(powers, path, each);
  return powers;
}

function exactText(powers: ReadonlyMap<string, number>, teeth: (path: EntryPath) => number): string {
  let above = 1n;
  let below = 1n;
  for (const [path, power] of powers) {
    const each = BigInt(teeth(path)) ** BigInt(Math.abs(power));
    if (power > 0) above *= each;
    else below *= each;
  }
  return ratioText(ratio(above, below));
}

const teethOf = (machine: Machine): ReadonlyMap<EntryPath, number> =>
  new Map([...machine.couplings.values()].flatMap((coupling: Coupling) => [coupling.driver, coupling.driven].flatMap((side) => (side.teeth === undefined ? [] : [[`${side.path}.teeth`, side.teeth] as const]))));

/** Centre distances of every mesh with a choice, by number of the combination. */
function centreTables(machine: Machine, axes: readonly Axis[], baseTeeth: readonly number[]): readonly { at(index: number): CentreMove }[] {
  const strides = stridesOf(axes);
  return [...new Set(axes.map((axis) => axis.coupling.id))].flatMap((id) => {
    const coupling = machine.couplings.get(id)!;
    const [driver, driven] = (['driver', 'driven'] as const).map((side) => axes.findIndex((axis) => axis.coupling.id === id && axis.side === side)) as [number, number];
    const counts = (number: number, fixed: number | undefined): readonly (number | undefined)[] => (number < 0 ? [fixed] : axes[number]!.options.map((option) => option.teeth));
    const driverCounts = counts(driver, coupling.driver.teeth);
    const drivenCounts = counts(driven, coupling.driven.teeth);
    const before = { driver: driver < 0 ? coupling.driver.teeth : axes[driver]!.fitted && baseTeeth[driver], driven: driven < 0 ? coupling.driven.teeth : axes[driven]!.fitted && baseTeeth[driven] };
    const table = centreTable(coupling, driverCounts, drivenCounts, before);
    if (!table) return [];
    const place = (number: number, index: number): number => (number < 0 ? 0 : Math.floor(index / strides[number]!) % axes[number]!.options.length);
    return [{ at: (index: number): CentreMove => table[place(driver, index) * drivenCounts.length + place(driven, index)]! }];
  });
}
