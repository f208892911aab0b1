import { remembered, type EntryPath, type InstanceId, type Joint, type Machine, type Part } from '@rotorwright/machine';
import { materials, type Material } from '@rotorwright/mechanics';
import { helixPush, type Push } from '../directions/helix-push.ts';
import { inFirstCopy, membersOf, partAt, type Members } from '../directions/members.ts';
import { drivenWays, type TorqueWay } from '../directions/torque-path.ts';
import { solveDrive, type DriveSolution } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
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

/** What margins are made with: the machine as computed, its load cases, and the list that grows. */
export interface MarginBench extends Structure {
  readonly builder: Builder;
  readonly cases: readonly LoadCase[];
  add(draft: MarginDraft): void;
  /** A margin that nothing in the file would make known. */
  leaveOpen(kind: string, of: { readonly id: string; readonly module?: string }, title: string, reason: string): void;
  /** The margins of another bench of this machine, with their figures; those that stand here already are left out. */
  adopt(from: MarginBench): void;
  all(): readonly Margin[];
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
  const list: Margin[] = [];
  const capital = (title: string): string => title.charAt(0).toUpperCase() + title.slice(1);
  const side = (draft: MarginDraft, which: 'capacity' | 'demand'): string => {
    const given = draft[which];
    if (typeof given === 'string') return given;
    const name = `${which} ${draft.kind} ${draft.of}`;
    if (given.calculation === undefined) builder.given(name, given.title, given.unit, given.shown, given.inputs['value'], given.missing ?? []);
    else builder.add({ ...given, name });
    return name;
  };
  return {
    ...structureOf(machine), builder, cases,
    add(draft) {
      const title = capital(draft.title);
      const [capacity, demand] = [side(draft, 'capacity'), side(draft, 'demand')];
      const load = builder.get(demand);
      // What nothing loads has no margin.
      if (load?.value === 0) return;
      const name = `margin ${draft.kind} ${draft.of}`;
      const figure = builder.add({ name, title, unit: '-', shown: '-', calculation: 'margin', output: 'margin', inputs: { capacity: { figure: capacity }, demand: { figure: demand } } });
      const { value, missing } = figure;
      const refused = value === undefined && missing.length === 0 ? [...(builder.get(capacity)?.warnings ?? []), ...(load?.warnings ?? [])][0] : undefined;
      const paths = missing.filter((each) => builder.get(each) === undefined);
      list.push({
        name, title, of: draft.of, capacity, demand, word: wordOf(value), leavesOut: draft.leavesOut ?? [], improve: value === undefined ? paths : (draft.improve ?? []),
        ...(draft.module === undefined ? {} : { module: draft.module }),
        ...(value === undefined ? {} : { value }),
        ...(draft.loadCase === undefined ? {} : { loadCase: draft.loadCase.id }),
        ...(refused === undefined ? {} : { reason: refused }),
      });
    },
    leaveOpen(kind, of, title, reason) {
      const name = `margin ${kind} ${of.id}`;
      builder.given(name, capital(title), '-', '-', undefined, []);
      list.push({ name, title: capital(title), of: of.id, ...(of.module === undefined ? {} : { module: of.module }), capacity: name, demand: name, word: 'unknown', leavesOut: [], improve: [], reason });
    },
    adopt(from) {
      for (const margin of from.all()) {
        if (builder.get(margin.name)) continue;
        builder.take(from.builder, [margin.capacity, margin.demand, margin.name]);
        list.push(margin);
      }
    },
    all: () => list,
  };
}

/** The hardest of several load cases for one load: the one whose figure is largest, of either sign. One that is not known comes before all, for it might be harder. */
export function hardest(bench: MarginBench, nameOf: (each: LoadCase) => string | undefined, cases: readonly LoadCase[] = bench.cases): { readonly loadCase: LoadCase; readonly name: string } | undefined {
  let worst: { readonly loadCase: LoadCase; readonly name: string } | undefined;
  let most = -1;
  for (const loadCase of cases) {
    const name = nameOf(loadCase);
    const size = name === undefined ? -1 : Math.abs(bench.builder.get(name)?.value ?? Infinity);
    if (name === undefined || size <= most) continue;
    worst = { loadCase, name };
    most = size;
  }
  return worst;
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
