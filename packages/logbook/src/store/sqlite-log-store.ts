import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import { canonicalJson } from '@rotorwright/build';
import { entryLine, hashEntry, noPrevious, sealEntry } from '../chain/index.ts';
import { readEntry, readNewEntry } from '../check/index.ts';
import type { Entry, NewEntry } from '../entry.ts';
import { inTransaction, openDatabase, told } from './database.ts';
import { LogStoreError, type LogStore } from './log-store.ts';

/**
 * Opens the store in a file; makes it where there is none.
 *
 * @param file path of the database, or `:memory:`
 * @param now  the clock, for tests
 * @throws LogStoreError when the file is damaged, no logbook, or written by a newer version
 */
export function openLogStore(file: string, now: () => Date = () => new Date()): LogStore {
  return new SqliteLogStore(file, now);
}

class SqliteLogStore implements LogStore {
  readonly #file: string;
  readonly #now: () => Date;
  readonly #database: DatabaseSyncInstance;

  constructor(file: string, now: () => Date) {
    this.#file = file;
    this.#now = now;
    this.#database = openDatabase(file);
  }

  append(given: NewEntry): Entry {
    const read = readNewEntry(given);
    if (!read.ok) throw new LogStoreError('refused', `The entry is not well formed: ${read.problems.join('; ')}.`, { details: read.problems });
    return this.#write(() => {
      const known = this.#byId(read.entry.id);
      if (known !== undefined) return sameOrRefused(known, read.entry);
      const last = this.#last(read.entry.machine);
      refuseEmptyCorrection(read.entry, last?.number ?? 0);
      const sealed = sealEntry(read.entry, (last?.number ?? 0) + 1, last?.hash ?? noPrevious, this.#now().toISOString());
      this.#insert(sealed);
      return sealed;
    });
  }

  entries(machine: string, options: { readonly after?: number } = {}): readonly Entry[] {
    return told(this.#file, () =>
      this.#database
        .prepare('SELECT line FROM entries WHERE machine = ? AND number > ? ORDER BY number')
        .all(machine, options.after ?? 0)
        .map((row) => this.#parse(row)),
    );
  }

  machines(): readonly string[] {
    return told(this.#file, () =>
      this.#database.prepare('SELECT DISTINCT machine FROM entries ORDER BY machine').all().map((row) => textOf(row, 'machine')),
    );
  }

  *exportLines(): Iterable<string> {
    for (const machine of this.machines()) for (const entry of this.entries(machine)) yield entryLine(entry);
  }

  importLines(lines: Iterable<string>): number {
    return this.#write(() => {
      let added = 0;
      let at = 0;
      for (const line of lines) {
        at += 1;
        if (line.trim() !== '') added += this.#import(line, at);
      }
      return added;
    });
  }

  close(): void {
    if (!this.#database.isOpen) return;
    // What stands in the write-ahead log moves into the file, so that a copy of the file alone is whole. Another process that is reading only delays it.
    this.#database.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get();
    this.#database.close();
  }

  #import(line: string, at: number): number {
    const read = readEntry(parsedOrNothing(line));
    if (!read.ok) throw new LogStoreError('refused', `Line ${at} of the backup is not taken: ${read.problems.join('; ')}.`, { details: read.problems });
    const { entry } = read;
    const known = this.#byId(entry.id);
    if (known !== undefined) {
      if (known.hash === entry.hash) return 0;
      throw new LogStoreError('conflict', `Line ${at} of the backup: entry ${entry.id} is in the logbook with other content.`);
    }
    const last = this.#last(entry.machine);
    if (entry.number !== (last?.number ?? 0) + 1 || entry.previous !== (last?.hash ?? noPrevious)) {
      throw new LogStoreError('conflict', `Line ${at} of the backup: entry ${entry.number} of ${entry.machine} does not follow entry ${last?.number ?? 0}, the last one here.`);
    }
    this.#insert(entry);
    return 1;
  }

  #write<T>(work: () => T): T {
    return told(this.#file, () => inTransaction(this.#database, work));
  }

  #insert(entry: Entry): void {
    this.#database
      .prepare('INSERT INTO entries (machine, number, id, hash, line) VALUES (?, ?, ?, ?, ?)')
      .run(entry.machine, entry.number, entry.id, entry.hash, entryLine(entry));
  }

  #byId(id: string): Entry | undefined {
    const row = this.#database.prepare('SELECT line FROM entries WHERE id = ?').get(id);
    return row === undefined ? undefined : this.#parse(row);
  }

  /** The end of a book, checked: nothing is ever chained to an entry that was tampered with. */
  #last(machine: string): Entry | undefined {
    const row = this.#database.prepare('SELECT line FROM entries WHERE machine = ? ORDER BY number DESC LIMIT 1').get(machine);
    if (row === undefined) return undefined;
    const last = this.#parse(row);
    if (hashEntry(last) === last.hash) return last;
    throw new LogStoreError('damaged', `Entry ${last.number} of ${machine} was changed after it was written. Restore a backup before signing on.`);
  }

  #parse(row: unknown): Entry {
    const entry = parsedOrNothing(textOf(row, 'line'));
    if (entry === undefined) throw new LogStoreError('damaged', `The logbook ${this.#file} holds an entry that cannot be read. Restore a backup.`);
    return entry as Entry;
  }
}

function sameOrRefused(known: Entry, sent: NewEntry): Entry {
  const { id, machine, at, by, body } = known;
  if (canonicalJson({ id, machine, at, by, body }) === canonicalJson(sent)) return known;
  throw new LogStoreError('conflict', `An entry with the id ${id} is in the book of ${machine} already, with other content (number ${known.number}).`);
}

function refuseEmptyCorrection(entry: NewEntry, length: number): void {
  if (entry.body.kind !== 'corrected' || entry.body.entry <= length) return;
  throw new LogStoreError('refused', `There is no entry ${entry.body.entry} to correct: the book of ${entry.machine} has ${length}.`);
}

function textOf(row: unknown, column: string): string {
  return String((row as Readonly<Record<string, unknown>>)[column]);
}

function parsedOrNothing(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
