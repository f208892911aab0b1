import type { Calculation, InputProblem, InputSpec } from '@rotorwright/calculations';
import { writeQuantity } from '@rotorwright/units';

/** What stands in the fields of a worksheet: text as typed, rows of it, or named fields. */
export type FieldValue = string | readonly FieldValue[] | { readonly [name: string]: FieldValue };
export type FieldRecord = Readonly<Record<string, FieldValue>>;

/** A row of a map: its place on screen, and the name that the user has given it so far. */
export interface NamedRow {
  readonly row: number;
  readonly name: string;
}

/** `stages[1].driver` names a field the same way in problems, links and labels. */
export type FieldPath = readonly (string | number | NamedRow)[];

export const nameOf = (path: FieldPath): string =>
  path.map((step, index) => (typeof step === 'number' ? `[${step}]` : typeof step === 'object' ? `.${step.name}` : index === 0 ? step : `.${step}`)).join('');

/** What stands in the fields of a map: a row for each name, in the order typed. */
export const rowsOf = (field: FieldValue | undefined): readonly { readonly name: string; readonly value: FieldValue | undefined }[] =>
  (Array.isArray(field) ? (field as readonly FieldValue[]) : []).map((row) => {
    const { name, value } = row as FieldRecord;
    return { name: typeof name === 'string' ? name : '', value };
  });

/** Names that two rows share, or that one lacks: such rows make no object. */
export const rowsClash = (rows: readonly { readonly name: string }[]): boolean => rows.some(({ name }) => name === '') || new Set(rows.map(({ name }) => name)).size < rows.length;

const plainNumber = /^[+\-−]?(?:\d+\.?\d*|\.\d+)(?:[eE][+\-−]?\d+)?$/;

/** A field for a spec before anything was typed: example where there is one, else empty. */
export function fieldFor(spec: InputSpec, json?: unknown): FieldValue {
  switch (spec.kind) {
    case 'number':
      return numberText(spec, json);
    case 'choice':
      return typeof json === 'string' ? json : spec.optional ? '' : (spec.default ?? spec.choices[0] ?? '');
    case 'list':
      return Array.isArray(json) ? json.map((item) => fieldFor(spec.of, item)) : Array.from({ length: spec.optional ? 0 : (spec.atLeast ?? 0) }, () => fieldFor(spec.of));
    case 'text':
      return typeof json === 'string' ? json : (spec.default ?? '');
    case 'record':
      return Object.fromEntries(Object.entries(spec.fields).map(([name, own]) => [name, fieldFor(own, member(json, name))]));
    case 'map':
      return entriesOf(json).map(([name, own]) => ({ name: String(name), value: fieldFor(spec.of, own) }));
  }
}

/** Rows of a map: of an object, or of the pairs that stand for rows whose names clash. */
function entriesOf(json: unknown): readonly (readonly [unknown, unknown])[] {
  if (typeof json !== 'object' || json === null) return [];
  return Array.isArray(json) ? json.flatMap((pair: unknown) => (Array.isArray(pair) ? [[pair[0], pair[1]] as const] : [])) : Object.entries(json);
}

const member = (json: unknown, name: string): unknown => (typeof json === 'object' && json !== null ? (json as Record<string, unknown>)[name] : undefined);

function numberText(spec: Extract<InputSpec, { kind: 'number' }>, json: unknown): string {
  if (typeof json === 'string') return json;
  if (typeof json !== 'number') return '';
  return spec.unit === '-' ? String(json) : writeQuantity(json, spec.shown);
}

/** All fields of a calculation, filled from JSON: its example, or what a link carries. */
export function fieldsFor(calculation: Calculation, json: Readonly<Record<string, unknown>>): FieldRecord {
  return Object.fromEntries(Object.entries(calculation.inputs).map(([name, spec]) => [name, fieldFor(spec, json[name])]));
}

/** What the catalogue is asked: empty fields left out, plain numbers as numbers (SI), all else as typed. */
export function toInputs(calculation: Calculation, fields: FieldRecord): Readonly<Record<string, unknown>> {
  return recordJson(calculation.inputs, fields);
}

function recordJson(specs: Readonly<Record<string, InputSpec>>, fields: FieldRecord): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(specs).flatMap(([name, spec]) => {
      const value = toJson(spec, fields[name]);
      return value === undefined ? [] : [[name, value]];
    }),
  );
}

