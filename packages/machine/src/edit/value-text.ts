import { isAlias, isMap, isNode, isScalar, isSeq, parseDocument, visit, type Document, type Pair } from 'yaml';

/** What an entry can be given: a single value, or a list as it stands in a file. */
export type EntryValue = string | number | boolean | WrittenList;

/** A list on one line, brackets and all: `[136 mm, 20 mm, -30 mm]`. */
export interface WrittenList {
  readonly list: string;
}

/** How a value is written. */
export const sourceOf = (value: EntryValue): string => (typeof value === 'object' ? value.list : scalarSource(value));

/**
 * A value or key as it is written: bare where that reads back as the same text, in quotes where it would not.
 *
 * @example scalarSource('14600 rpm') // '14600 rpm'
 * @example scalarSource('Heat, then turn') // '"Heat, then turn"'
 */
export function scalarSource(value: string | number | boolean): string {
  if (typeof value !== 'string') return String(value);
  return readsBack(value) ? value : JSON.stringify(value);
}

function readsBack(text: string): boolean {
  if (/[\r\n]/u.test(text)) return false;
  const value = insideBraces(text);
  return isScalar(value) && value.type === 'PLAIN' && value.source === text && value.value !== null;
}

/** What a text is inside braces: there the rules are strictest; what is safe there is safe everywhere. */
function insideBraces(text: string): unknown {
  const document = parseDocument(`{a: ${text}}`, { prettyErrors: false, logLevel: 'silent' });
  if (document.errors.length > 0 || document.warnings.length > 0 || !isMap(document.contents) || document.contents.items.length !== 1) return undefined;
  return (document.contents.items[0] as Pair).value;
}

/**
 * A text as a list of the file's own syntax; undefined where it is none, or has anchors, aliases or comments.
 *
 * @example writtenList('[136 mm, 20 mm, -30 mm]') // { list: '[136 mm, 20 mm, -30 mm]' }
 * @example writtenList('136 mm') // undefined
 */
export function writtenList(text: string): WrittenList | undefined {
  const list = text.trim();
  if (!list.startsWith('[') || /[\r\n]/u.test(list)) return undefined;
  const value = insideBraces(list);
  return isSeq(value) && !isShared(value) && !hasComments(list) ? { list } : undefined;
}

/** Whether an entry holds a value just written. */
export function holdsValue(node: unknown, value: EntryValue): boolean {
  if (typeof value === 'object') return JSON.stringify(node) === JSON.stringify(insideBraces(value.list));
  return isScalar(node) && (node.type === 'PLAIN' ? node.source : String(node.value)) === String(value);
}

/** Whether comments stand in a piece of a file. */
export function hasComments(text: string): boolean {
  const document = parseDocument(text, { prettyErrors: false, logLevel: 'silent' });
  return document.comment !== null || document.commentBefore !== null || found(document.contents, (each) => typeof each.comment === 'string' || typeof each.commentBefore === 'string');
}

/** Whether an entry is repeated elsewhere in parts, or repeats others. */
function isShared(node: unknown): boolean {
  return found(node, (each) => isAlias(each) || typeof each.anchor === 'string');
}

function found(node: unknown, is: (each: { readonly comment?: unknown; readonly commentBefore?: unknown; readonly anchor?: unknown }) => boolean): boolean {
  let any = false;
  if (isNode(node)) visit(node as unknown as Document, { Node: (_, each) => (is(each) ? ((any = true), visit.BREAK) : undefined) });
  return any;
}
