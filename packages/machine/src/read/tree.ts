/** What stands in the file, with where it stands. Offsets count UTF-16 units from the start of the text; `end` is the offset after the last one. */
interface Span {
  readonly start: number;
  readonly end: number;
}

export interface ScalarNode extends Span {
  readonly kind: 'scalar';
  readonly value: string | number | boolean | null;
  /** As written, without quotes: `12.9` stays `12.9`, `012` stays `012`. */
  readonly text: string;
  readonly plain: boolean;
}

export interface ListNode extends Span {
  readonly kind: 'list';
  readonly flow: boolean;
  readonly items: readonly TreeNode[];
}

export interface MapNode extends Span {
  readonly kind: 'map';
  readonly flow: boolean;
  readonly entries: ReadonlyMap<string, MapEntry>;
}

export interface MapEntry {
  readonly keyStart: number;
  readonly keyEnd: number;
  readonly node: TreeNode;
}

export type TreeNode = ScalarNode | ListNode | MapNode;

export function emptyMap(start: number, end: number): MapNode {
  return { kind: 'map', flow: false, start, end, entries: new Map() };
}

export function isEmpty(node: TreeNode): boolean {
  return node.kind === 'scalar' && node.value === null;
}

/** The text of a scalar that says something. */
export function scalarText(node: TreeNode | undefined): string | undefined {
  return node?.kind === 'scalar' && node.value !== null ? node.text : undefined;
}

export function child(node: TreeNode | undefined, key: string): TreeNode | undefined {
  return node?.kind === 'map' ? node.entries.get(key)?.node : undefined;
}

/** Entries of a map; none for anything else. */
export function entriesOf(node: TreeNode | undefined): Iterable<readonly [string, MapEntry]> {
  return node?.kind === 'map' ? node.entries : [];
}

export function joinPath(path: string, key: string | number): string {
  return path === '' ? String(key) : `${path}.${key}`;
}
