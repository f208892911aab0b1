import { catalogue, type InputSpec, type Outcome, type OutputValue } from '@rotorwright/calculations';
import { remembered, type EntryPath, type Machine } from '@rotorwright/machine';
import type { Figure, FigureInput } from '../figure.ts';
import { Outcomes, type Plain } from './outcomes.ts';

/** A figure still to be computed. An input that the file lacks is named under `missing` and left out of `inputs`. */
export interface Draft {
  readonly name: string;
  readonly title: string;
  readonly unit: string;
  readonly shown: string;
  readonly exact?: string;
  /** Catalogue id and output, of a list one place: `centre[0]`; none for what the file itself says. */
  readonly calculation?: string;
  readonly output?: string;
  readonly inputs: Readonly<Record<string, FigureInput>>;
  readonly missing?: readonly string[];
  readonly warnings?: readonly string[];
}

/** Collects figures; each may stand on those before it. */
export interface Builder {
  readonly machine: Machine;
  /** All-up mass, kg: that of the file, or another one that is tried or was flown. */
  readonly mass: FigureInput | undefined;
  add(draft: Draft): Figure;
  /** A figure that stands in the file, or was set by hand. */
  given(name: string, title: string, unit: string, shown: string, input: FigureInput | undefined, missing: readonly string[]): Figure;
  /** Figures of another builder, all when no names are given, with the outputs behind them. */
  take(from: Builder, names?: readonly string[]): void;
  get(name: string): Figure | undefined;
  all(): readonly Figure[];
  /** All outputs of the calculation that made a figure, lists among them; undefined when it is not known. */
  outputs(name: string): Outcome['outputs'] | undefined;
}

/** An entry of the file as input; undefined when it is not there. */
export function entry(path: EntryPath, value: number | undefined, unit: string): FigureInput | undefined {
  return value === undefined ? undefined : { entry: path, value, unit };
}

/** Inputs that are there, and the names of those that are not, of `[name, input, entry that would make it known]`. */
export function gather(rows: readonly (readonly [name: string, input: FigureInput | undefined, wanted: string])[]): { readonly inputs: Record<string, FigureInput>; readonly missing: string[] } {
  const inputs: Record<string, FigureInput> = {};
  const missing: string[] = [];
  for (const [name, input, wanted] of rows) {
    if (input) inputs[name] = input;
    else missing.push(wanted);
  }
  return { inputs, missing };
}

/** Inputs as they were read, and what the calculation that asked for them last made of them. */
interface Reading {
  readonly inputs: Readonly<Record<string, Plain>>;
  readonly missing: readonly string[];
  calculation: Computable | undefined;
  outcome: Outcome | undefined;
}

const note = (names: string[], name: string): void => void (names.includes(name) || names.push(name));

/** Outcomes of the set before, which may serve again, and of this one. */
export interface Memory {
  readonly before: Outcomes;
  readonly now: Outcomes;
}

/**
 * @param known   figures to stand on, already computed
 * @param memory  several figures are outputs of one calculation on the same inputs: it is done once
 * @param mass    where it is not that of the file
 */
