import { DatabaseSync, type DatabaseSyncInstance } from '@photostructure/sqlite';
import { LogStoreError } from './log-store.ts';

/** 'RwLb' in ASCII: tells our file from any other database. */
const applicationId = 0x52774c62;

/** Each brings the schema from its index to the next version. Never edited once released. */
const migrations: readonly string[] = [
  `CREATE TABLE entries (
     machine TEXT NOT NULL,
     number  INTEGER NOT NULL CHECK (number >= 1),
     id      TEXT NOT NULL UNIQUE,
     hash    TEXT NOT NULL,
     line    TEXT NOT NULL,
     PRIMARY KEY (machine, number)
   ) STRICT, WITHOUT ROWID;
   CREATE TRIGGER entries_never_change BEFORE UPDATE ON entries
   BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;
   CREATE TRIGGER entries_never_go BEFORE DELETE ON entries
   BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END;
   CREATE TRIGGER entries_follow BEFORE INSERT ON entries
   WHEN NEW.number <> 1 + coalesce((SELECT max(number) FROM entries WHERE machine = NEW.machine), 0)
   BEGIN SELECT RAISE(ABORT, 'entries are numbered without a gap'); END;`,
];

/**
 * Opens the database file, making it where there is none, and brings its schema up to date.
 *
 * @param file path, or `:memory:`
 * @throws LogStoreError when the file is damaged, is not ours, or was written by a newer version
 */
export function openDatabase(file: string): DatabaseSyncInstance {
  return told(file, () => {
    const database = new DatabaseSync(file);
    try {
      database.exec('PRAGMA busy_timeout = 10000');
      refuseForeign(database, file);
      // WAL lets readers read while one writes; FULL puts each commit on the disk before it is acknowledged.
      database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF');
      migrate(database, file);
      const check = pragma(database, 'PRAGMA quick_check(1)', 'quick_check');
      if (check !== 'ok') throw damaged(file, check);
      return database;
    } catch (trouble) {
      database.close();
      throw trouble;
    }
  });
}

/** Runs work that either happens wholly or not at all; other writers wait. */
export function inTransaction<T>(database: DatabaseSyncInstance, work: () => T): T {
  database.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    database.exec('COMMIT');
    return result;
  } catch (trouble) {
    // A failed COMMIT may have ended the transaction already.
    if (database.isTransaction) database.exec('ROLLBACK');
    throw trouble;
  }
}

/** Turns what the database says into a sentence for the user; what is no trouble of the database passes through. */
export function told<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (trouble) {
    if (trouble instanceof LogStoreError || !(trouble instanceof Error)) throw trouble;
    const says = trouble.message;
    if (/malformed|not a database|corrupt|disk image/iu.test(says)) throw damaged(file, says, trouble);
    if (/locked|busy/iu.test(says)) throw new LogStoreError('busy', `The logbook ${file} is in use by another process that does not let go. Try again.`, { cause: trouble });
    if (/unable to open|readonly|disk I\/O|full|permission|EACCES|ENOENT/iu.test(says)) {
      throw new LogStoreError('unreachable', `The logbook ${file} cannot be opened or written: ${says}.`, { cause: trouble });
    }
    throw trouble;
  }
}

function refuseForeign(database: DatabaseSyncInstance, file: string): void {
  // Tables first: they and the mark of ownership come in one transaction, so that who sees the tables of a book that another process is just making sees its mark too.
  const tables = pragma(database, 'SELECT count(*) AS tables FROM sqlite_schema', 'tables');
  const owner = pragma(database, 'PRAGMA application_id', 'application_id');
  if (tables !== 0 && owner !== applicationId) throw new LogStoreError('foreign', `The file ${file} is a database, but no logbook. Nothing was changed in it.`);
}

function migrate(database: DatabaseSyncInstance, file: string): void {
  const versionOf = () => Number(pragma(database, 'PRAGMA user_version', 'user_version'));
  if (versionOf() === migrations.length) return;
  inTransaction(database, () => {
    const version = versionOf();
    if (version > migrations.length) {
      throw new LogStoreError('newer', `The logbook ${file} was written by a newer version (schema ${version}, this one knows ${migrations.length}). Update the program.`);
    }
    for (const step of migrations.slice(version)) database.exec(step);
    database.exec(`PRAGMA application_id = ${applicationId}; PRAGMA user_version = ${migrations.length}`);
  });
}

function pragma(database: DatabaseSyncInstance, query: string, column: string): unknown {
  return (database.prepare(query).get() as Readonly<Record<string, unknown>>)[column];
}

function damaged(file: string, says: unknown, cause?: unknown): LogStoreError {
  return new LogStoreError('damaged', `The logbook ${file} is damaged (${String(says)}). Move it aside and restore a backup; nothing was changed in it.`, { cause });
}
