import { isMap, isScalar, isSeq, type Document, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Finding } from '../findings/finding.ts';
import { severityOf } from '../findings/words.ts';
import type { EntryPath } from '../model/place.ts';
import { lineStarts, placeAt } from '../read/lines.ts';
import { Report } from '../read/report.ts';
import { isOutOfBounds, readTree } from '../read/source.ts';
import { afterColon, itemEnd, itemStart, locate, parseForEdit, type Located } from './locate.ts';
import { hasComments, holdsValue, scalarSource, sourceOf, type EntryValue } from './value-text.ts';

export type EditResult = { readonly text: string } | { readonly findings: readonly Finding[] };

/** Characters of a file that give way to others. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly insert: string;
}

/**
 * Writes one value, or one list, into a machine file and leaves everything else as it is, down to the last space: an entry that
 * exists has its own characters replaced, a new one is put at the end of its section in the style of its neighbours.
 *
 * @param path   as in the file, so `variants.short.rotors.main.diameter` for a variant
 * @param value  as a person would write it: `15`, `14600 rpm`; a list with its brackets, `{ list: '[13, 14]' }`
 * @returns the new text, or why it cannot be done; the old text is never harmed
 * @throws RangeError when the value is a number that is not finite
 * @example setEntry('shafts:\n  crank: {axis: up}\n', 'shafts.crank.axis', 'down') // { text: 'shafts:\n  crank: {axis: down}\n' }
 */
export function setEntry(text: string, path: EntryPath, value: EntryValue): EditResult {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`setEntry: the value must be finite; got ${value}`);
  return edit(text, path, (document, keys) => {
    const located = locate(document, keys);
    if (located.kind === 'alias') return located;
    return located.kind === 'entry' ? replaced(located, value, text) : added(document, located, sourceOf(value), text);
  }, (document, keys) => holds(document, keys, value));
}

/**
 * Takes an entry with all that belongs to it out of a machine file; everything else stays as it is.
 *
 * @example removeEntry('shafts:\n  crank: {axis: up}\n', 'shafts.crank.axis') // { text: 'shafts:\n  crank: {}\n' }
 */
export function removeEntry(text: string, path: EntryPath): EditResult {
  return edit(text, path, (document, keys) => {
    const located = locate(document, keys);
    if (located.kind === 'alias') return located;
    if (located.kind === 'above' || !located.parent) return 'there is no such entry';
    return removed(located.parent, located.index, text);
  }, () => true);
}

/** Makes a change and proves it on the new text before anybody sees it. */
function edit(text: string, path: EntryPath, plan: (document: Document, keys: readonly string[]) => Change | string | Extract<Located, { kind: 'alias' }>, holds: (document: Document, keys: readonly string[]) => boolean): EditResult {
  const report = new Report(lineStarts(text));
  if (isOutOfBounds(text, report)) return { findings: report.findings() };
  const document = parseForEdit(text);
  if (document.errors.length > 0) {
    readTree(text, report);
    return { findings: report.findings().filter((finding) => finding.code.startsWith('yaml/')) };
  }
  const keys = path.split('.');
  const change = path === '' ? 'it is the whole file' : plan(document, keys);
  if (typeof change === 'string') return refuse('edit/path', path, document, keys, text, { reason: change });
  if ('kind' in change) return refuse('edit/alias', path, document, keys, text, { name: change.name });
  const changed = text.slice(0, change.start) + change.insert + text.slice(change.end);
  const after = parseForEdit(changed);
  if (after.errors.length > 0 || !holds(after, keys)) return refuse('edit/path', path, document, keys, text, { reason: 'the lines around it leave no room for it' });
  return { text: changed };
}

function refuse(code: 'edit/path' | 'edit/alias', path: EntryPath, document: Document, keys: readonly string[], text: string, values: Finding['values']): EditResult {
  const located = locate(document, keys);
  const range = located.kind === 'alias' ? undefined : (located.node as { range?: readonly number[] } | null)?.range;
  const place = placeAt(lineStarts(text), range?.[0] ?? 0, range?.[0] ?? 0);
  const entries = located.kind === 'entry' && isMap(located.node) ? located.node.items.map(({ key }) => `${path}.${String(key)}`) : [];
  const known = entries.length === 0 ? values : { ...values, right: `Write one of its entries: ${entries.join(', ')}.` };
  return { findings: [{ code, severity: severityOf(code), path, place, values: known }] };
}

/** Whether a value stands at a place. */
export function holds(document: Document, keys: readonly string[], value: EntryValue): boolean {
  const located = locate(document, keys);
  return located.kind === 'entry' && holdsValue(located.node, value);
}

/** An entry that is there gets another value: its own characters go, or why they cannot. */
export function replaced(located: Extract<Located, { kind: 'entry' }>, value: EntryValue, text: string): Change | string {
  const { node, parent, index } = located;
  const source = sourceOf(value);
  if (isMap(node)) return `it is a section with entries of its own, and “${source}” is none`;
  if (isSeq(node)) return typeof value === 'object' ? replacedList(node, parent, index, source, text) : `it is a list, and “${value}” is none`;
  if (isScalar(node) && node.range && node.range[0] !== node.range[1]) {
    const [start, end] = node.range;
    // A block text ends with its line end, which stays.
    return { start, end: start + text.slice(start, end).trimEnd().length, insert: source };
  }
  if (!parent || !isMap(parent)) return 'it is an empty item of a list';
  return afterKey(parent, index, source, text);
}