function toJson(spec: InputSpec, field: FieldValue | undefined): unknown {
  if (field === undefined) return undefined;
  switch (spec.kind) {
    case 'number': {
      const text = typeof field === 'string' ? field.trim() : '';
      if (text === '') return undefined;
      return plainNumber.test(text) ? Number(text.replaceAll('−', '-')) : text;
    }
    case 'choice':
    case 'text':
      return field === '' ? undefined : field;
    case 'map': {
      const rows = rowsOf(field);
      if (rows.length === 0 && spec.optional) return undefined;
      const pairs = rows.map(({ name, value }) => [name, toJson(spec.of, value) ?? null] as const);
      // Pairs are no object, and are refused; but nothing that was typed is lost.
      return rowsClash(rows) ? pairs : Object.fromEntries(pairs);
    }
    case 'list': {
      const rows = Array.isArray(field) ? (field as readonly FieldValue[]) : [];
      if (rows.length === 0 && spec.optional) return undefined;
      // An empty row stays in its place, so that a problem names the row that the reader sees.
      return rows.map((row) => toJson(spec.of, row) ?? null);
    }
    case 'record': {
      if (typeof field !== 'object' || Array.isArray(field)) return undefined;
      const json = recordJson(spec.fields, field as FieldRecord);
      return Object.keys(json).length === 0 && spec.optional ? undefined : json;
    }
  }
}

/** The same fields with one of them changed; nothing given is changed itself. */
export function withField<T extends FieldValue>(fields: T, path: FieldPath, value: FieldValue): T {
  const [step, ...rest] = path;
  if (step === undefined) return value as T;
  if (typeof step === 'number') {
    const rows = Array.isArray(fields) ? (fields as readonly FieldValue[]) : [];
    return rows.map((row, index) => (index === step ? withField(row, rest, value) : row)) as unknown as T;
  }
  if (typeof step === 'object') return withField(fields, [step.row, 'value', ...rest], value);
  const record = (typeof fields === 'object' && !Array.isArray(fields) ? fields : {}) as FieldRecord;
  return { ...record, [step]: withField(record[step] ?? '', rest, value) } as unknown as T;
}

/** A link's query that carries every filled field: text as typed, rows as JSON. */
export function toQuery(calculation: Calculation, fields: FieldRecord): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(toInputs(calculation, fields))) query.set(name, typeof value === 'object' ? JSON.stringify(value) : String(value));
  return query.toString();
}

/** Inputs out of a link's query, still unchecked; undefined when it carries none for this calculation. */
export function fromQuery(calculation: Calculation, search: string): Readonly<Record<string, unknown>> | undefined {
  const query = new URLSearchParams(search);
  const entries = Object.entries(calculation.inputs).flatMap(([name, spec]) => {
    const text = query.get(name);
    if (text === null) return [];
    if (spec.kind === 'number') return [[name, plainNumber.test(text) ? Number(text.replaceAll('−', '-')) : text] as const];
    if (spec.kind === 'choice' || spec.kind === 'text') return [[name, text] as const];
    try {
      return [[name, JSON.parse(text) as unknown] as const];
    } catch {
      return [];
    }
  });
  return entries.length > 0 ? Object.fromEntries(entries) : undefined;
}

/** Problems by the field that they stand under; those that fit no field come under ''. */
export function problemsByField(problems: readonly InputProblem[], names: ReadonlySet<string>): ReadonlyMap<string, readonly InputProblem[]> {
  const found = new Map<string, readonly InputProblem[]>();
  for (const problem of problems) {
    let name = problem.name;
    while (name !== '' && !names.has(name)) name = name.replace(/(\.[^.[\]]+|\[\d+\]|^[^.[\]]+)$/, '');
    found.set(name, [...(found.get(name) ?? []), problem]);
  }
  return found;
}

/** Names of all fields that are on screen. */
export function fieldNames(specs: Readonly<Record<string, InputSpec>>, fields: FieldRecord, before: FieldPath = []): readonly string[] {
  return Object.entries(specs).flatMap(([name, spec]) => namesUnder(spec, fields[name], [...before, name]));
}

function namesUnder(spec: InputSpec, field: FieldValue | undefined, path: FieldPath): readonly string[] {
  const own = nameOf(path);
  if (spec.kind === 'list') return [own, ...(Array.isArray(field) ? (field as readonly FieldValue[]) : []).flatMap((row, index) => namesUnder(spec.of, row, [...path, index]))];
  if (spec.kind === 'map') return [own, ...rowsOf(field).flatMap(({ name, value }, row) => namesUnder(spec.of, value, [...path, { row, name }]))];
  if (spec.kind === 'record') return [own, ...fieldNames(spec.fields, typeof field === 'object' && !Array.isArray(field) ? (field as FieldRecord) : {}, path)];
  return [own];
}
