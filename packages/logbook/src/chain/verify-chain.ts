import type { Entry } from '../entry.ts';
import { hashEntry, noPrevious } from './hash-entry.ts';

export type ChainCheck =
  | { readonly ok: true; readonly length: number; readonly hash: string }
  | { readonly ok: false; readonly number: number; readonly what: string };

/** Where a chain that has been checked before ends. */
export interface ChainEnd {
  readonly number: number;
  readonly hash: string;
  readonly machine?: string;
}

/**
 * Checks the book of one machine: numbers without a gap, each entry holding the hash of the one before, each hash true.
 *
 * @param entries in the order of their numbers
 * @param after   end of the part that has been checked already; from the start when not given
 * @returns       length and last hash, or the number of the first entry that is wrong, and what is wrong with it
 */
export function verifyChain(entries: Iterable<Entry>, after: ChainEnd = { number: 0, hash: noPrevious }): ChainCheck {
  let { number, hash, machine } = after;
  for (const entry of entries) {
    const what = problemOf(entry, number + 1, hash, machine);
    if (what !== undefined) return { ok: false, number: number + 1, what };
    number = entry.number;
    hash = entry.hash;
    machine = entry.machine;
  }
  return { ok: true, length: number, hash };
}

function problemOf(entry: Entry, number: number, previous: string, machine: string | undefined): string | undefined {
  if (entry.number !== number) return `entry ${number} is missing: ${entry.number} stands in its place`;
  if (machine !== undefined && entry.machine !== machine) return `it belongs to another machine: ${entry.machine}, not ${machine}`;
  if (entry.previous !== previous) return 'it does not hold the hash of the entry before it: one of the two was changed, or an entry is missing between them';
  return hashOrNothing(entry) === entry.hash ? undefined : 'its hash is not that of its content: it was changed after it was written';
}

function hashOrNothing(entry: Entry): string | undefined {
  try {
    return hashEntry(entry);
  } catch {
    return undefined;
  }
}
