import type { Measurement, WrittenStep } from '../model/assembly.ts';
import { nearestWord } from '../read/nearest.ts';
import { joinPath } from '../read/tree.ts';
import type { ReadsAs } from '../schema/field.ts';
import { measuredQuantities, type measurementField, type stepField } from '../schema/sections/things.ts';
import { windowOf } from './drive.ts';
import { listPath } from './joint.ts';
import { spanOf, type Expansion, type Referrer } from './names.ts';
import { resolve } from './resolve.ts';
import { referrerIn, thingBase, type ModuleCopy } from './thing.ts';
import { compact } from './words.ts';

const measurable = ['stack', 'part', 'joint', 'coupling', 'sensor', 'link', 'servo', 'lever', 'swashplate', 'rotor', 'shaft'] as const;

export function expandMeasurement(module: ModuleCopy, key: string, written: ReadsAs<typeof measurementField>, expansion: Expansion): Measurement | undefined {
  const base = thingBase(module, 'measurements', key, written);
  const { path } = base;
  const from = referrerIn(module);
  const setBy = (written.setBy ?? []).flatMap((ref, i) => resolve(expansion, ref, ['joint'], 'group', listPath(joinPath(path, 'set-by'), i, expansion), from)?.ids ?? []);
  const what = written.of === undefined ? undefined : readOf(written.of, joinPath(path, 'of'), from, expansion);
  if (!what) return undefined;
  if (written.wanted !== undefined && written.window !== undefined) expansion.report.add('key/one-of', path, spanOf(expansion.spans, path), { section: path, keys: ['window', 'wanted'], count: 'both' });
  return compact({ ...base, ...what, with: written.with, window: windowOf(written.window), unit: written.window?.siUnit, shown: written.window?.unit, ask: written.ask, wanted: written.wanted, setBy });
}

/** `end-play input` is a quantity and what it is of; anything else is the name of a figure. */
function readOf(text: string, path: string, from: Referrer, expansion: Expansion): { readonly quantity: string; readonly of?: string } | undefined {
  const [quantity = '', ...rest] = text.split(/\s+/u);
  const ref = rest.join(' ');
  if (!Object.hasOwn(measuredQuantities, quantity)) {
    const nearest = nearestWord(quantity, Object.keys(measuredQuantities));
    if (nearest === undefined) return { quantity: text };
    expansion.report.add('ref/unknown', path, spanOf(expansion.spans, path), { ref: quantity, wanted: 'quantity to measure', nearest });
    return undefined;
  }
  if (ref === '') return { quantity };
  const found = resolve(expansion, ref, measurable, 'group', path, from);
  if (!found) return undefined;
  if (found.ids.length === 1) return { quantity, of: found.ids[0] as string };
  expansion.report.add('ref/which', path, spanOf(expansion.spans, path), { ref, copies: found.ids });
  return undefined;
}

export function expandStep(module: ModuleCopy, key: string, written: ReadsAs<typeof stepField>, expansion: Expansion): WrittenStep | undefined {
  const base = thingBase(module, 'steps', key, written);
  const from = referrerIn(module);
  const others = (refs: readonly string[] | undefined, name: string) =>
    (refs ?? []).flatMap((ref, i) => resolve(expansion, ref, ['part', 'joint', 'stack', 'measurement', 'step'], 'group', listPath(joinPath(base.path, name), i, expansion), from)?.ids ?? []);
  const [after, before] = [others(written.after, 'after'), others(written.before, 'before')];
  return written.do === undefined ? undefined : compact({ ...base, do: written.do, after, before, takes: written.takes });
}
