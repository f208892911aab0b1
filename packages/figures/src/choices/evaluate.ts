import type { EntryPath, Machine } from '@rotorwright/machine';
import { solveDrive } from '../drive/solve.ts';
import { withTeeth } from '../set/conditions.ts';
import { figures } from '../set/figures.ts';
import type { Axis } from './axes.ts';
import { centreTable, type CentreMove } from './centres.ts';
import { columnOf, numberingOf, placeOn, toBuyColumn, type Numbering } from './columns.ts';
import { exactText, turnsOf } from './exact-ratio.ts';
import type { ChoiceConditions, GearChange, GearOption } from './option.ts';
import { monomialOf } from './monomials.ts';
import { aimsOf, rulesOf, type Exclusion } from './rules.ts';

/** Every combination of some axes, reckoned in columns; one is put together as an option only when it is asked for. */
export interface Evaluation {
  readonly count: number;
  /** Numbers of the combinations, best first. */
  readonly order: Uint32Array;
  readonly mainSpeed?: Float64Array;
  readonly tailSpeed?: Float64Array;
  readonly toBuy: Uint8Array;
  /** How many rules each combination breaks. */
  readonly broken: Uint16Array;
  readonly notAssessed: readonly string[];
  /** Values of a figure, when it follows from speeds. */
  readonly column: (figure: string) => Float64Array | undefined;
  readonly option: (index: number, rank: number) => GearOption;
}

export function evaluate(machine: Machine, axes: readonly Axis[], conditions: ChoiceConditions): Evaluation {
  // 1. The base, to which every combination is a change.
  const numbering = numberingOf(axes);
  const { count, baseTeeth } = numbering;
  const base = withTeeth(machine, Object.fromEntries(axes.map((axis, index) => [axis.path, baseTeeth[index]!]))).machine;
  const drive = solveDrive(base);
  const set = figures(base, conditions.sourceSpeed === undefined ? {} : { sourceSpeed: conditions.sourceSpeed });
  const monomial = (name: string) => monomialOf(base, drive, set, name);
  const main = drive.mainRotor && monomial(`speed ${drive.mainRotor.on}`);
  const tail = drive.tailRotor && monomial(`speed ${drive.tailRotor.on}`);
  const { rules, notAssessed } = rulesOf(base, drive, set, conditions.bands);

  // 2. Columns.
  const mainSpeed = main && columnOf(main, numbering);
  const tailSpeed = tail && columnOf(tail, numbering);
  const toBuy = toBuyColumn(numbering);
  const broken = new Uint16Array(count);
  const ruled = rules.map((rule) => ({ ...rule, column: columnOf(rule.monomial, numbering) }));
  for (const { column, min, max } of ruled) {
    // Written so that what is no number counts as broken.
    for (let index = 0; index < count; index += 1) if (!(column[index]! >= min && column[index]! <= max)) broken[index]! += 1;
  }
  const centres = centresOf(base, numbering);
  for (const centre of centres) for (let index = 0; index < count; index += 1) if (centre(index).fits === false) broken[index]! += 1;
  const away = new Float64Array(count);
  for (const aim of aimsOf(rules, [main, tail])) {
    const column = columnOf(aim.monomial, numbering);
    for (let index = 0; index < count; index += 1) away[index]! += Math.abs(column[index]! - aim.middle) / aim.middle;
  }

  // 3. Rank.
  // One key for each: rules broken before gears to buy before distance, which is below 1 after scaling.
  let farthest = 1;
  for (let index = 0; index < count; index += 1) if (away[index]! > farthest) farthest = away[index]!;
  const key = new Float64Array(count);
  for (let index = 0; index < count; index += 1) key[index] = broken[index]! * 1e5 + toBuy[index]! * 10 + away[index]! / farthest;
  const order = new Uint32Array(count);
  for (let index = 0; index < count; index += 1) order[index] = index;
  order.sort((a, b) => key[a]! - key[b]! || a - b);

  const mainTurns = turnsOf(drive, drive.source?.shaft, drive.mainRotor?.on);
  const tailTurns = turnsOf(drive, drive.tailRotor?.on, drive.mainRotor?.on);
  const kept = new Map([...base.couplings.values()].flatMap(({ driver, driven }) => [driver, driven].map((side) => [`${side.path}.teeth` as EntryPath, side.teeth] as const)));
  const option = (index: number, rank: number): GearOption => {
    const chosen = axes.map((axis, number) => ({ axis, fit: axis.options[placeOn(numbering, number, index)]! }));
    const teeth: Readonly<Record<EntryPath, number>> = Object.fromEntries(chosen.map(({ axis, fit }) => [axis.path, fit.teeth]));
    const count = (path: EntryPath): number => teeth[path] ?? kept.get(path)!;
    const moves = centres.map((centre) => centre(index));
    return {
      teeth,
      changes: chosen.filter(({ fit }) => !fit.fitted).map(({ axis, fit }) => changeOf(axis, fit)),
      ...(mainSpeed ? { mainSpeed: mainSpeed[index]! } : {}),
      ...(tailSpeed ? { tailSpeed: tailSpeed[index]! } : {}),
      ...(mainTurns && drive.mainRotor ? { ratio: exactText(mainTurns, count) } : {}),
      ...(tailTurns && drive.mainRotor ? { tailRatio: exactText(tailTurns, count) } : {}),
      centres: moves,
      ruledOut: [
        ...ruled.filter(({ column, min, max }) => !(column[index]! >= min && column[index]! <= max)).map(({ exclusion, column }): Exclusion => ({ ...exclusion, value: column[index]! })),
        ...moves.filter((move) => move.fits === false).map((move): Exclusion => ({ kind: 'centre', of: move.coupling, path: move.path, ...(move.centre === undefined ? {} : { value: move.centre }), ...move.slot, shown: 'mm' })),
      ],
      rank,
    };
  };
  const column = (figure: string): Float64Array | undefined => {
    const found = monomial(figure);
    return found && columnOf(found, numbering);
  };
  return { count, order, ...(mainSpeed ? { mainSpeed } : {}), ...(tailSpeed ? { tailSpeed } : {}), toBuy, broken, notAssessed, column, option };
}