export function builderFor(machine: Machine, known: readonly Figure[] = [], memory: Memory = { before: new Outcomes(), now: new Outcomes() }, mass = entry('machine.mass', machine.mass, 'kg')): Builder {
  const figures = new Map(known.map((figure) => [figure.name, figure]));
  const behind = new Map<string, Outcome['outputs']>();
  /** Drafts that share their inputs as one object are read once, and compared with nobody: a list of two hundred parts is long. */
  const readings = new Map<Draft['inputs'], Reading>();

  /** Value of an input in SI; undefined when it stands on a figure that is not known, which is then added to `missing`. */
  function valueOf(input: FigureInput, missing: string[]): Plain | undefined {
    if ('figure' in input) {
      const figure = figures.get(input.figure);
      if (figure?.value !== undefined) return figure.value;
      if (!figure || figure.missing.length === 0) note(missing, input.figure);
      else for (const each of figure.missing) note(missing, each);
      return undefined;
    }
    if ('table' in input) return input.table;
    if ('entry' in input) return input.value;
    if ('constant' in input) return input.constant;
    return 'list' in input ? input.list.map((row) => recordOf(row, missing)) : recordOf(input.record, missing);
  }

  function recordOf(row: Readonly<Record<string, FigureInput>>, missing: string[]): Record<string, Plain> {
    const values: Record<string, Plain> = {};
    // Not by its keys: a list of them would be made for each record of each frame.
    for (const name in row) {
      const value = valueOf(row[name]!, missing);
      if (value !== undefined) values[name] = value;
    }
    return values;
  }

  function read(from: Draft['inputs']): Reading {
    const known = readings.get(from);
    if (known) return known;
    const missing: string[] = [];
    const reading = { inputs: recordOf(from, missing), missing, calculation: undefined, outcome: undefined };
    readings.set(from, reading);
    return reading;
  }

  function outcomeOf(calculation: Computable, reading: Reading): Outcome {
    if (reading.calculation === calculation) return reading.outcome!;
    reading.calculation = calculation;
    return (reading.outcome = once(calculation, reading.inputs));
  }

  function once(calculation: Computable, inputs: Readonly<Record<string, Plain>>): Outcome {
    const number = memory.now.numberOf(calculation.id, inputs);
    const known = memory.now.get(calculation.id, inputs, number);
    if (known) return known;
    const outcome = memory.before.get(calculation.id, inputs, number) ?? compute(calculation, inputs);
    memory.now.set(calculation.id, inputs, number, outcome);
    return outcome;
  }

  function add(draft: Draft): Figure {
    const reading = read(draft.inputs);
    const calculation = draft.calculation === undefined ? undefined : catalogue.get(draft.calculation);
    if (draft.calculation !== undefined && !calculation) throw new RangeError(`figures: there is no calculation “${draft.calculation}” in the catalogue`);
    const missing = draft.missing === undefined || draft.missing.length === 0 ? reading.missing : [...new Set([...draft.missing, ...reading.missing])];
    if (missing.length > 0 || !calculation) return keep(draft, calculation, undefined, missing, draft.warnings ?? []);
    const outcome = outcomeOf(calculation, reading);
    behind.set(draft.name, outcome.outputs);
    const { value, warnings } = outputOf(calculation, draft.output!, outcome);
    return keep(draft, calculation, value, missing, draft.warnings === undefined ? warnings : [...draft.warnings, ...warnings]);
  }

  /** A thousand figures are made for every frame of a drag: this one is put together by hand, for objects that are spread are slow. */
  function keep(draft: Draft, calculation: Computable | undefined, value: number | undefined, missing: readonly string[], warnings: readonly string[]): Figure {
    const figure = { name: draft.name, title: draft.title } as { -readonly [Key in keyof Figure]: Figure[Key] };
    if (value !== undefined) figure.value = value;
    figure.unit = draft.unit;
    figure.shown = draft.shown;
    if (draft.exact !== undefined && value !== undefined) figure.exact = draft.exact;
    if (draft.calculation !== undefined) figure.calculation = draft.calculation;
    if (draft.output !== undefined) figure.output = draft.output;
    figure.inputs = draft.inputs;
    figure.source = calculation?.source ?? 'the machine file';
    figure.missing = missing;
    figure.warnings = warnings;
    figures.set(draft.name, figure);
    return figure;
  }

  function given(name: string, title: string, unit: string, shown: string, input: FigureInput | undefined, missing: readonly string[]): Figure {
    const unknown = input ? [] : [...new Set(missing)];
    const value = input && valueOf(input, unknown);
    const figure: Figure = {
      name,
      title,
      ...(typeof value === 'number' ? { value } : {}),
      unit,
      shown,
      inputs: input ? { value: input } : {},
      source: input && 'constant' in input ? input.source : 'the machine file',
      missing: unknown,
      warnings: [],
    };
    figures.set(name, figure);
    return figure;
  }

  function take(from: Builder, names?: readonly string[]): void {
    for (const figure of names?.flatMap((name) => from.get(name) ?? []) ?? from.all()) {
      figures.set(figure.name, figure);
      const outputs = from.outputs(figure.name);
      if (outputs) behind.set(figure.name, outputs);
    }
  }

  return { machine, mass, add, given, take, get: (name) => figures.get(name), all: () => [...figures.values()], outputs: (name) => behind.get(name) };
}

