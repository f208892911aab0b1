import { catalogue, type InputSpec, type Outcome, type OutputValue } from '@rotorwright/calculations';
import type { EntryPath, Machine } from '@rotorwright/machine';
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

/** Outcomes of the set before, which may serve again, and of this one. */
export interface Memory {
  readonly before: Outcomes;
  readonly now: Outcomes;
}

/**
 * @param known   figures to stand on, already computed
 * @param memory  several figures are outputs of one calculation on the same inputs: it is done once
 */
export function builderFor(machine: Machine, known: readonly Figure[] = [], memory: Memory = { before: new Outcomes(), now: new Outcomes() }): Builder {
  const figures = new Map(known.map((figure) => [figure.name, figure]));
  const behind = new Map<string, Outcome['outputs']>();
  /** Drafts that share their inputs as one object are read once, and compared with nobody: a list of two hundred parts is long. */
  const readings = new WeakMap<Draft['inputs'], { readonly inputs: Readonly<Record<string, Plain>>; readonly missing: ReadonlySet<string>; readonly outcomes: Map<string, Outcome> }>();

  /** Value of an input in SI; undefined when it stands on a figure that is not known, which is then added to `missing`. */
  function valueOf(input: FigureInput, missing: Set<string>): Plain | undefined {
    if ('table' in input) return input.table;
    if ('entry' in input) return input.value;
    if ('constant' in input) return input.constant;
    if ('list' in input) return input.list.map((row) => recordOf(row, missing));
    if ('record' in input) return recordOf(input.record, missing);
    const figure = figures.get(input.figure);
    if (figure?.value !== undefined) return figure.value;
    if (!figure || figure.missing.length === 0) missing.add(input.figure);
    else for (const each of figure.missing) missing.add(each);
    return undefined;
  }

  function recordOf(row: Readonly<Record<string, FigureInput>>, missing: Set<string>): Record<string, Plain> {
    const values: Record<string, Plain> = {};
    for (const [name, input] of Object.entries(row)) {
      const value = valueOf(input, missing);
      if (value !== undefined) values[name] = value;
    }
    return values;
  }

  function read(from: Draft['inputs']) {
    const known = readings.get(from);
    if (known) return known;
    const missing = new Set<string>();
    const reading = { inputs: recordOf(from, missing), missing, outcomes: new Map<string, Outcome>() };
    readings.set(from, reading);
    return reading;
  }

  function outcomeOf(calculation: Computable, reading: ReturnType<typeof read>): Outcome {
    const outcome = reading.outcomes.get(calculation.id) ?? once(calculation, reading.inputs);
    reading.outcomes.set(calculation.id, outcome);
    return outcome;
  }

  function once(calculation: Computable, inputs: Readonly<Record<string, Plain>>): Outcome {
    const number = memory.now.numberOf(inputs);
    const known = memory.now.get(calculation.id, inputs, number);
    if (known) return known;
    const outcome = memory.before.get(calculation.id, inputs, number) ?? compute(calculation, inputs);
    memory.now.set(calculation.id, inputs, number, outcome);
    return outcome;
  }

  function add(draft: Draft): Figure {
    const reading = read(draft.inputs);
    const missing = new Set([...(draft.missing ?? []), ...reading.missing]);
    const warnings = [...(draft.warnings ?? [])];
    const calculation = draft.calculation === undefined ? undefined : catalogue.get(draft.calculation);
    if (draft.calculation !== undefined && !calculation) throw new RangeError(`figures: there is no calculation “${draft.calculation}” in the catalogue`);
    let value: number | undefined;
    if (missing.size === 0 && calculation) {
      const outcome = outcomeOf(calculation, reading);
      behind.set(draft.name, outcome.outputs);
      const computed = outputOf(calculation, draft.output!, outcome);
      value = computed.value;
      warnings.push(...computed.warnings);
    }
    const { name, title, unit, shown, exact, output } = draft;
    const figure: Figure = {
      name,
      title,
      ...(value === undefined ? {} : { value }),
      unit,
      shown,
      ...(exact === undefined || value === undefined ? {} : { exact }),
      ...(draft.calculation === undefined ? {} : { calculation: draft.calculation }),
      ...(output === undefined ? {} : { output }),
      inputs: draft.inputs,
      source: calculation?.source ?? 'the machine file',
      missing: [...missing],
      warnings,
    };
    figures.set(name, figure);
    return figure;
  }

  function given(name: string, title: string, unit: string, shown: string, input: FigureInput | undefined, missing: readonly string[]): Figure {
    const unknown = new Set(input ? [] : missing);
    const value = input && valueOf(input, unknown);
    const figure: Figure = {
      name,
      title,
      ...(typeof value === 'number' ? { value } : {}),
      unit,
      shown,
      inputs: input ? { value: input } : {},
      source: input && 'constant' in input ? input.source : 'the machine file',
      missing: [...unknown],
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

  return { machine, add, given, take, get: (name) => figures.get(name), all: () => [...figures.values()], outputs: (name) => behind.get(name) };
}

type Computable = NonNullable<ReturnType<typeof catalogue.get>>;

/** All outputs of a calculation. What it refuses is a warning, in its words. */
function compute(calculation: Computable, inputs: Readonly<Record<string, Plain>>): Outcome {
  try {
    return calculation.compute(withDefaults(calculation, inputs) as never);
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
  // What a calculation says of outputs that nobody asked for stays with it. Names of one word may stand in any sentence.
  const others = Object.keys(calculation.outputs).filter((each) => each !== name);
  const warnings = outcome.warnings.filter((warning) => mentions(warning, name) || !others.some((each) => (/\bleft out\b/.test(warning) || /[A-Z]/.test(each)) && mentions(warning, each)));
  if (typeof value === 'number' && Number.isFinite(value)) return { value, warnings };
  return { warnings: warnings.length > 0 ? warnings : [`${output} cannot be formed from these inputs.`] };
}

const mentions = (sentence: string, name: string): boolean => new RegExp(`\\b${name}\\b`).test(sentence);

/** What was not given has the value that its description names, in rows and records too. */
function withDefaults({ inputs }: { readonly inputs: Readonly<Record<string, InputSpec>> }, given: Readonly<Record<string, Plain>>): Readonly<Record<string, Plain>> {
  const filled: Record<string, Plain> = { ...given };
  for (const [name, spec] of Object.entries(inputs)) {
    const value = withDefault(spec, filled[name]);
    if (value !== undefined) filled[name] = value;
  }
  return filled;
}

function withDefault(spec: InputSpec, value: Plain | undefined): Plain | undefined {
  if (value === undefined) return 'default' in spec ? spec.default : undefined;
  if (spec.kind === 'record') return withDefaults({ inputs: spec.fields }, value as Readonly<Record<string, Plain>>);
  return spec.kind === 'list' ? (value as readonly Plain[]).map((row) => withDefault(spec.of, row) as Plain) : value;
}
