import type { Stack, StackItem, StackLoad } from '../model/assembly.ts';
import { joinPath } from '../read/tree.ts';
import type { ReadsAs } from '../schema/field.ts';
import type { stackField } from '../schema/sections/things.ts';
import { windowOf } from './drive.ts';
import { listPath } from './joint.ts';
import { spanOf, type Expansion, type Referrer } from './names.ts';
import { resolve, resolveOne } from './resolve.ts';
import { referrerIn, thingBase, type ModuleCopy } from './thing.ts';
import { compact } from './words.ts';

type WrittenStack = ReadsAs<typeof stackField>;

/** Undefined when its spindle, ends or order are wrong or missing; that is then reported already. */
export function expandStack(module: ModuleCopy, key: string, written: WrittenStack, expansion: Expansion): Stack | undefined {
  const base = thingBase(module, 'stacks', key, written);
  const { path } = base;
  const from = referrerIn(module);
  const spindle = written.spindle === undefined ? undefined : resolveOne(expansion, written.spindle, ['part'], joinPath(path, 'spindle'), from);
  const housing = (written.housing ?? []).flatMap((ref, i) => resolve(expansion, ref, ['part'], 'one', listPath(joinPath(path, 'housing'), i, expansion), from)?.ids ?? []);
  const ends = written.ends as readonly [string, string] | undefined;
  const order = (written.order ?? []).flatMap((item, i) => expandItem(item, joinPath(joinPath(path, 'order'), i), from, expansion));
  const loads = (written.loads ?? []).flatMap((load, i) => expandLoad(load, base.id, ends, joinPath(joinPath(path, 'loads'), i), from, expansion));
  if (spindle === undefined || !ends || order.length === 0) return undefined;
  return compact({ ...base, spindle, housing, ends, order, loads, room: written.room, preload: windowOf(written.preload) });
}

function expandItem(item: string | { readonly shoulder?: string }, path: string, from: Referrer, expansion: Expansion): readonly StackItem[] {
  if (typeof item !== 'string') {
    const shoulder = item.shoulder === undefined ? undefined : resolveOne(expansion, item.shoulder, ['part'], joinPath(path, 'shoulder'), from);
    return shoulder === undefined ? [] : [{ shoulder }];
  }
  // Screws that close a stack together are one item; parts are named one by one.
  const found = resolve(expansion, item, ['part', 'joint'], 'group', path, from);
  if (!found) return [];
  if (found.kind === 'joint') return found.ids.map((joint) => ({ joint }));
  return (resolve(expansion, item, ['part'], 'one', path, from)?.ids ?? []).map((part) => ({ part }));
}

function expandLoad(load: string | { readonly pushes?: string; readonly towards?: string }, stack: string, ends: readonly string[] | undefined, path: string, from: Referrer, expansion: Expansion): readonly StackLoad[] {
  if (typeof load === 'string') {
    const coupling = resolveOne(expansion, load, ['coupling'], path, from);
    return coupling === undefined ? [] : [{ coupling }];
  }
  const { towards } = load;
  const pushes = load.pushes === undefined ? undefined : resolveOne(expansion, load.pushes, ['part'], joinPath(path, 'pushes'), from);
  if (towards !== undefined && ends && !ends.includes(towards)) {
    const at = joinPath(path, 'towards');
    expansion.report.add('load/end', at, spanOf(expansion.spans, at), { stack, towards, ends: ends.join(' or ') });
    return [];
  }
  return pushes === undefined || towards === undefined ? [] : [{ pushes, towards }];
}
