import type { Access, Thing } from '../model/assembly.ts';
import { joinPath } from '../read/tree.ts';
import type { PerCopy } from '../schema/field.ts';
import type { WrittenAccess } from '../schema/sections/things.ts';
import { spanOf, type Expansion, type Referrer, type Sibling } from './names.ts';
import { resolve, sameNames } from './resolve.ts';
import { compact, titleFrom } from './words.ts';

/** One copy of a module that is being expanded. */
export interface ModuleCopy {
  readonly id: string;
  readonly key: string;
  readonly path: string;
  readonly siblings: readonly Sibling[];
  /** Ways in that the module names, as written. */
  readonly openings: Readonly<Record<string, WrittenAccess>>;
}

interface WrittenThing {
  readonly title?: string;
  readonly tip?: string;
  readonly why?: string;
  readonly caution?: string;
  readonly photo?: string;
  readonly was?: string;
  readonly code?: string;
  readonly price?: string;
  readonly spares?: number;
  readonly copies?: readonly string[];
}

export type Section = 'parts' | 'joints' | 'stacks' | 'measurements' | 'steps';

export function thingBase(module: ModuleCopy, section: Section, key: string, written: WrittenThing): Thing {
  const id = `${module.id}/${key}`;
  const copies = written.copies ?? [];
  return compact({
    id, module: module.id, key, path: joinPath(joinPath(module.path, section), key), title: written.title ?? titleFrom(key), copies, instances: copies.length > 0 ? copies.map((copy) => `${id}.${copy}`) : [id],
    tip: written.tip, why: written.why, caution: written.caution, photo: written.photo, was: written.was, code: written.code, price: written.price, spares: written.spares,
  });
}

export function referrerIn(module: ModuleCopy, copies: readonly string[] = [], current?: string): Referrer {
  return { module: module.key, siblings: current === undefined ? module.siblings : [{ names: copies, current }, ...module.siblings] };
}

/**
 * What one copy has of a value that may be given per copy: of its own copies, or of its module's.
 *
 * @returns the value and the path at which it stands
 */
export function forCopy<T>(value: PerCopy<T> | undefined, path: string, siblings: readonly Sibling[], expansion: Expansion): { readonly value: T; readonly path: string } | undefined {
  if (!value) return undefined;
  if ('all' in value) return { value: value.all, path };
  const keys = Object.keys(value.each);
  const sibling = siblings.find((one) => sameNames(one.names, keys));
  if (!sibling) {
    const copies = siblings[0]?.names ?? ['one thing without copies'];
    expansion.report.add('copies/mismatch', path, spanOf(expansion.spans, path), { has: keys.length > 0 ? keys : ['nothing'], copies });
    return undefined;
  }
  return { value: value.each[sibling.current] as T, path: joinPath(path, sibling.current) };
}

export function expandAccess(written: WrittenAccess | undefined, path: string, module: ModuleCopy, expansion: Expansion, within: readonly string[] = []): Access | undefined {
  if (written === undefined) return undefined;
  if (typeof written === 'string') return accessTo(written, path, module, expansion, within);
  if (isList(written)) return allOf(written, path, module, expansion, within);
  const keys = (['any', 'all'] as const).filter((key) => written[key] !== undefined);
  if (keys.length !== 1) {
    expansion.report.add('key/one-of', path, spanOf(expansion.spans, path), { section: path, keys: ['any', 'all'], count: keys.length === 0 ? 'none' : 'both' });
    return undefined;
  }
  if (written.all) return allOf(written.all, joinPath(path, 'all'), module, expansion, within);
  const ways = expandEach(written.any ?? [], joinPath(path, 'any'), module, expansion, within);
  return ways.length === 1 ? ways[0] : { any: ways };
}

function isList(written: WrittenAccess): written is readonly WrittenAccess[] {
  return Array.isArray(written);
}

function expandEach(items: readonly WrittenAccess[], path: string, module: ModuleCopy, expansion: Expansion, within: readonly string[]): Access[] {
  return items.flatMap((item, i) => expandAccess(item, joinPath(path, i), module, expansion, within) ?? []);
}

function allOf(items: readonly WrittenAccess[], path: string, module: ModuleCopy, expansion: Expansion, within: readonly string[]): Access | undefined {
  const all = expandEach(items, path, module, expansion, within);
  return all.length > 1 ? { all } : all[0];
}

function accessTo(text: string, path: string, module: ModuleCopy, expansion: Expansion, within: readonly string[]): Access | undefined {
  const found = resolve(expansion, text, ['part', 'joint', 'module', 'opening'], 'group', path, referrerIn(module));
  if (!found) return undefined;
  if (found.kind !== 'opening') return found.ids.length === 1 ? { off: found.ids[0] as string } : { all: found.ids.map((off) => ({ off })) };
  if (within.includes(text)) {
    expansion.report.add('access/cycle', path, spanOf(expansion.spans, path), { loop: [...within.slice(within.indexOf(text)), text] });
    return undefined;
  }
  return expandAccess(module.openings[text], joinPath(joinPath(module.path, 'openings'), text), module, expansion, [...within, text]);
}
