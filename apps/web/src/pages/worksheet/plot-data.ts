import { answer, isCalcProblem, isSingle, type Calculation, type InputSpec } from '@rotorwright/calculations';
import { fromUnit, inUnit } from '@rotorwright/units';

export type NumberSpec = Extract<InputSpec, { kind: 'number' }>;

/** One place of a curve, in SI; no `y` where the calculation refuses the input or leaves the output out. */
export interface PlotPoint {
  readonly x: number;
  readonly y?: number;
}

/** Inputs over which a result can be drawn: single numbers, given or with a usual value. */
export function plottableInputs(calculation: Calculation): readonly string[] {
  return Object.entries(calculation.inputs).flatMap(([name, spec]) => (spec.kind === 'number' ? [name] : []));
}

/** Results that can be drawn: single numbers. */
export function plottableOutputs(calculation: Calculation): readonly string[] {
  return Object.entries(calculation.outputs).flatMap(([name, spec]) => (spec.list || spec.map || spec.text ? [] : [name]));
}

/**
 * From half to one and a half times a value, in the unit that it is shown in, so that degrees Celsius spread around themselves; kept to what the input allows.
 *
 * @param value  SI
 * @returns      SI, ascending
 */
export function rangeAbout(spec: NumberSpec, value: number): readonly [from: number, to: number] {
  const unit = spec.unit === '-' ? undefined : spec.shown;
  const shown = unit === undefined ? value : inUnit(value, unit);
  const spread = shown === 0 ? 1 : Math.abs(shown) / 2;
  const [low, high] = [shown - spread, shown + spread].map((one) => (unit === undefined ? one : fromUnit(one, unit))) as [number, number];
  const least = Math.max(spec.min ?? -Infinity, spec.above ?? -Infinity);
  return [Math.max(low, least), Math.min(high, spec.max ?? Infinity)];
}

/**
 * A result over one input, all others as given.
 *
 * @param inputs  as the catalogue is asked
 * @param over    name of the input that is moved
 * @param count   how many places; fewer where only whole numbers count
 */
export function curveOf(calculation: Calculation, inputs: Readonly<Record<string, unknown>>, over: string, output: string, [from, to]: readonly [number, number], count: number): readonly PlotPoint[] {
  const spec = calculation.inputs[over];
  if (spec?.kind !== 'number' || !(to > from)) return [];
  return placesOf(spec, from, to, count).map((x) => {
    const answered = answer(calculation.id, { ...inputs, [over]: x });
    const value = isCalcProblem(answered) ? undefined : answered.outputs[output];
    return value !== undefined && isSingle(value) && typeof value.value === 'number' ? { x, y: value.value } : { x };
  });
}

function placesOf(spec: NumberSpec, from: number, to: number, count: number): readonly number[] {
  if (!spec.whole) return Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1));
  const [first, last] = [Math.ceil(from), Math.floor(to)];
  const step = Math.max(1, Math.ceil((last - first) / (count - 1)));
  return Array.from({ length: Math.max(0, Math.floor((last - first) / step) + 1) }, (_, index) => first + index * step);
}
