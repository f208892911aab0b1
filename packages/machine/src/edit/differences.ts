import type { EntryPath } from '../model/place.ts';
import { lineStarts } from '../read/lines.ts';
import { overlay } from '../read/overlay.ts';
import { Report } from '../read/report.ts';
import { readTree } from '../read/source.ts';
import { child, emptyMap, joinPath, type MapNode, type TreeNode } from '../read/tree.ts';

/** An entry that two files, or a file and its variant, do not share. Values as they are written. */
export interface Difference {
  readonly path: EntryPath;
  /** Absent when the entry is new. */
  readonly before?: string;
  /** Absent when the entry is gone. */
  readonly after?: string;
}

/** The text of a machine file, and which of its variants is meant. */
export interface Version {
  readonly text: string;
  readonly variant?: string;
}

/**
 * What two versions of a machine file say differently, entry by entry. Comments, order and layout are no differences.
 * A repeated kind (`types:`) counts where it is written, not at every thing that takes it. Lists of one length differ by
 * their items, others as a whole.
 *
 * @returns in the order of the file before; what is new comes where it stands among its neighbours
 * @example differences({ text: 'machine: {mass: 5 kg}' }, { text: 'machine: {mass: 6 kg}' }) // [{ path: 'machine.mass', before: '5 kg', after: '6 kg' }]
 */
export function differences(before: Version, after: Version): readonly Difference[] {
  const found: Difference[] = [];
  compare(treeOf(before), treeOf(after), '', found);
  return found;
}

function treeOf({ text, variant }: Version): MapNode {
  const root = readTree(text, new Report(lineStarts(text)));
  const base: MapNode = { ...root, entries: new Map([...root.entries].filter(([key]) => key !== 'variants')) };
  const over = variant === undefined ? undefined : child(root.entries.get('variants')?.node, variant);
  if (over?.kind !== 'map') return base;
  return overlay(base, { ...over, entries: new Map([...over.entries].filter(([key]) => key !== 'title')) }, '', () => undefined);
}

const nothing = emptyMap(0, 0);

function compare(before: TreeNode | undefined, after: TreeNode | undefined, path: EntryPath, found: Difference[]): void {
  if (before?.kind === 'map' || after?.kind === 'map') {
    // A section against a single value: the section is gone, the value is new, or the reverse.
    const [was, is] = [before, after].map((node) => (node?.kind === 'map' ? node : nothing)) as [MapNode, MapNode];
    for (const key of new Set([...was.entries.keys(), ...is.entries.keys()])) compare(was.entries.get(key)?.node, is.entries.get(key)?.node, joinPath(path, key), found);
    if (before !== undefined && before.kind !== 'map') note(path, before, undefined, found);
    if (after !== undefined && after.kind !== 'map') note(path, undefined, after, found);
    return;
  }
  if (before?.kind === 'list' && after?.kind === 'list' && before.items.length === after.items.length) {
    before.items.forEach((item, index) => compare(item, after.items[index], joinPath(path, index), found));
    return;
  }
  note(path, before, after, found);
}

function note(path: EntryPath, before: TreeNode | undefined, after: TreeNode | undefined, found: Difference[]): void {
  const [was, is] = [before && writtenAs(before), after && writtenAs(after)];
  if (was !== is) found.push({ path, ...(was === undefined ? {} : { before: was }), ...(is === undefined ? {} : { after: is }) });
}

/** On one line, as it could stand in a file. */
function writtenAs(node: TreeNode): string {
  if (node.kind === 'scalar') return node.text.trim();
  if (node.kind === 'list') return `[${node.items.map(writtenAs).join(', ')}]`;
  return `{${[...node.entries].map(([key, entry]) => `${key}: ${writtenAs(entry.node)}`).join(', ')}}`;
}
