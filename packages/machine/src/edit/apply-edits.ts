import type { EntryPath } from '../model/place.ts';
import { replaceTogether } from './replace-together.ts';
import { removeEntry, setEntry, type EditResult } from './set-entry.ts';
import { writtenList, type EntryValue } from './value-text.ts';

/** One entry to be written, or taken out when there is no value. */
export interface Edit {
  readonly path: EntryPath;
  readonly value?: string;
}

/**
 * Writes several entries into a machine file: values in place of others all at once, then the rest one after the other.
 *
 * @returns the new text, or why the first one that fails cannot be done
 * @example applyEdits('machine: {mass: 5 kg}', [{ path: 'machine.mass', value: '6 kg' }]) // { text: 'machine: {mass: 6 kg}' }
 */
export function applyEdits(text: string, edits: readonly Edit[]): EditResult {
  const values = edits.flatMap(({ path, value }) => (value === undefined ? [] : [{ path, value: plain(value) }]));
  // An entry that is taken out, or named twice, depends on what was done before it.
  const apart = values.length === edits.length && new Set(edits.map(({ path }) => path)).size === edits.length && edits.length > 1;
  const { text: replaced, left } = apart ? replaceTogether(text, values) : { text, left: values };
  let result: EditResult = { text: replaced };
  for (const { path, value } of apart ? left : edits) {
    if (!('text' in result)) return result;
    result = value === undefined ? removeEntry(result.text, path) : setEntry(result.text, path, typeof value === 'string' ? plain(value) : value);
  }
  return result;
}

/** `15`, `true` and `[136 mm, 20 mm, -30 mm]` as the file means them; anything else is text. */
function plain(value: string): EntryValue {
  if (value === 'true' || value === 'false') return value === 'true';
  return value !== '' && String(Number(value)) === value && Number.isFinite(Number(value)) ? Number(value) : (writtenList(value) ?? value);
}
