import { isAlias, isMap, isPair, isScalar, isSeq, parseDocument, type YAMLError } from 'yaml';
import { wordYamlError } from './yaml-errors.ts';
import type { Report } from './report.ts';
import { emptyMap, joinPath, type MapEntry, type MapNode, type TreeNode } from './tree.ts';

export const largestText = 2 * 1024 * 1024;
export const deepestNesting = 48;
/** How many entries may come out of aliases: enough for any honest repetition, too few for a bomb. */
export const mostAliased = 20_000;

interface Conversion {
  readonly report: Report;
  readonly text: string;
  /** Pieces with an anchor, as far as the text has been read. */
  readonly anchors: Map<string, unknown>;
  /** Pieces that are being read: an alias to one of them would never end. */
  readonly open: Set<unknown>;
  aliased: number;
  stopped: boolean;
}

/** Reports a text that is too large or too deep to be given to the parser. */
export function isOutOfBounds(text: string, report: Report): boolean {
  const size = bytesOf(text);
  if (size > largestText) {
    report.add('yaml/too-large', '', { start: 0, end: 0 }, { size: (size / 1024 / 1024).toFixed(1), largest: largestText / 1024 / 1024 });
    return true;
  }
  const deep = tooDeepAt(text);
  if (deep !== undefined) report.add('yaml/too-deep', '', { start: deep, end: deep + 1 }, { deepest: deepestNesting });
  return deep !== undefined;
}

/**
 * Parses the text into a tree of our own: maps, lists, scalars, each with its offsets. What the parser cannot make
 * sense of is reported; the rest is still there.
 */
export function readTree(text: string, report: Report): MapNode {
  const none = emptyMap(0, 0);
  if (isOutOfBounds(text, report)) return none;
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false, logLevel: 'silent', keepSourceTokens: false });
  for (const error of firstCauses([...document.errors, ...document.warnings])) reportYamlError(error, document.contents, text, report);
  if (document.contents === null) return none;
  const conversion: Conversion = { report, text, anchors: new Map(), open: new Set(), aliased: 0, stopped: false };
  const root = convert(document.contents, '', 0, conversion, 0);
  if (root.kind === 'map') return root;
  if (root.kind !== 'scalar' || root.value !== null) report.at('type/wrong', '', root, { wanted: 'sections, each with a name and a colon', example: 'machine: {name: Turnstone}' });
  return none;
}

/** Length in UTF-8. */
function bytesOf(text: string): number {
  let bytes = text.length;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    // Two bytes from U+0080, three from U+0800; a pair of surrogates makes four.
    if (code > 0x7f) bytes += code > 0x7ff && (code < 0xd800 || code > 0xdfff) ? 2 : 1;
  }
  return bytes;
}

/** A tab derails whatever follows it; only further tabs are troubles of their own then. */
function firstCauses(errors: readonly YAMLError[]): readonly YAMLError[] {
  const tab = errors.find((error) => error.code === 'TAB_AS_INDENT');
  return tab ? errors.filter((error) => error.code === 'TAB_AS_INDENT' || error.pos[0] < tab.pos[0]) : errors;
}

function reportYamlError(error: YAMLError, contents: unknown, text: string, report: Report): void {
  const noticed = Math.min(error.pos[0], text.length);
  // What is never closed is noticed far behind; the place to look at is where it was opened.
  const start = /closing .*quote|end with a/u.test(error.message) ? (openedBefore(contents, noticed, text) ?? noticed) : noticed;
  const line = text.indexOf('\n', start);
  const end = start === noticed ? Math.max(start, Math.min(error.pos[1], line === -1 ? text.length : line)) : start + 1;
  report.add('yaml/syntax', '', { start, end }, wordYamlError(error.code, error.message));
}

/** Start of the innermost bracket or quote that an offset lies in. */
function openedBefore(contents: unknown, offset: number, text: string): number | undefined {
  let opened: number | undefined;
  let node: unknown = contents;
  while (node !== null && node !== undefined) {
    const start = (node as { range?: readonly number[] | null }).range?.[0];
    if (start !== undefined && /["'[{]/u.test(text.charAt(start))) opened = start;
    const children: readonly unknown[] = isMap(node) ? node.items.flatMap((pair) => [pair.key, pair.value]) : isSeq(node) ? node.items : [];
    node = children.findLast((one) => ((one as { range?: readonly number[] | null } | null)?.range?.[0] ?? Infinity) < offset);
  }
  return opened;
}

/** Deep nesting would overflow the parser's own stack, so it is looked for first: brackets, and dashes in a row. */
function tooDeepAt(text: string): number | undefined {
  let brackets = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 0x5b || code === 0x7b) {
      brackets += 1;
      if (brackets > deepestNesting) return bracketsOnlyInText(text) ? undefined : i;
    } else if (code === 0x5d || code === 0x7d) brackets = Math.max(0, brackets - 1);
  }
  const dashes = new RegExp(`(?:[-?:][ \\t]+){${deepestNesting}}`, 'u').exec(text);
  if (dashes) return dashes.index;
  return tooIndentedAt(text);
}

