import { editDistance } from '@rotorwright/units';
import type { Calculation, OutputValue, WorkingLine } from './calculation.ts';
import { catalogue } from './catalogue.ts';
import { CalculationError } from './define.ts';
import { given, readInputs, type InputProblem } from './read-inputs.ts';

/** One number in SI, or text, whose unit is '-'. */
export interface AnsweredSingle {
  readonly value: number | string;
  readonly unit: string;
}

export type AnsweredValue = AnsweredSingle | readonly AnsweredValue[] | { readonly [name: string]: AnsweredSingle };


export interface CalcAnswer {
  readonly id: string;
  /** Values in SI. */
  readonly outputs: Readonly<Record<string, AnsweredValue>>;
  readonly working: readonly WorkingLine[];
  readonly source: string;
  readonly warnings: readonly string[];
}

export interface CalcProblem {
  readonly id: string;
  readonly problems: readonly InputProblem[];
}

/** Tells one value from a list and from values by name, where a name may be `value` as well. */
export function isSingle(value: AnsweredValue): value is AnsweredSingle {
  return 'value' in value && typeof value.value !== 'object';
}

export function isCalcProblem(answered: CalcAnswer | CalcProblem): answered is CalcProblem {
  return 'problems' in answered;
}

/**
 * Runs a calculation of the catalogue.
 *
 * @param id    of the calculation
 * @param json  its inputs, as they come from outside
 * @returns     finite numbers only; or what is wrong with the id or the inputs
 */
export function answer(id: string, json: unknown): CalcAnswer | CalcProblem {
  const calculation = catalogue.get(id);
  if (calculation === undefined) {
    const nearest = [...catalogue.keys()].toSorted((a, b) => editDistance(id, a) - editDistance(id, b))[0];
    return { id, problems: [{ name: 'id', given: id, wanted: `the id of a calculation; the nearest is ${nearest}` }] };
  }
  const read = readInputs(calculation, json);
  if ('problems' in read) return { id, problems: read.problems };
  return run(calculation, read.inputs, json as Readonly<Record<string, unknown>>);
}

function run(calculation: Calculation, inputs: Readonly<Record<string, unknown>>, json: Readonly<Record<string, unknown>>): CalcAnswer | CalcProblem {
  const { id, outputs: specs, formulas, source } = calculation;
  try {
    const outcome = calculation.compute(inputs as never);
    const warnings = [...outcome.warnings];
    const outputs: Record<string, AnsweredValue> = {};
    for (const [name, spec] of Object.entries(specs)) {
      const value = outcome.outputs[name];
      if (value === undefined) continue;
      if (isFinite(value)) outputs[name] = withUnit(value, spec.unit);
      else warnings.push(`${name} is left out: with these inputs it is too large for a number.`);
    }
    const working = formulas.flatMap(({ output, tex }) =>
      Object.hasOwn(outputs, output) ? [{ output, formula: tex, value: outcome.outputs[output]!, unit: specs[output]!.unit }] : [],
    );
    return { id, outputs, working, source, warnings };
  } catch (error) {
    if (error instanceof CalculationError) return { id, problems: [{ name: error.input, given: error.given, wanted: error.wanted }] };
    if (error instanceof RangeError) return { id, problems: refusal(calculation, json, error.message) };
    throw error;
  }
}

/**
 * A kernel's refusal of inputs that are right one by one: of those that it names (`shift` for shift1 and shift2) the ones that
 * were given, or all where it was a default that does not suit.
 */
function refusal({ inputs }: Calculation, json: Readonly<Record<string, unknown>>, message: string): readonly InputProblem[] {
  const rule = message.replace(/^\w+: /u, '');
  const words = new Set(rule.match(/[A-Za-z]\w*/gu));
  const named = Object.keys(inputs).filter((name) => words.has(name) || words.has(name.replace(/[12]$/u, '')));
  const typed = named.filter((name) => json[name] !== undefined && json[name] !== null);
  const wanted = `another one: ${rule}`;
  if (named.length === 0) return [{ name: 'inputs', given: 'this combination', wanted }];
  return (typed.length > 0 ? typed : named).map((name) => ({ name, given: given(json[name]), wanted }));
}

const isList = (value: OutputValue): value is readonly OutputValue[] => Array.isArray(value);

function isFinite(value: OutputValue): boolean {
  return typeof value === 'object' ? Object.values(value).every((item: OutputValue) => isFinite(item)) : typeof value === 'string' || Number.isFinite(value);
}

function withUnit(value: OutputValue, unit: string): AnsweredValue {
  if (typeof value !== 'object') return { value, unit };
  if (isList(value)) return value.map((item) => withUnit(item, unit));
  return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, { value: item, unit }]));
}
