import type { EntryPath } from '../model/place.ts';
import { removeEntry, setEntry, type EditResult } from './set-entry.ts';

/** One entry to be written, or taken out when there is no value. */
export interface Edit {
  readonly path: EntryPath;
  readonly value?: string;
}

/**
 * Writes several entries into a machine file, one after the other.
 *
 * @returns the new text, or why the first one that fails cannot be done
 * @example applyEdits('machine: {mass: 5 kg}', [{ path: 'machine.mass', value: '6 kg' }]) // { text: 'machine: {mass: 6 kg}' }
 */
export function applyEdits(text: string, edits: readonly Edit[]): EditResult {
  let result: EditResult = { text };
  for (const { path, value } of edits) {
    if (!('text' in result)) return result;
    result = value === undefined ? removeEntry(result.text, path) : setEntry(result.text, path, plain(value));
  }
  return result;
}

/** `15` and `true` as the file means them; anything else is text. */
function plain(value: string): string | number | boolean {
  if (value === 'true' || value === 'false') return value === 'true';
  return value !== '' && String(Number(value)) === value && Number.isFinite(Number(value)) ? Number(value) : value;
}
