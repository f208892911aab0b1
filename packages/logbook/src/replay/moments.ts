import type { Entry } from '../entry.ts';

/**
 * When an entry counts, ms since 1970: when it was done, as its writer says; at the latest when the store took it,
 * because nobody can have done it later than that, whatever his clock says.
 */
export function momentOf(entry: Entry): number {
  return Math.min(Date.parse(entry.at), Date.parse(entry.received));
}

/** Entries in the order in which things were done. Those that a bench without network sent late stand where they belong. */
export function inOrderOfWork(entries: readonly Entry[]): readonly Entry[] {
  return entries.toSorted((a, b) => momentOf(a) - momentOf(b) || a.number - b.number);
}

/**
 * The book as far as it goes at a moment: `replay(plan, entriesUpTo(entries, then), then)` is the state of that moment.
 *
 * @param moment up to and with which an entry counts
 */
export function entriesUpTo(entries: readonly Entry[], moment: Date): readonly Entry[] {
  return entries.filter((entry) => momentOf(entry) <= moment.getTime());
}

/**
 * Which entries are taken back, and by which. A correction can itself be corrected; then what it took back stands again.
 *
 * @returns number of the entry taken back → number of the correction
 */
export function takenBack(entries: readonly Entry[]): ReadonlyMap<number, number> {
  const back = new Map<number, number>();
  // A correction names an entry before it, so from the last to the first each is decided before it decides.
  for (const entry of entries.toSorted((a, b) => b.number - a.number)) {
    const { body } = entry;
    if (body.kind === 'corrected' && body.entry < entry.number && !back.has(entry.number)) back.set(body.entry, entry.number);
  }
  return back;
}
