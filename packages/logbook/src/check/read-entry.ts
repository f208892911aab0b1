import { hashEntry } from '../chain/index.ts';
import type { Entry } from '../entry.ts';
import { readNewEntry } from './read-new-entry.ts';
import { isRecord, sha256 } from './rules.ts';

export type ReadSealedEntry = { readonly ok: true; readonly entry: Entry } | { readonly ok: false; readonly problems: readonly string[] };

/**
 * Reads an entry that has its place in a book already, out of a backup for instance, and checks its hash.
 *
 * @param json parsed JSON, of any origin
 */
export function readEntry(json: unknown): ReadSealedEntry {
  if (!isRecord(json)) return { ok: false, problems: ['an entry must be an object'] };
  const { number, received, previous, hash, ...written } = json;
  const read = readNewEntry(written);
  const problems = [
    ...(read.ok ? [] : read.problems),
    ...(Number.isSafeInteger(number) && (number as number) >= 1 ? [] : ['number must be a whole number from 1']),
    ...(typeof received === 'string' && Number.isFinite(Date.parse(received)) ? [] : ['received must be a moment']),
    ...(isHash(previous) ? [] : ['previous must be a hash of 64 hex digits']),
    ...(isHash(hash) ? [] : ['hash must be a hash of 64 hex digits']),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const entry = json as unknown as Entry;
  return hashEntry(entry) === entry.hash ? { ok: true, entry } : { ok: false, problems: ['the hash is not that of its content: it was changed after it was written'] };
}

function isHash(value: unknown): boolean {
  return typeof value === 'string' && sha256.test(value);
}
