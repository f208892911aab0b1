import { remembered, type EntryPath, type InstanceId, type Joint, type Machine, type Part } from '@rotorwright/machine';
import { materials, type Material } from '@rotorwright/mechanics';
import { helixPush, type Push } from '../directions/helix-push.ts';
import { inFirstCopy, membersOf, partAt, type Members } from '../directions/members.ts';
import { drivenWays, type TorqueWay } from '../directions/torque-path.ts';
import { solveDrive, type DriveSolution } from '../drive/solve.ts';
import type { Figure, FigureInput } from '../figure.ts';
import { entry, gather, type Builder, type Draft } from '../set/builder.ts';
import { applicationFactor, type LoadCase } from './load-cases.ts';
import { wordOf, type Margin } from './margin.ts';

/** A figure that stands already, by its name; or one to be computed for this margin alone. */
export type Side = string | Omit<Draft, 'name'>;

export interface MarginDraft {
  /** First word of its name: `pin-shear`. */
  readonly kind: string;
  readonly of: string;
  readonly module?: string;
  readonly title: string;
  readonly capacity: Side;
  readonly demand: Side;
  readonly loadCase?: LoadCase;
  readonly leavesOut?: readonly string[];
  readonly improve?: readonly EntryPath[];
}

/** Of a machine, at whatever speed, mass and load: which way everything turns and pushes, and what belongs together. */
export interface Structure {
  /** With the mass of the file. */
  readonly machine: Machine;
  readonly drive: DriveSolution;
  readonly members: Members;
  readonly ways: ReadonlyMap<string, TorqueWay>;
  readonly pushes: readonly Push[];
  readonly application: FigureInput;
  partAt(instance: InstanceId | undefined): Part | undefined;
  /** Copies of a module are alike: only the first is reckoned. */
  isFirst(thing: { readonly module: string }): boolean;
}

/** What a figure is, whatever its value. */
type Known = Pick<Figure, 'title' | 'unit' | 'shown'>;

/** Figures to be added. What is added may hang on which figures there are, but on the value of none: for that there is `choose`. */
export interface MarginFigures {
  add(draft: Draft): void;
  /** One that stands on the all-up mass, which may be another at the next run. */
  addWith(make: (mass: Builder['mass']) => Draft): void;
  given(...figure: Parameters<Builder['given']>): void;
  take(from: Builder): void;
  get(name: string): Known | undefined;
}

/** Figures and margins of one run. */
interface Run {
  readonly builder: Builder;
  readonly margins: Margin[];
}

/** Something done for the margins; false when it came out otherwise than the first time, so that what follows it may not be what was done then. */
type Act = (run: Run) => boolean;

/**
 * What margins are made with: the machine as computed, its load cases, and the list that grows. It notes all that is done, so
 * that `repeatMargins` can do it again when nothing but the numbers is another.
 */
export interface MarginBench extends Structure {
  readonly builder: MarginFigures;
  readonly cases: readonly LoadCase[];
  /** A choice that hangs on the values of figures. */
  choose<Choice extends string | number | undefined>(of: (get: Builder['get']) => Choice): Choice;
  add(draft: MarginDraft): void;
  /** A margin that nothing in the file would make known. */
  leaveOpen(kind: string, of: { readonly id: string; readonly module?: string }, title: string, reason: string): void;
  /** The margins of another bench of this machine, with their figures; those that stand here already are left out. */
  adopt(from: MarginBench): void;
  /** Figures and margins so far. */
  readonly made: Run;
  readonly acts: readonly Act[];
  /** Figures that were asked for, as they were before anything was done. */
  readonly asked: ReadonlyMap<string, Known | undefined>;
}

export const structureOf = remembered((machine: Machine): Structure => {
  const drive = solveDrive(machine);
  return {
    machine, drive,
    members: membersOf(machine),
    ways: drivenWays(machine, drive),
    pushes: helixPush(machine, drive),
    application: applicationFactor(machine),
    partAt: (instance) => partAt(machine, instance),
    isFirst: inFirstCopy(machine),
  };
});