type Computable = NonNullable<ReturnType<typeof catalogue.get>>;

/** All outputs of a calculation. What it refuses is a warning, in its words. */
function compute(calculation: Computable, inputs: Readonly<Record<string, Plain>>): Outcome {
  try {
    return calculation.compute(withDefaults(calculation.inputs, inputs) as never);
  } catch (error) {
    // A combination that the calculation refuses: it says so in its message.
    if (error instanceof RangeError || (error instanceof Error && error.name === 'CalculationError')) return { outputs: {}, warnings: [error.message] };
    throw error;
  }
}

/** One output, with what the calculation says of it. */
function outputOf(calculation: Computable, output: string, outcome: Outcome): { readonly value?: number; readonly warnings: readonly string[] } {
  const [name = output, ...places] = output.includes('[') ? output.split(/[[\]]+/u).filter((step) => step !== '') : [output];
  const value = places.reduce<OutputValue | undefined>((list, place) => (Array.isArray(list) ? (list as readonly OutputValue[])[Number(place)] : undefined), outcome.outputs[name]);
  const warnings = outcome.warnings.length === 0 ? outcome.warnings : warningsOf(calculation, name, outcome.warnings);
  if (typeof value === 'number' && Number.isFinite(value)) return { value, warnings };
  return { warnings: warnings.length > 0 ? warnings : [`${output} cannot be formed from these inputs.`] };
}

/** What a calculation says of outputs that nobody asked for stays with it. Names of one word may stand in any sentence. */
function warningsOf(calculation: Computable, name: string, warnings: readonly string[]): readonly string[] {
  const others = Object.keys(calculation.outputs).filter((each) => each !== name);
  return warnings.filter((warning) => mentions(warning, name) || !others.some((each) => (/\bleft out\b/.test(warning) || /[A-Z]/.test(each)) && mentions(warning, each)));
}

/** As a word by itself. */
function mentions(sentence: string, name: string): boolean {
  for (let at = sentence.indexOf(name); at >= 0; at = sentence.indexOf(name, at + 1)) {
    if (!/\w/.test(sentence.charAt(at - 1)) && !/\w/.test(sentence.charAt(at + name.length))) return true;
  }
  return false;
}

/** Inputs of which, or of a field of which, the description names a value for when they are not given. */
const defaulted = remembered((fields: Readonly<Record<string, InputSpec>>): readonly (readonly [name: string, spec: InputSpec])[] => Object.entries(fields).filter(([, spec]) => hasDefault(spec)));

function hasDefault(spec: InputSpec): boolean {
  if ('default' in spec && spec.default !== undefined) return true;
  if (spec.kind === 'record') return defaulted(spec.fields).length > 0;
  return spec.kind === 'list' && hasDefault(spec.of);
}

/** What was not given has the value that its description names, in rows and records too. */
function withDefaults(fields: Readonly<Record<string, InputSpec>>, given: Readonly<Record<string, Plain>>): Readonly<Record<string, Plain>> {
  const wanting = defaulted(fields);
  if (wanting.length === 0) return given;
  const filled: Record<string, Plain> = { ...given };
  for (const [name, spec] of wanting) {
    const value = withDefault(spec, filled[name]);
    if (value !== undefined) filled[name] = value;
  }
  return filled;
}

function withDefault(spec: InputSpec, value: Plain | undefined): Plain | undefined {
  if (value === undefined) return 'default' in spec ? spec.default : undefined;
  if (spec.kind === 'record') return withDefaults(spec.fields, value as Readonly<Record<string, Plain>>);
  return spec.kind === 'list' && hasDefault(spec.of) ? (value as readonly Plain[]).map((row) => withDefault(spec.of, row) as Plain) : value;
}
