import type { Field, Spec } from '../schema/field.ts';
import { camel } from '../schema/field.ts';
import { listed, nearestWord } from './nearest.ts';
import type { Report } from './report.ts';
import { readCopies, readCount, readDirection, readFact, readFlag, readHelix, readInterval, readNumber, readQuantityField, readSizeField, readText, readTurns, readWindowField, readWord, suggestedId, wrongType } from './scalars.ts';
import { isEmpty, joinPath, type MapEntry, type MapNode, type TreeNode } from './tree.ts';

export interface Span {
  readonly start: number;
  readonly end: number;
}


export interface Reading {
  readonly report: Report;
  /** Where each entry stands: its value, or its key where the value is a section of its own. Filled as reading goes. */
  readonly spans: Map<string, Span>;
  /** What stands under `expect`, by path. */
  readonly facts: Map<string, string | number>;
  /** Repeated kinds and variants are pieces: what is required may stand elsewhere, and null removes. */
  readonly partial: boolean;
}

type Of<K extends Spec['kind']> = Extract<Spec, { kind: K }>;

/**
 * Reads a node by its description and reports all that is wrong with it.
 *
 * @returns the value in SI, in the shape that the field says; parts that are wrong are left out
 */
export function readField<T>(field: Field<T>, node: TreeNode, path: string, reading: Reading, entry?: MapEntry): T | undefined {
  reading.spans.set(path, entry && (node.kind !== 'scalar' || isEmpty(node)) ? { start: entry.keyStart, end: entry.keyEnd } : node);
  return readSpec(field, node, path, reading) as T | undefined;
}

function readSpec(spec: Spec, node: TreeNode, path: string, reading: Reading): unknown {
  if (reading.partial && isEmpty(node)) return undefined;
  const at = { report: reading.report, path, node };
  switch (spec.kind) {
    case 'text':
    case 'reference':
      return readText(spec, at);
    case 'word':
      return readWord(spec, at);
    case 'count':
      return readCount(spec, at);
    case 'number':
      return readNumber(spec, at);
    case 'flag':
      return readFlag(at);
    case 'quantity':
      return readQuantityField(spec, at);
    case 'size':
      return readSizeField(spec, at);
    case 'window':
      return readWindowField(spec, at);
    case 'fact':
      return kept(readFact(at), path, reading);
    case 'direction':
      return readDirection(spec, at);
    case 'turns':
      return readTurns(spec, at);
    case 'helix':
      return readHelix(spec, at);
    case 'interval':
      return readInterval(spec, at);
    case 'copies':
      return readCopies(spec, at);
    case 'record':
      return readRecord(spec, node, path, reading);
    case 'map':
      return readMap(spec, node, path, reading);
    case 'list':
      return readList(spec, node, path, reading);
    case 'some':
      return node.kind === 'list' ? readItems(spec.of, node.items, path, reading) : wrapped(readSpec(spec.of, node, path, reading));
    case 'per-copy':
      return readPerCopy(spec, node, path, reading);
    case 'by-shape':
      return readByShape(spec, node, path, reading);
    case 'again':
      return readSpec(spec.get(), node, path, reading);
  }
}

function kept(value: string | number | undefined, path: string, reading: Reading): string | number | undefined {
  if (value !== undefined) reading.facts.set(path, value);
  return value;
}

function wrapped(value: unknown): readonly unknown[] | undefined {
  return value === undefined ? undefined : [value];
}

function readItems(of: Field<unknown>, items: readonly TreeNode[], path: string, reading: Reading): readonly unknown[] {
  return items.map((item, i) => readField(of, item, joinPath(path, i), reading)).filter((value) => value !== undefined);
}

function readList(spec: Of<'list'>, node: TreeNode, path: string, reading: Reading): readonly unknown[] | undefined {
  const at = { report: reading.report, path, node };
  if (node.kind !== 'list') return wrongType(at, 'a list', spec.example);
  const { min, max } = spec;
  if ((min !== undefined && node.items.length < min) || (max !== undefined && node.items.length > max)) {
    // What is wrong with the items themselves is said besides.
    readItems(spec.of, node.items, path, reading);
    return wrongType(at, `a list of ${min === max ? min : `at least ${min}`}: it has ${node.items.length}`, spec.example);
  }
  const items = readItems(spec.of, node.items, path, reading);
  // A point with two coordinates is no point.
  return min === max && min !== undefined && items.length !== min ? undefined : items;
}

