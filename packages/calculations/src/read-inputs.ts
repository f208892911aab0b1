import { dimensionName, editDistance, isProblem, isUnit, readQuantity, sameDimension, showQuantity, unit, type QuantityProblem } from '@rotorwright/units';
import type { Calculation, InputSpec } from './calculation.ts';

export interface InputProblem {
  /** `normalModule`, `stages[1].driver` */
  readonly name: string;
  /** What was given, as JSON; `nothing` when it is missing. */
  readonly given: string;
  readonly wanted: string;
}

export type ReadInputs = { readonly inputs: Readonly<Record<string, unknown>> } | { readonly problems: readonly InputProblem[] };

type NumberSpec = Extract<InputSpec, { kind: 'number' }>;
type Fields = Readonly<Record<string, InputSpec>>;

/**
 * Checks inputs against their specs and turns quantities into SI numbers. All problems are reported, not the first only.
 *
 * @param json  one object; a quantity is text with its unit (`"1.25 mm"`) or a bare number in SI
 */
export function readInputs(calculation: Calculation, json: unknown): ReadInputs {
  const problems: InputProblem[] = [];
  const inputs = readRecord(calculation.inputs, json, '', problems);
  return problems.length > 0 ? { problems } : { inputs: inputs! };
}

function readRecord(fields: Fields, json: unknown, path: string, problems: InputProblem[]): Record<string, unknown> | undefined {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    problems.push({ name: path === '' ? 'inputs' : path, given: given(json), wanted: `an object with ${namesOf(fields)}` });
    return undefined;
  }
  const full = (name: string): string => (path === '' ? name : `${path}.${name}`);
  for (const name of Object.keys(json)) {
    if (Object.hasOwn(fields, name)) continue;
    problems.push({ name: full(name), given: given((json as Record<string, unknown>)[name]), wanted: unknownName(name, fields) });
  }
  const values: Record<string, unknown> = {};
  for (const [name, spec] of Object.entries(fields)) {
    const own = Object.hasOwn(json, name) ? (json as Record<string, unknown>)[name] : undefined;
    const value = own === undefined || own === null ? absent(spec, full(name), problems) : readValue(spec, own, full(name), problems);
    if (value !== undefined) values[name] = value;
  }
  return values;
}

function absent(spec: InputSpec, path: string, problems: InputProblem[]): unknown {
  if ('default' in spec && spec.default !== undefined) return spec.default;
  if (!spec.optional) problems.push({ name: path, given: 'nothing', wanted: wanted(spec) });
  return undefined;
}

function readValue(spec: InputSpec, json: unknown, path: string, problems: InputProblem[]): unknown {
  switch (spec.kind) {
    case 'number':
      return readNumber(spec, json, path, problems);
    case 'choice':
      if (typeof json === 'string' && spec.choices.includes(json)) return json;
      problems.push({ name: path, given: given(json), wanted: wanted(spec) });
      return undefined;
    case 'text':
      if (typeof json === 'string' && json.trim() !== '') return json;
      problems.push({ name: path, given: given(json), wanted: wanted(spec) });
      return undefined;
    case 'list':
      if (spec.single !== undefined && spec.of.kind === 'record' && (typeof json === 'string' || typeof json === 'number')) {
        const row = readShort(spec.of.fields, spec.single, json, path, problems);
        return row === undefined ? undefined : [row];
      }
      if (!Array.isArray(json) || json.length < (spec.atLeast ?? 0)) {
        problems.push({ name: path, given: given(json), wanted: wanted(spec) });
        return undefined;
      }
      return json.map((item, index) => readValue(spec.of, item, `${path}[${index}]`, problems));
    case 'record':
      if (typeof json === 'string' && spec.shorthand !== undefined) return readShort(spec.fields, spec.shorthand, json, path, problems);
      return readRecord(spec.fields, json, path, problems);
    case 'map':
      if (typeof json !== 'object' || json === null || Array.isArray(json) || Object.keys(json).length < (spec.atLeast ?? 0)) {
        problems.push({ name: path, given: given(json), wanted: wanted(spec) });
        return undefined;
      }
      return Object.fromEntries(Object.entries(json).map(([name, item]) => [name, readValue(spec.of, item, `${path}.${name}`, problems)]));
  }
}

/** A record of which one field is given bare. */
function readShort(fields: Fields, name: string, json: unknown, path: string, problems: InputProblem[]): Record<string, unknown> | undefined {
  const { [name]: bare, ...others } = fields;
  const value = readValue(bare!, json, path, problems);
  return value === undefined ? undefined : { [name]: value, ...readRecord(others, {}, path, problems) };
}

/** As many names as a person reads in one go. */
const READABLE = 24;