function changeOf(axis: Axis, { teeth, choice }: Axis['options'][number]): GearChange {
  return {
    coupling: axis.coupling.id,
    side: axis.side,
    path: axis.path,
    ...(axis.fitted === undefined ? {} : { fitted: axis.fitted }),
    teeth,
    ...(choice?.code === undefined ? {} : { code: choice.code }),
    ...(choice?.price === undefined ? {} : { price: choice.price }),
  };
}

/** For every mesh or belt with a choice: where its shafts must sit, by number of the combination. */
function centresOf(machine: Machine, numbering: Numbering): readonly ((index: number) => CentreMove)[] {
  const { axes } = numbering;
  return [...new Set(axes.map((axis) => axis.coupling.id))].flatMap((id) => {
    const coupling = machine.couplings.get(id)!;
    const side = (name: 'driver' | 'driven') => {
      const number = axes.findIndex((axis) => axis.coupling.id === id && axis.side === name);
      const axis = axes[number];
      return axis ? { number, counts: axis.options.map((option) => option.teeth), fitted: axis.fitted } : { number, counts: [coupling[name].teeth], fitted: coupling[name].teeth };
    };
    const driver = side('driver');
    const driven = side('driven');
    const table = centreTable(coupling, driver.counts, driven.counts, { driver: driver.fitted, driven: driven.fitted });
    if (!table) return [];
    const place = (number: number, index: number): number => (number < 0 ? 0 : placeOn(numbering, number, index));
    return [(index: number): CentreMove => table[place(driver.number, index) * driven.counts.length + place(driven.number, index)]!];
  });
}