/** @param machine  with the mass of its file: what is remembered of it serves whatever mass is tried */
export function marginBench(builder: Builder, machine: Machine, cases: readonly LoadCase[] = []): MarginBench {
  const made: Run = { builder, margins: [] };
  const acts: Act[] = [];
  const asked = new Map<string, Known | undefined>();
  const added = new Set<string>();
  const act = (each: Act): void => {
    acts.push(each);
    each(made);
  };
  const addFigure = (name: string, each: (builder: Builder) => void): void => {
    added.add(name);
    act((run) => (each(run.builder), true));
  };
  const figures: MarginFigures = {
    add: (draft) => addFigure(draft.name, (to) => to.add(draft)),
    addWith: (make) => addFigure(make(builder.mass).name, (to) => to.add(make(to.mass))),
    given: (...figure) => addFigure(figure[0], (to) => to.given(...figure)),
    take(from) {
      for (const { name } of from.all()) added.add(name);
      act((run) => (run.builder.take(from), true));
    },
    get(name) {
      const figure = builder.get(name);
      if (!added.has(name) && !asked.has(name)) asked.set(name, figure);
      return figure;
    },
  };
  return {
    ...structureOf(machine), builder: figures, cases, made, acts, asked,
    choose(of) {
      const choice = of(builder.get);
      acts.push((run) => of(run.builder.get) === choice);
      return choice;
    },
    add(draft) {
      const each = marginAct(draft);
      for (const name of each.names) added.add(name);
      act(each.act);
    },
    leaveOpen(kind, of, title, reason) {
      const name = `margin ${kind} ${of.id}`;
      figures.given(name, capital(title), '-', '-', undefined, []);
      const margin: Margin = { name, title: capital(title), of: of.id, ...(of.module === undefined ? {} : { module: of.module }), capacity: name, demand: name, word: 'unknown', leavesOut: [], improve: [], reason };
      act(({ margins }) => margins.push(margin) > 0);
    },
    adopt({ made: from }) {
      const others = from.margins.filter(({ name }) => !figures.get(name));
      const names = others.flatMap(({ capacity, demand, name }) => [capacity, demand, name]);
      for (const name of names) added.add(name);
      act(({ builder: to, margins }) => (to.take(from.builder, names), margins.push(...others), true));
    },
  };
}

/**
 * All that was done at a bench, done again with other figures of the same machine and cases.
 *
 * @returns  undefined where something comes out otherwise, so that other things would have to be done
 */
export function repeatMargins({ acts, asked }: MarginBench, builder: Builder): Run | undefined {
  for (const [name, before] of asked) {
    const now = builder.get(name);
    if (now?.title !== before?.title || now?.unit !== before?.unit || now?.shown !== before?.shown) return undefined;
  }
  const run: Run = { builder, margins: [] };
  return acts.every((each) => each(run)) ? run : undefined;
}

const capital = (title: string): string => title.charAt(0).toUpperCase() + title.slice(1);

/** Adds a margin, with the figures of its two sides where they do not stand already. */
function marginAct(draft: MarginDraft): { readonly names: readonly string[]; readonly act: Act } {
  const { kind, of, module, loadCase, leavesOut = [], improve = [] } = draft;
  const title = capital(draft.title);
  const sides = (['capacity', 'demand'] as const).map((which): Draft | string => (typeof draft[which] === 'string' ? draft[which] : { ...draft[which], name: `${which} ${kind} ${of}` }));
  const [capacity, demand] = sides.map((side) => (typeof side === 'string' ? side : side.name)) as [string, string];
  const name = `margin ${kind} ${of}`;
  const over: Draft = { name, title, unit: '-', shown: '-', calculation: 'margin', output: 'margin', inputs: { capacity: { figure: capacity }, demand: { figure: demand } } };
  let loads: boolean | undefined;
  const act: Act = ({ builder, margins }) => {
    for (const side of sides) {
      if (typeof side === 'string') continue;
      if (side.calculation === undefined) builder.given(side.name, side.title, side.unit, side.shown, side.inputs['value'], side.missing ?? []);
      else builder.add(side);
    }
    const load = builder.get(demand);
    const before = loads ??= load?.value !== 0;
    if ((load?.value !== 0) !== before) return false;
    // What nothing loads has no margin.
    if (!loads) return true;
    const { value, missing } = builder.add(over);
    const refused = value === undefined && missing.length === 0 ? [...(builder.get(capacity)?.warnings ?? []), ...(load?.warnings ?? [])][0] : undefined;
    margins.push({
      name, title, of, capacity, demand, word: wordOf(value), leavesOut, improve: value === undefined ? missing.filter((each) => builder.get(each) === undefined) : improve,
      ...(module === undefined ? {} : { module }),
      ...(value === undefined ? {} : { value }),
      ...(loadCase === undefined ? {} : { loadCase: loadCase.id }),
      ...(refused === undefined ? {} : { reason: refused }),
    });
    return true;
  };
  return { names: [name, capacity, demand], act };
}