/** A list, in brackets or in lines, gives way as a whole. */
function replacedList(node: YAMLSeq, parent: YAMLMap | YAMLSeq | undefined, index: number, source: string, text: string): Change | string {
  const [start, valueEnd] = node.range ?? [0, 0];
  const end = start + text.slice(start, valueEnd).trimEnd().length;
  if (hasComments(' '.repeat(columnOf(text, start)) + text.slice(start, end))) return 'comments stand in the list: set its items one by one';
  const colon = isMap(parent) ? afterColon(text, keyEndOf(parent, index)) : start;
  return colon < start && text.slice(colon, start).trim() === '' ? { start: colon, end, insert: ` ${source}` } : { start, end, insert: source };
}

const keyEndOf = (parent: YAMLMap, index: number): number => ((parent.items[index] as Pair).key as { range?: readonly number[] }).range?.[1] ?? 0;

/** Behind the colon of a key that has no value yet. */
function afterKey(parent: YAMLMap, index: number, source: string, text: string): Change {
  const keyEnd = keyEndOf(parent, index);
  const at = afterColon(text, keyEnd);
  return { start: at, end: at, insert: at === keyEnd ? `: ${source}` : ` ${source}` };
}

function added(document: Document, located: Extract<Located, { kind: 'above' }>, source: string, text: string): Change | string {
  const { node, rest, parent, index } = located;
  if (isMap(node)) return addedToMap(node, rest, source, text, node === document.contents);
  if (isSeq(node)) return rest.length === 1 && rest[0] === String(node.items.length) ? addedToList(node, source, text) : 'a list has no such item';
  if (node === null || node === undefined || (isScalar(node) && node.value === null)) {
    if (!parent) return appendedToEmpty(rest, source, text);
    if (isMap(parent) && emptyRange(node)) return afterKey(parent, index, braces(rest, source), text);
  }
  return 'a single value stands above it';
}

function emptyRange(node: unknown): boolean {
  const range = (node as { range?: readonly number[] } | null)?.range;
  return !range || range[0] === range[1];
}

/** `{a: {b: value}}` for the keys a, b. */
function braces(keys: readonly string[], source: string): string {
  return keys.reduceRight((inner, key) => `{${scalarSource(key)}: ${inner}}`, source);
}

function newEntry(keys: readonly string[], source: string): string {
  const [first = '', ...rest] = keys;
  return `${scalarSource(first)}: ${rest.length === 0 ? source : braces(rest, source)}`;
}

function lineEnd(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/** A new section of the file is written in lines; within sections new entries stay on one line. */
function newSection(keys: readonly string[], source: string, text: string): string {
  const [section = '', ...rest] = keys;
  return rest.length === 0 ? newEntry(keys, source) : `${scalarSource(section)}:${lineEnd(text)}  ${newEntry(rest, source)}`;
}

function appendedToEmpty(keys: readonly string[], source: string, text: string): Change {
  const gap = text === '' || text.endsWith('\n') ? '' : lineEnd(text);
  return { start: text.length, end: text.length, insert: `${gap}${newSection(keys, source, text)}${lineEnd(text)}` };
}

function addedToMap(map: YAMLMap, keys: readonly string[], source: string, text: string, isRoot: boolean): Change | string {
  const last = map.items.length - 1;
  if (last < 0) return map.flow === true && map.range ? { start: map.range[0] + 1, end: map.range[0] + 1, insert: newEntry(keys, source) } : 'the section is empty';
  const end = itemEnd(map, last, text);
  if (map.flow === true) return { start: end, end, insert: `, ${newEntry(keys, source)}` };
  const indent = ' '.repeat(columnOf(text, itemStart(map, 0)));
  return newLine(text, end, indent + (isRoot ? newSection(keys, source, text) : newEntry(keys, source)));
}

function addedToList(list: YAMLSeq, source: string, text: string): Change | string {
  const last = list.items.length - 1;
  if (last < 0) return list.flow === true && list.range ? { start: list.range[0] + 1, end: list.range[0] + 1, insert: source } : 'the list is empty';
  const end = itemEnd(list, last, text);
  if (list.flow === true) return { start: end, end, insert: `, ${source}` };
  const line = text.slice(0, itemStart(list, 0)).split('\n').at(-1) as string;
  return newLine(text, end, `${' '.repeat(line.lastIndexOf('-'))}- ${source}`);
}

/** After the line on which something ends, comment and all. */
function newLine(text: string, end: number, line: string): Change {
  const next = text.indexOf('\n', end);
  const at = next === -1 ? text.length : text[next - 1] === '\r' ? next - 1 : next;
  return { start: at, end: at, insert: lineEnd(text) + line };
}

function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1);
}

function removed(parent: YAMLMap | YAMLSeq, index: number, text: string): Change {
  const last = parent.items.length - 1;
  const start = itemStart(parent, index);
  const end = itemEnd(parent, index, text);
  if (parent.flow === true) {
    if (index > 0) return { start: itemEnd(parent, index - 1, text), end, insert: '' };
    if (index < last) return { start, end: itemStart(parent, index + 1), insert: '' };
    return { start, end: end + (/^\s*,/u.exec(text.slice(end))?.[0].length ?? 0), insert: '' };
  }
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const before = text.slice(lineStart, start);
  // The first entry of an item in a list shares its line with the dash.
  if (/\S/u.test(isSeq(parent) ? before.replace(/-\s*$/u, '') : before)) return index < last ? { start, end: itemStart(parent, index + 1), insert: '' } : { start, end, insert: '{}' };
  const next = text.indexOf('\n', end);
  return { start: lineStart, end: next === -1 ? text.length : next + 1, insert: '' };
}
