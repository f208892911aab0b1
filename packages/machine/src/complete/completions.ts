import { axisWords, viewerWords } from '../read/directions.ts';
import { lineStarts } from '../read/lines.ts';
import { Report } from '../read/report.ts';
import { readTree } from '../read/source.ts';
import { child, type MapNode, type TreeNode } from '../read/tree.ts';
import type { Field, Spec } from '../schema/field.ts';
import { rootField } from '../schema/root.ts';
import { namesOf } from './names-in-tree.ts';

export interface Completion {
  readonly label: string;
  /** What it means; for a key, what is written there. */
  readonly about: string;
  readonly kind: 'key' | 'word' | 'name' | 'example';
  /** Text to put in place of the piece between `from` and `to`. */
  readonly insert: string;
}

export interface Completions {
  readonly from: number;
  readonly to: number;
  readonly options: readonly Completion[];
}

/** Stands in the half-written text for what is being typed. */
const marker = 'zqmarkerqz';

interface Found {
  readonly keys: readonly string[];
  readonly as: 'key' | 'value';
  readonly root: MapNode;
}

/**
 * What fits at a place of a machine file that is being written.
 *
 * @param offset  of the cursor, in UTF-16 units from the start of the text
 * @example completions('power:\n  en', 11).options.map((one) => one.label) // ['engine', 'motor', 'battery']
 */
export function completions(text: string, offset: number): Completions {
  const at = Math.max(0, Math.min(offset, text.length));
  const from = at - (/[\w./*-]*$/u.exec(text.slice(0, at))?.[0].length ?? 0);
  const to = at + (/^[\w./*-]*/u.exec(text.slice(at))?.[0].length ?? 0);
  const found = find(text, from, to);
  return { from, to, options: found ? optionsFor(found, text.slice(to)) : [] };
}

/** Puts the marker in as a key, then as a value, and takes the first that the parser makes sense of. */
function find(text: string, from: number, to: number): Found | undefined {
  const before = text.slice(0, from);
  const after = text.slice(to);
  const line = before.slice(before.lastIndexOf('\n') + 1);
  const attempts = /^\s*:/u.test(after) ? [marker] : /^\s*(?:-\s+)*$/u.test(line) ? [`${marker}: 0`, marker] : [marker, `${marker}: 0`];
  for (const attempt of attempts) {
    const root = readTree(before + attempt + after, new Report(lineStarts('')));
    const found = search(root, []);
    if (found) return { ...found, root };
  }
  return undefined;
}

function search(node: TreeNode, keys: readonly string[]): { readonly keys: readonly string[]; readonly as: 'key' | 'value' } | undefined {
  if (node.kind === 'scalar') return node.text === marker || node.text.endsWith(` ${marker}`) ? { keys, as: 'value' } : undefined;
  if (node.kind === 'list') {
    for (const [i, item] of node.items.entries()) {
      const found = search(item, [...keys, String(i)]);
      if (found) return found;
    }
    return undefined;
  }
  for (const [key, entry] of node.entries) {
    if (key === marker) return { keys, as: 'key' };
    const found = search(entry.node, [...keys, key]);
    if (found) return found;
  }
  return undefined;
}

function optionsFor({ keys, as, root }: Found, after: string): readonly Completion[] {
  const field = fieldAt(rootField, root, keys, as);
  if (!field) return [];
  const here = keys.reduce<TreeNode | undefined>((node, key) => (node?.kind === 'list' ? node.items[Number(key)] : child(node, key)), root);
  const taken = new Set(here?.kind === 'map' ? here.entries.keys() : []);
  const module = keys[0] === 'modules' ? keys[1] : undefined;
  if (as === 'key') return keyOptions(field, taken, /^\s*:/u.test(after), root, module);
  return field.kind === 'record' ? keyOptions(field, taken, false, root, module) : valueOptions(field, root, module);
}

/** The description of what stands at a path, with the shape in which it is written. */
function fieldAt(field: Field<unknown>, node: TreeNode | undefined, keys: readonly string[], as: 'key' | 'value'): Field<unknown> | undefined {
  const spec: Spec = field;
  const [key, ...rest] = keys;
  switch (spec.kind) {
    case 'again':
      return fieldAt(spec.get(), node, keys, as);
    case 'by-shape': {
      const shape = node?.kind === 'list' ? spec.list : node?.kind === 'map' || (key === undefined && as === 'key') ? spec.map : spec.scalar;
      return shape && fieldAt(shape, node, keys, as);
    }
    case 'some':
      return node?.kind === 'list' && key !== undefined ? fieldAt(spec.of, node.items[Number(key)], rest, as) : fieldAt(spec.of, node, keys, as);
    case 'per-copy':
      return node?.kind === 'map' && key !== undefined ? fieldAt(spec.of, child(node, key), rest, as) : fieldAt(spec.of, node, keys, as);
    default:
  }
  if (key === undefined) return field;
  if (spec.kind === 'record') return Object.hasOwn(spec.fields, key) ? fieldAt(spec.fields[key] as Field<unknown>, child(node, key), rest, as) : undefined;
  if (spec.kind === 'map') return fieldAt(spec.of, child(node, key), rest, as);
  if (spec.kind === 'list') return fieldAt(spec.of, node?.kind === 'list' ? node.items[Number(key)] : undefined, rest, as);
  return undefined;
}

function keyOptions(field: Field<unknown>, taken: ReadonlySet<string>, hasColon: boolean, root: MapNode, module: string | undefined): readonly Completion[] {
  const spec: Spec = field;
  const insert = (key: string) => (hasColon ? key : `${key}: `);
  if (spec.kind === 'map' && spec.keyTo) {
    return spec.keyTo.flatMap((kind) => namesOf(kind, root, module)).filter((name) => !taken.has(name)).map((name) => ({ label: name, about: spec.of.about, kind: 'name', insert: insert(name) }));
  }
  if (spec.kind !== 'record') return [];
  return Object.entries(spec.fields).filter(([key]) => !taken.has(key)).map(([key, one]) => ({ label: key, about: `${one.about} Such as ${one.example}`, kind: 'key', insert: insert(key) }));
}

function valueOptions(field: Field<unknown>, root: MapNode, module: string | undefined): readonly Completion[] {
  const spec: Spec = field;
  const words = (known: Readonly<Record<string, string>>): Completion[] => Object.entries(known).map(([label, about]) => ({ label, about, kind: 'word', insert: label }));
  const plain = (labels: readonly string[]): Completion[] => labels.map((label) => ({ label, about: spec.about, kind: 'word', insert: label }));
  const example: Completion = { label: spec.example, about: spec.about, kind: 'example', insert: spec.example };
  switch (spec.kind) {
    case 'word':
      return words(spec.words);
    case 'flag':
      return plain(['true', 'false']);
    case 'direction':
      return plain(axisWords);
    case 'turns':
      return plain(viewerWords.flatMap((viewer) => [`clockwise from ${viewer}`, `counter-clockwise from ${viewer}`]));
    case 'quantity':
      return [...words(spec.words ?? {}), example];
    case 'reference':
      return [...spec.to.flatMap((kind) => namesOf(kind, root, module)).map((name): Completion => ({ label: name, about: spec.about, kind: 'name', insert: name })), ...words(spec.words ?? {})];
    case 'size':
    case 'window':
    case 'helix':
    case 'interval':
    case 'copies':
    case 'list':
      return [example];
    default:
      return [];
  }
}
