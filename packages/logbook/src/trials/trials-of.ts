import type { Entry, EntryBody } from '../entry.ts';
import { inOrderOfWork, takenBack } from '../replay/moments.ts';

/** Readings that somebody balanced by. */
export type Trial = Entry & { readonly body: Extract<EntryBody, { readonly kind: 'balanced' }> };

/**
 * What was read to balance something, the latest first; what was taken back is left out.
 *
 * @param entries      of this machine, in any order
 * @param calculation  only those of one calculation
 */
export function trialsOf(entries: readonly Entry[], calculation?: string): readonly Trial[] {
  const back = takenBack(entries);
  const isWanted = (entry: Entry): entry is Trial => entry.body.kind === 'balanced' && !back.has(entry.number) && (calculation === undefined || entry.body.calculation === calculation);
  return inOrderOfWork(entries).filter(isWanted).toReversed();
}
