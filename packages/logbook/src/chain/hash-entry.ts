import { canonicalJson, sha256Hex } from '@rotorwright/build';
import type { Entry, NewEntry } from '../entry.ts';

/** What the first entry of a book holds in place of a hash of the one before. */
export const noPrevious = '0'.repeat(64);

/**
 * Hash of an entry: SHA-256 over the canonical JSON of everything in it but the hash itself.
 *
 * @returns 64 hex digits
 * @throws TypeError when the entry holds what JSON cannot say
 */
export function hashEntry(entry: Omit<Entry, 'hash'>): string {
  const { hash: _, ...rest } = entry as Entry;
  return sha256Hex(canonicalJson(rest));
}

/**
 * Gives an entry its place in the book.
 *
 * @param entry    as written at the bench
 * @param number   1 for the first of a machine
 * @param previous hash of the entry before, or `noPrevious`
 * @param received when the store took it, ISO 8601 with zone Z
 * @throws RangeError when the number is no positive whole number
 * @throws TypeError  when the entry holds what JSON cannot say
 */
export function sealEntry(entry: NewEntry, number: number, previous: string, received: string): Entry {
  if (!Number.isSafeInteger(number) || number < 1) throw new RangeError(`sealEntry: number must be a whole number from 1, got ${number}`);
  const { id, machine, at, by, body } = entry;
  // Through the text, so that the sealed entry is what anybody will read back: no undefined members, keys in one order.
  const unsealed = JSON.parse(canonicalJson({ id, machine, at, by, body, number, received, previous })) as Omit<Entry, 'hash'>;
  return { ...unsealed, hash: hashEntry(unsealed) };
}

/** The entry as one line of a backup: canonical JSON. */
export function entryLine(entry: Entry): string {
  return canonicalJson(entry);
}