/** Loads that differ by less than this share are alike. */
const ROUNDING = 1e-12;

/** The hardest of several load cases for one load: the one whose figure is largest, of either sign; of those alike the first. One that is not known comes before all, for it might be harder. */
export function hardest(bench: MarginBench, nameOf: (each: LoadCase) => string | undefined, cases: readonly LoadCase[] = bench.cases): { readonly loadCase: LoadCase; readonly name: string } | undefined {
  const known = cases.flatMap((loadCase) => {
    const name = nameOf(loadCase);
    return name === undefined ? [] : [{ loadCase, name }];
  });
  const worst = bench.choose((get) => {
    let [at, most] = [-1, -1];
    known.forEach(({ name }, index) => {
      const size = Math.abs(get(name)?.value ?? Infinity);
      if (size > most * (1 + ROUNDING)) [at, most] = [index, size];
    });
    return at;
  });
  return known[worst];
}

type Property = 'yield' | 'shear' | 'root-strength' | 'flank-strength' | 'youngs-modulus' | 'shear-modulus' | 'density' | 'expansion' | 'max-temperature';

const listed: Readonly<Partial<Record<Property, keyof Material>>> = { yield: 'yieldStrength', shear: 'shearStrength', 'youngs-modulus': 'youngsModulus', 'shear-modulus': 'shearModulus', density: 'density', expansion: 'expansion' };

/** A property of what a part is made of: of the file, else of the built-in table; with the entry that would make it known. */
export function materialOf(machine: Machine, thing: Part | Joint, property: Property): readonly [input: FigureInput | undefined, wanted: EntryPath] {
  const { material } = thing;
  if (material === undefined) return [undefined, `${thing.path}.material`];
  const own = machine.materials.get(material);
  const value = own?.properties[property];
  if (own && value !== undefined) return [{ entry: `${own.path}.${property}`, value, unit: unitOf(property) }, ''];
  const key = listed[property];
  const known = key === undefined ? undefined : materials.find(({ name }) => name === material)?.[key];
  if (typeof known === 'object') return [{ constant: known.value, unit: unitOf(property), source: `${material}: ${known.source}` }, ''];
  return [undefined, `materials.${material}.${property}`];
}

const unitOf = (property: Property): string => (property === 'density' ? 'kg/m³' : property === 'expansion' ? '1/K' : property === 'max-temperature' ? 'K' : 'Pa');

/** A size of a part, under the first of several names that the file has. */
export function sizeOf(part: Part, ...names: readonly string[]): readonly [input: FigureInput | undefined, wanted: EntryPath] {
  const name = names.find((each) => part.sizes[each] !== undefined) ?? names[0]!;
  return [entry(`${part.path}.${name}`, part.sizes[name], 'm'), `${part.path}.${name}`];
}

/** Outer and inner diameter of a shaft or tube. */
export function section(part: Part): { readonly inputs: Record<string, FigureInput>; readonly missing: string[] } {
  const { inputs, missing } = gather([['outer', ...sizeOf(part, 'diameter', 'outer')]]);
  const inner = entry(`${part.path}.inner`, part.sizes['inner'], 'm') ?? { constant: 0, unit: 'm', source: 'the file gives no inner diameter: a solid bar' };
  return { inputs: { ...inputs, inner }, missing };
}