function readNumber(spec: NumberSpec, json: unknown, path: string, problems: InputProblem[]): number | undefined {
  const refuse = (reason = ''): undefined => {
    problems.push({ name: path, given: given(json), wanted: wanted(spec) + (reason === '' ? '' : `; ${reason}`) });
  };
  const value = typeof json === 'string' ? readText(spec, json) : json;
  if (typeof value === 'object' && value !== null && 'reason' in value) return refuse(String(value.reason));
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse();
  if (spec.whole && !Number.isSafeInteger(value)) return refuse();
  const { min = -Infinity, max = Infinity, above = -Infinity } = spec;
  return value < min || value > max || value <= above ? refuse() : value;
}

function readText(spec: NumberSpec, text: string): number | { readonly reason: string } {
  const read = readQuantity(text);
  if (isProblem(read)) return spec.unit === '-' && read.problem === 'unit-missing' ? Number(text.replace('−', '-')) : { reason: reasonOf(read, spec) };
  const own = unit(spec.unit === '-' ? '%' : spec.unit);
  if (!isUnit(own)) throw new RangeError(`readInputs: the catalogue names an unknown unit “${spec.unit}”`);
  if (!sameDimension(read.dimension, own.dimension)) return { reason: `${read.unit} is the unit of ${dimensionName(read.dimension)}` };
  if (spec.difference && read.unit === '°C') return { reason: 'a difference of temperatures is given in K' };
  return read.value;
}

function reasonOf(problem: QuantityProblem, spec: NumberSpec): string {
  switch (problem.problem) {
    case 'unit-missing':
      return `the unit is missing; a bare number, without quotes, is taken in ${spec.unit}`;
    case 'unit-unknown':
      return `there is no unit “${problem.unit}”; the nearest is ${problem.nearest}`;
    default:
      return problem.reason;
  }
}

/** What would be right, in words. */
export function wanted(spec: InputSpec): string {
  switch (spec.kind) {
    case 'number':
      return wantedNumber(spec);
    case 'choice':
      if (spec.choices.length > READABLE) return `one of ${spec.choices.length} from "${spec.choices[0]}" to "${spec.choices.at(-1)}"${spec.example === undefined ? '' : `, such as "${spec.example}"`}`;
      return `one of ${spec.choices.map((choice) => `"${choice}"`).join(', ')}`;
    case 'text':
      return `text${spec.example === undefined ? '' : `, such as "${spec.example}"`}`;
    case 'map':
      return `an object of names of your choosing${(spec.atLeast ?? 0) > 0 ? `, at least ${spec.atLeast}` : ''}, each with ${wanted(spec.of)}`;
    case 'list':
      if (spec.single !== undefined && spec.of.kind === 'record') return `${wanted(spec.of.fields[spec.single]!)}, or a list, each ${wanted(spec.of)}`;
      return `a list${(spec.atLeast ?? 0) > 0 ? ` of at least ${spec.atLeast}` : ''}, each ${wanted(spec.of)}`;
    case 'record':
      return spec.shorthand === undefined ? `an object with ${namesOf(spec.fields)}` : `${wanted(spec.fields[spec.shorthand]!)}, or an object with ${namesOf(spec.fields)}`;
  }
}

function wantedNumber(spec: NumberSpec): string {
  const shown = (value: number): string => showQuantity(value, spec.shown, { significant: 6 });
  const bounds = [
    ...(spec.above === undefined ? [] : [`above ${shown(spec.above)}`]),
    ...(spec.min === undefined || spec.min <= (spec.above ?? -Infinity) ? [] : [`at least ${shown(spec.min)}`]),
    ...(spec.max === undefined ? [] : [`at most ${shown(spec.max)}`]),
  ].join(' and ');
  const sample = spec.example ?? spec.default;
  const quantity =
    spec.unit === '-'
      ? `a ${spec.whole ? 'whole ' : ''}number`
      : `${nameOfKind(spec)} with its unit${sample === undefined ? '' : `, such as "${showQuantity(sample, spec.shown, { grouped: false })}"`}, or a bare number in ${spec.unit}`;
  return bounds === '' ? quantity : `${quantity}, ${bounds}`;
}

function nameOfKind(spec: NumberSpec): string {
  const own = unit(spec.unit);
  const name = isUnit(own) ? dimensionName(own.dimension) : 'a quantity of another kind';
  return name === 'a quantity of another kind' ? 'a quantity' : name;
}

function unknownName(name: string, fields: Fields): string {
  const names = Object.keys(fields);
  const nearest = names.toSorted((a, b) => editDistance(name, a) - editDistance(name, b))[0];
  return nearest === undefined ? 'no inputs' : `a name of the list ${names.join(', ')}; the nearest is ${nearest}`;
}

function namesOf(fields: Fields): string {
  const needed = Object.entries(fields).filter(([, spec]) => !spec.optional && !('default' in spec));
  const names = (needed.length > 0 ? needed : Object.entries(fields)).map(([name]) => name);
  return needed.length > 0 ? names.join(', ') : `any of ${names.join(', ')}`;
}

/** Given values are quoted in messages, so they are kept short. */
export function given(json: unknown): string {
  if (json === undefined) return 'nothing';
  const text = typeof json === 'number' ? String(json) : (JSON.stringify(json) ?? typeof json);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