function asMap(spec: Spec, node: TreeNode, path: string, reading: Reading): MapNode | undefined {
  if (node.kind === 'map') return node;
  // `crank:` with nothing behind it is an entry without details.
  if (isEmpty(node)) return { kind: 'map', flow: false, start: node.start, end: node.end, entries: new Map() };
  return wrongType({ report: reading.report, path, node }, 'a set of entries, each with a key and a colon', spec.example);
}

function readRecord(spec: Of<'record'>, node: TreeNode, path: string, reading: Reading): Record<string, unknown> | undefined {
  const map = asMap(spec, node, path, reading);
  if (!map) return undefined;
  const value: Record<string, unknown> = {};
  let before: string | undefined;
  for (const [key, entry] of map.entries) {
    const field = Object.hasOwn(spec.fields, key) ? (spec.fields[key] as Field<unknown>) : undefined;
    if (field) {
      const read = readField(field, entry.node, joinPath(path, key), reading, entry);
      if (read !== undefined) value[camel(key)] = read;
    } else refuseKey(spec, key, entry, map, before, path, reading);
    before = key;
  }
  if (!reading.partial) reportMissing(spec, map, path, reading);
  return value;
}

function reportMissing(spec: Of<'record'>, map: MapNode, path: string, reading: Reading): void {
  if (spec.alternative !== undefined && map.entries.has(spec.alternative)) return;
  for (const key of spec.needed) {
    const field = spec.fields[key] as Field<unknown>;
    const entry = map.entries.get(key);
    if (entry && !isEmpty(entry.node)) continue;
    reading.report.add('key/missing', joinPath(path, key), reading.spans.get(path) ?? map, { section: sectionName(path), key, about: lowerFirst(field.about), example: `${key}: ${field.example}` });
  }
}

function refuseKey(spec: Of<'record'>, key: string, entry: MapEntry, map: MapNode, before: string | undefined, path: string, reading: Reading): void {
  const span = { start: entry.keyStart, end: entry.keyEnd };
  const at = joinPath(path, key);
  const from = spec.derived && Object.hasOwn(spec.derived, key) ? spec.derived[key] : undefined;
  if (from !== undefined) {
    reading.report.add('fact/derived', at, span, { key, from });
    return;
  }
  const known = Object.keys(spec.fields);
  if (map.flow && isEmpty(entry.node) && before !== undefined && /\s|[.!?]$/u.test(key)) {
    reading.report.add('key/unknown', at, span, { key, sentence: key, after: before, section: sectionName(path) });
    return;
  }
  const nearest = nearestWord(key, known);
  reading.report.add('key/unknown', at, span, { key, section: sectionName(path), known: listed(known), ...(nearest === undefined ? {} : { nearest }) });
}

const idPattern = /^[A-Za-z0-9][A-Za-z0-9-]*$/u;

function readMap(spec: Of<'map'>, node: TreeNode, path: string, reading: Reading): Record<string, unknown> | undefined {
  const map = asMap(spec, node, path, reading);
  if (!map) return undefined;
  const value: Record<string, unknown> = {};
  for (const [key, entry] of map.entries) {
    const at = joinPath(path, key);
    const allowed = spec.keys === 'id' ? idPattern.test(key) : key.trim() !== '' && (spec.keys === 'reference' || !key.includes('.'));
    if (!allowed) {
      reading.report.add('key/name', at, { start: entry.keyStart, end: entry.keyEnd }, { key, suggestion: suggestedId(key) });
      continue;
    }
    const read = readField(spec.of, entry.node, at, reading, entry);
    // Not by plain assignment: `__proto__` is a key like any other.
    if (read !== undefined) Object.defineProperty(value, key, { value: read, enumerable: true, configurable: true, writable: true });
  }
  return value;
}

function readPerCopy(spec: Of<'per-copy'>, node: TreeNode, path: string, reading: Reading): unknown {
  if (node.kind !== 'map') {
    const all = readSpec(spec.of, node, path, reading);
    return all === undefined ? undefined : { all };
  }
  const each: Record<string, unknown> = {};
  for (const [key, entry] of node.entries) {
    const read = readField(spec.of, entry.node, joinPath(path, key), reading, entry);
    if (read !== undefined) Object.defineProperty(each, key, { value: read, enumerable: true, configurable: true, writable: true });
  }
  return { each };
}

function readByShape(spec: Of<'by-shape'>, node: TreeNode, path: string, reading: Reading): unknown {
  const field = node.kind === 'scalar' ? spec.scalar : node.kind === 'list' ? spec.list : spec.map;
  if (!field || isEmpty(node)) return wrongType({ report: reading.report, path, node }, lowerFirst(spec.about).replace(/\.$/u, ''), spec.example);
  return readSpec(field, node, path, reading);
}

function sectionName(path: string): string {
  return path === '' ? 'the file' : path;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