/** Brackets in quotes and comments open nothing. */
function bracketsOnlyInText(text: string): boolean {
  let depth = 0;
  for (const piece of text.matchAll(/"(?:[^"\\\n]|\\.)*"|'[^'\n]*'|#[^\n]*|[[{]|[\]}]/gu)) {
    const first = piece[0];
    if (first === '[' || first === '{') depth += 1;
    else if (first === ']' || first === '}') depth = Math.max(0, depth - 1);
    if (depth > deepestNesting) return false;
  }
  return true;
}

/** A stair of ever deeper lines. */
function tooIndentedAt(text: string): number | undefined {
  const stair: number[] = [];
  for (const line of text.matchAll(/^( *)[^\s#]/gmu)) {
    const indent = (line[1] as string).length;
    while (stair.length > 0 && (stair.at(-1) as number) >= indent) stair.pop();
    stair.push(indent);
    if (stair.length > deepestNesting) return line.index + indent;
  }
  return undefined;
}

function convert(node: unknown, path: string, depth: number, conversion: Conversion, fallback: number): TreeNode {
  const { report } = conversion;
  if (isAlias(node)) {
    const span = spanOf(node.range, fallback);
    const target = conversion.anchors.get(node.source);
    if (target === undefined || conversion.open.has(target)) {
      if (target === undefined) report.add('yaml/syntax', path, span, wordYamlError('BAD_ALIAS', ''));
      else report.add('yaml/alias', path, span, { name: node.source });
      return nothing(span.start, span.end);
    }
    return convertAliased(target, path, depth, conversion, span);
  }
  const span = spanOf((node as { range?: readonly number[] | null } | null)?.range, fallback);
  if (depth > deepestNesting) {
    report.add('yaml/too-deep', path, { start: span.start, end: span.start + 1 }, { deepest: deepestNesting });
    return nothing(span.start, span.end);
  }
  const anchor = (node as { anchor?: string } | null)?.anchor;
  if (anchor !== undefined) conversion.anchors.set(anchor, node);
  if (isScalar(node)) {
    const plain = node.type === 'PLAIN' || node.type === undefined;
    const value = toPlainValue(node.value);
    return { kind: 'scalar', value, text: plain ? (node.source ?? String(value ?? '')) : String(value), plain, ...span };
  }
  if (isSeq(node)) {
    conversion.open.add(node);
    const items = node.items.map((item, i) => convert(item, joinPath(path, i), depth + 1, conversion, span.start));
    conversion.open.delete(node);
    return { kind: 'list', flow: node.flow === true, ...span, items };
  }
  if (isMap(node)) return convertMap(node.items, node, node.flow === true, span, path, depth, conversion);
  return nothing(span.start, span.end);
}

/** A repeated piece stands where it was first written; only what it repeats too often is refused. */
function convertAliased(target: unknown, path: string, depth: number, conversion: Conversion, span: { start: number; end: number }): TreeNode {
  if (conversion.stopped) return nothing(span.start, span.end);
  const before = conversion.aliased;
  const tree = convert(target, path, depth, conversion, span.start);
  conversion.aliased = Math.max(conversion.aliased, before) + countWithin(tree, mostAliased);
  if (conversion.aliased <= mostAliased) return tree;
  conversion.stopped = true;
  conversion.report.add('yaml/too-large', path, span, { aliased: mostAliased });
  return nothing(span.start, span.end);
}

function countWithin(tree: TreeNode, most: number): number {
  let count = 0;
  const waiting = [tree];
  for (let next = waiting.pop(); next !== undefined && count <= most; next = waiting.pop()) {
    count += 1;
    if (next.kind === 'list') waiting.push(...next.items.slice(0, most));
    else if (next.kind === 'map') for (const entry of next.entries.values()) waiting.push(entry.node);
  }
  return count;
}

function convertMap(items: readonly unknown[], self: unknown, flow: boolean, span: { start: number; end: number }, path: string, depth: number, conversion: Conversion): MapNode {
  conversion.open.add(self);
  const entries = new Map<string, MapEntry>();
  for (const pair of items) {
    if (!isPair(pair)) continue;
    const keySpan = spanOf((pair.key as { range?: readonly number[] } | null)?.range, span.start);
    if (!isScalar(pair.key)) {
      conversion.report.add('yaml/syntax', path, keySpan, { reason: 'A key must be a plain word.', remedy: 'Write one word, then a colon.' });
      continue;
    }
    const key = pair.key.source ?? String(pair.key.value ?? '');
    const first = entries.get(key);
    if (first) {
      conversion.report.add('id/twice', joinPath(path, key), keySpan, { id: key, line: lineOf(conversion.text, first.keyStart) });
      continue;
    }
    entries.set(key, { keyStart: keySpan.start, keyEnd: keySpan.end, node: convert(pair.value, joinPath(path, key), depth + 1, conversion, keySpan.end) });
  }
  conversion.open.delete(self);
  return { kind: 'map', flow, ...span, entries };
}

function lineOf(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at !== -1 && at < offset; at = text.indexOf('\n', at + 1)) line += 1;
  return line;
}

function nothing(start: number, end: number): TreeNode {
  return { kind: 'scalar', value: null, text: '', plain: true, start, end };
}

function spanOf(range: readonly number[] | null | undefined, fallback: number): { start: number; end: number } {
  return range ? { start: range[0] as number, end: range[1] as number } : { start: fallback, end: fallback };
}

function toPlainValue(value: unknown): string | number | boolean | null {
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  return value === null || value === undefined ? null : String(value);
}
