import type { EntryPath, Place } from '../model/place.ts';

/**
 * error    the entry cannot be used, or the machine contradicts itself
 * warning  usable, but something would go wrong in the air or on the bench
 * note     worth knowing; a matter of taste or of more data
 */
export type Severity = 'error' | 'warning' | 'note';

/** A fact about a machine or its file. Codes are stable; `words.ts` turns them into sentences. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly path: EntryPath;
  /** Absent only where nothing in the file is to blame. */
  readonly place?: Place;
  /** The offending text as it stands in the file. */
  readonly given?: string;
  /** Whatever the sentence for this code needs: names, numbers with units, the nearest known word. */
  readonly values: Readonly<Record<string, string | number | readonly string[]>>;
}
