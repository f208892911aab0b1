import type { Entry, NewEntry } from '../entry.ts';

/** Where the books of all machines are kept. One process or several may write at once. */
export interface LogStore {
  /**
   * Puts an entry at the end of its machine's book. When it returns, the entry is on the disk.
   * The same entry sent again is answered with the one in the book.
   *
   * @throws LogStoreError `conflict` when an entry with the same id and other content is in the book,
   *   `refused` when the entry is not well formed or corrects an entry that is not there, `damaged`, `busy`
   */
  append(entry: NewEntry): Entry;
  /** Entries of one machine in the order of their numbers; those after number `after` where given. */
  entries(machine: string, options?: { readonly after?: number }): readonly Entry[];
  /** Machines that have a book, in alphabetical order. */
  machines(): readonly string[];
  /** All books as lines of JSON, one entry each, machine by machine: a backup. */
  exportLines(): Iterable<string>;
  /**
   * Takes the lines of a backup in. What is here already is passed over; all is taken, or nothing.
   *
   * @returns how many entries were added
   * @throws LogStoreError `refused` when a line is no entry or a hash is wrong, `conflict` when a book here goes on differently
   */
  importLines(lines: Iterable<string>): number;
  close(): void;
}

export type LogStoreProblem = 'damaged' | 'foreign' | 'newer' | 'busy' | 'conflict' | 'refused' | 'unreachable';

/** Why the store did not do what it was asked. The message is a sentence for the user. */
export class LogStoreError extends Error {
  readonly problem: LogStoreProblem;
  readonly details: readonly string[];

  constructor(problem: LogStoreProblem, message: string, options: { readonly details?: readonly string[]; readonly cause?: unknown } = {}) {
    super(message, { cause: options.cause });
    this.name = 'LogStoreError';
    this.problem = problem;
    this.details = options.details ?? [];
  }
}
