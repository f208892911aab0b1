/**
 * The schema language. A field says what may stand at one place of the machine file: what it is about, an example,
 * and how it is read. Reading, suggestions, the JSON Schema and completion all walk these plain descriptions.
 */
export type ReferenceKind =
  | 'shaft' | 'coupling' | 'rotor' | 'part' | 'joint' | 'stack' | 'measurement' | 'step' | 'module' | 'opening'
  | 'consumable' | 'type' | 'sensor' | 'servo' | 'lever' | 'swashplate' | 'slider' | 'link';

interface Said {
  /** One line for a person. */
  readonly about: string;
  /** As it would be written. */
  readonly example: string;
  readonly required?: boolean;
}

interface Bounds {
  /** Inclusive bounds, SI. */
  readonly min?: number;
  readonly max?: number;
  /** The value must be larger. */
  readonly above?: number;
}

export type Spec =
  | (Said & { readonly kind: 'text' })
  | (Said & { readonly kind: 'word'; readonly words: Readonly<Record<string, string>> })
  | (Said & { readonly kind: 'count'; readonly min: number; readonly max: number })
  | (Said & { readonly kind: 'number' } & Bounds)
  | (Said & { readonly kind: 'flag' })
  /** `unit` is a sample that gives the dimension; `words` stand for a value that is no number. */
  | (Said & { readonly kind: 'quantity'; readonly unit: string; readonly words?: Readonly<Record<string, string>> } & Bounds)
  /** A quantity that may carry the window that it was made within. */
  | (Said & { readonly kind: 'size'; readonly unit: string } & Bounds)
  /** Without `unit`: of any dimension. */
  | (Said & { readonly kind: 'window'; readonly unit?: string } & Bounds)
  /** A quantity of any dimension, a number, or a word. */
  | (Said & { readonly kind: 'fact' })
  | (Said & { readonly kind: 'direction' })
  | (Said & { readonly kind: 'turns' })
  | (Said & { readonly kind: 'helix' })
  | (Said & { readonly kind: 'interval' })
  | (Said & { readonly kind: 'copies' })
  /** `words` stand beside the names. */
  | (Said & { readonly kind: 'reference'; readonly to: readonly ReferenceKind[]; readonly words?: Readonly<Record<string, string>> })
  | (Said & { readonly kind: 'record'; readonly fields: Readonly<Record<string, Field<unknown>>>; readonly needed: readonly string[]; readonly derived?: Readonly<Record<string, string>>; readonly alternative?: string })
  | (Said & { readonly kind: 'map'; readonly of: Field<unknown>; readonly keys: 'id' | 'reference' | 'name' | 'copy'; readonly keyTo?: readonly ReferenceKind[] })
  | (Said & { readonly kind: 'list'; readonly of: Field<unknown>; readonly min?: number; readonly max?: number })
  /** One value or a list of them; always read as a list. */
  | (Said & { readonly kind: 'some'; readonly of: Field<unknown> })
  /** One value for all copies, or a map with exactly the copies' names as keys. */
  | (Said & { readonly kind: 'per-copy'; readonly of: Field<unknown> })
  /** Told apart by how it is written. */
  | (Said & { readonly kind: 'by-shape'; readonly scalar?: Field<unknown>; readonly list?: Field<unknown>; readonly map?: Field<unknown> })
  /** A description that contains itself. */
  | (Said & { readonly kind: 'again'; readonly name: string; readonly get: () => Field<unknown> });

/** A description of values that are read as T. */
export type Field<T> = Spec & { readonly readsAs?: T };

type Camel<S extends string> = S extends `${infer A}-${infer B}` ? `${A}${Capitalize<Camel<B>>}` : S;
type Reads<F> = F extends { readonly readsAs?: infer T } ? Exclude<T, undefined> : never;
export type RecordOf<Fields> = { readonly [K in keyof Fields & string as Camel<K>]?: Reads<Fields[K]> };
export type ReadsAs<F> = Reads<F>;
export type PerCopy<T> = { readonly all: T } | { readonly each: Readonly<Record<string, T>> };
export interface ReadWindow {
  readonly min?: number;
  readonly max?: number;
  readonly unit: string;
  readonly siUnit: string;
}
/** A size and the limits that it was made within, SI; without a window the three are alike. */
export interface ReadSize {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
}
export type Vector = readonly [number, number, number];
export interface ReadInterval {
  readonly time?: number;
  readonly flights?: number;
}

/** `pressure-angle` of the file is `pressureAngle` of the model. */
export function camel(key: string): string {
  return !key.includes('-') ? key : key.replace(/-([a-z0-9])/gu, (_, letter: string) => letter.toUpperCase());
}

