import { isAlias, isMap, isScalar, isSeq, parseDocument, type Document, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';

type Container = YAMLMap | YAMLSeq;

/** How far a path leads into a file. */
export type Located =
  /** An alias on the way: what stands behind it stands elsewhere. */
  | { readonly kind: 'alias'; readonly name: string }
  /** The entry itself. */
  | { readonly kind: 'entry'; readonly node: unknown; readonly parent?: Container; readonly index: number }
  /** The deepest map, list or scalar that exists, and the keys that would have to be written in it. */
  | { readonly kind: 'above'; readonly node: unknown; readonly rest: readonly string[]; readonly parent?: Container; readonly index: number };

export function parseForEdit(text: string): Document {
  return parseDocument(text, { uniqueKeys: false, prettyErrors: false, logLevel: 'silent' });
}

export function keyText(pair: Pair): string {
  return isScalar(pair.key) ? ((pair.key as Scalar).source ?? String((pair.key as Scalar).value ?? '')) : '';
}

export function locate(document: Document, keys: readonly string[]): Located {
  let node: unknown = document.contents;
  let parent: Container | undefined;
  let index = 0;
  for (const [depth, key] of keys.entries()) {
    if (isAlias(node)) return { kind: 'alias', name: node.source };
    const next = isMap(node) || isSeq(node) ? indexOf(node, key) : -1;
    if (next === -1) return { kind: 'above', node, rest: keys.slice(depth), index, ...(parent ? { parent } : {}) };
    parent = node as Container;
    index = next;
    node = isMap(node) ? (node.items[next] as Pair).value : (node as YAMLSeq).items[next];
  }
  return isAlias(node) ? { kind: 'alias', name: node.source } : { kind: 'entry', node, index, ...(parent ? { parent } : {}) };
}

function indexOf(node: Container, key: string): number {
  if (isMap(node)) return node.items.findIndex((pair) => keyText(pair as Pair) === key);
  return /^\d+$/u.test(key) && Number(key) < node.items.length ? Number(key) : -1;
}

/** Offset of the first character of an item: of its key in a map. */
export function itemStart(parent: Container, index: number): number {
  const item = parent.items[index];
  const first = isMap(parent) ? (item as Pair).key : item;
  return (first as { range?: readonly number[] }).range?.[0] ?? 0;
}

/** Offset after the last character of an item that says something: comments and line ends are not part of it. */
export function itemEnd(parent: Container, index: number, text: string): number {
  const item = parent.items[index];
  const last = isMap(parent) ? (item as Pair).value : item;
  const key = isMap(parent) ? (item as Pair).key : undefined;
  const end = contentEnd(last, text);
  if (end !== undefined) return end;
  const keyEnd = (key as { range?: readonly number[] } | undefined)?.range?.[1] ?? itemStart(parent, index);
  return afterColon(text, keyEnd);
}

/** Behind the colon of a key whose value is not written; where there is no colon, behind the key. */
export function afterColon(text: string, keyEnd: number): number {
  const colon = /^\s*:/u.exec(text.slice(keyEnd, keyEnd + 200));
  return colon ? keyEnd + colon[0].length : keyEnd;
}

function contentEnd(node: unknown, text: string): number | undefined {
  if ((isMap(node) || isSeq(node)) && node.flow !== true && node.items.length > 0) return itemEnd(node as Container, node.items.length - 1, text);
  const range = (node as { range?: readonly number[] } | null)?.range;
  if (!range || range[0] === range[1]) return undefined;
  return (range[0] as number) + text.slice(range[0], range[1]).trimEnd().length;
}
