import { isEmpty, joinPath, scalarText, type MapEntry, type MapNode, type TreeNode } from './tree.ts';

/** Called where an overlay changes nothing. */
type NothingChanged = (path: string, entry: MapEntry) => void;

/**
 * Lays a variant over the file: maps merge, lists and values replace, null removes. Every piece keeps the place at
 * which it was written.
 */
export function overlay(base: MapNode, over: MapNode, path: string, nothing: NothingChanged): MapNode {
  const entries = new Map(base.entries);
  for (const [key, entry] of over.entries) {
    const at = joinPath(path, key);
    const below = base.entries.get(key);
    if (isEmpty(entry.node)) {
      if (!entries.delete(key)) nothing(at, entry);
    } else if (below && below.node.kind === 'map' && entry.node.kind === 'map') {
      entries.set(key, { ...below, node: overlay(below.node, entry.node, at, nothing) });
    } else {
      if (below && sameTree(below.node, entry.node)) nothing(at, entry);
      entries.set(key, entry);
    }
  }
  return { ...base, entries };
}

/** Whether two pieces say the same, wherever they stand. */
export function sameTree(a: TreeNode, b: TreeNode): boolean {
  if (a.kind === 'scalar') return b.kind === 'scalar' && a.value === b.value;
  if (a.kind === 'list') return b.kind === 'list' && a.items.length === b.items.length && a.items.every((item, i) => sameTree(item, b.items[i] as TreeNode));
  return b.kind === 'map' && a.entries.size === b.entries.size && [...a.entries].every(([key, entry]) => {
    const other = b.entries.get(key);
    return other !== undefined && sameTree(entry.node, other.node);
  });
}

/** Gives every part and joint with a `type` the entries of that type which it does not state itself. */
export function applyTypes(root: MapNode): MapNode {
  const types = root.entries.get('types')?.node;
  const modules = root.entries.get('modules');
  if (types?.kind !== 'map' || modules?.node.kind !== 'map') return root;
  const applied = mapEntries(modules.node, (module) => inside(inside(module, 'parts', (thing) => withType(thing, types)), 'joints', (thing) => withType(thing, types)));
  return { ...root, entries: new Map(root.entries).set('modules', { ...modules, node: applied }) };
}

function inside(module: TreeNode, section: string, change: (node: TreeNode) => TreeNode): TreeNode {
  if (module.kind !== 'map') return module;
  const things = module.entries.get(section);
  if (things?.node.kind !== 'map') return module;
  return { ...module, entries: new Map(module.entries).set(section, { ...things, node: mapEntries(things.node, change) }) };
}

function mapEntries(map: MapNode, change: (node: TreeNode) => TreeNode): MapNode {
  return { ...map, entries: new Map([...map.entries].map(([key, entry]) => [key, { ...entry, node: change(entry.node) }])) };
}

function withType(thing: TreeNode, types: MapNode): TreeNode {
  const name = scalarText(thing.kind === 'map' ? thing.entries.get('type')?.node : undefined);
  const type = name === undefined ? undefined : types.entries.get(name)?.node;
  if (thing.kind !== 'map' || type?.kind !== 'map') return thing;
  return { ...thing, entries: new Map([...type.entries, ...mergedWith(type, thing)]) };
}

function mergedWith(type: MapNode, thing: MapNode): [string, MapEntry][] {
  return [...thing.entries].map(([key, entry]) => {
    const below = type.entries.get(key)?.node;
    return [key, below?.kind === 'map' && entry.node.kind === 'map' ? { ...entry, node: { ...entry.node, entries: new Map([...below.entries, ...entry.node.entries]) } } : entry];
  });
}