export function text(about: string, example: string): Field<string> {
  return { kind: 'text', about, example };
}
export function word<const W extends Readonly<Record<string, string>>>(about: string, words: W, example: keyof W & string): Field<keyof W & string> {
  return { kind: 'word', about, words, example };
}
export function count(about: string, example: string, min = 1, max = 100_000): Field<number> {
  return { kind: 'count', about, example, min, max };
}
export function number(about: string, example: string, bounds: Bounds = {}): Field<number> {
  return { kind: 'number', about, example, ...bounds };
}
export function flag(about: string): Field<boolean> {
  return { kind: 'flag', about, example: 'true' };
}
/** A quantity above zero unless the bounds say otherwise. */
export function quantity(about: string, unit: string, example: string, bounds: Bounds = { above: 0 }): Field<number> {
  return { kind: 'quantity', about, unit, example, ...bounds };
}
/** A size above zero. */
export function size(about: string, unit: string, example: string): Field<ReadSize> {
  return { kind: 'size', about, unit, example, above: 0 };
}
export function quantityOr<const W extends Readonly<Record<string, string>>>(about: string, unit: string, words: W, example: string): Field<number | (keyof W & string)> {
  return { kind: 'quantity', about, unit, words, example, above: 0 };
}
export function window(about: string, unit: string | undefined, example: string, bounds: Bounds = {}): Field<ReadWindow> {
  return { kind: 'window', about, example, ...(unit === undefined ? {} : { unit }), ...bounds };
}
export function fact(about: string, example: string): Field<string | number> {
  return { kind: 'fact', about, example };
}
export function direction(about: string, example = 'up'): Field<Vector> {
  return { kind: 'direction', about, example };
}
export function turns(about: string): Field<Vector> {
  return { kind: 'turns', about, example: 'counter-clockwise from above' };
}
export function helix(about: string): Field<{ readonly angle: number; readonly hand: 'left' | 'right' }> {
  return { kind: 'helix', about, example: '12 ° left' };
}
export function interval(about: string): Field<ReadInterval> {
  return { kind: 'interval', about, example: '10 h' };
}
export function copies(about: string): Field<readonly string[]> {
  return { kind: 'copies', about, example: '[front, rear]' };
}
export function reference(about: string, to: readonly ReferenceKind[], example: string): Field<string> {
  return { kind: 'reference', about, to, example };
}
export function referenceOr(about: string, to: readonly ReferenceKind[], words: Readonly<Record<string, string>>, example: string): Field<string> {
  return { kind: 'reference', about, to, words, example };
}
/** `alternative` is a key whose presence excuses missing required ones: a thing with a `type` may have its kind from there. */
export function record<const F extends Readonly<Record<string, Field<unknown>>>>(about: string, fields: F, more: { readonly derived?: Readonly<Record<string, string>>; readonly alternative?: string; readonly example?: string } = {}): Field<RecordOf<F>> {
  const needed = Object.keys(fields).filter((key) => fields[key]?.required);
  const example = more.example ?? needed.map((key) => `${key}: ${fields[key]?.example}`).join(', ');
  return { kind: 'record', about, fields, needed, example: `{${example}}`, ...(more.derived ? { derived: more.derived } : {}), ...(more.alternative ? { alternative: more.alternative } : {}) };
}
export function map<T>(about: string, of: Field<T>, keys: 'id' | 'reference' | 'name' | 'copy' = 'id', keyTo?: readonly ReferenceKind[]): Field<Readonly<Record<string, T>>> {
  return { kind: 'map', about, of, keys, example: `{name: ${of.example}}`, ...(keyTo ? { keyTo } : {}) };
}
export function list<T>(about: string, of: Field<T>, bounds: { readonly min?: number; readonly max?: number } = {}, example = `[${of.example}]`): Field<readonly T[]> {
  return { kind: 'list', about, of, example, ...bounds };
}
/** Where something is, from the origin of the machine: forward, left, up. */
export function point(about: string, example: string): Field<Vector> {
  return list(about, quantity('Coordinate.', 'mm', '40 mm', {}), { min: 3, max: 3 }, example) as Field<Vector>;
}
export function some<T>(of: Field<T>): Field<readonly T[]> {
  return { kind: 'some', about: of.about, example: of.example, of };
}
export function perCopy<T>(of: Field<T>): Field<PerCopy<T>> {
  return { kind: 'per-copy', about: of.about, example: of.example, of };
}
export function byShape<S = never, L = never, M = never>(about: string, example: string, shapes: { readonly scalar?: Field<S>; readonly list?: Field<L>; readonly map?: Field<M> }): Field<S | L | M> {
  return { kind: 'by-shape', about, example, ...shapes };
}
export function again<T>(name: string, about: string, example: string, get: () => Field<T>): Field<T> {
  return { kind: 'again', name, about, example, get };
}
export function required<T>(field: Field<T>): Field<T> {
  return { ...field, required: true };
}
