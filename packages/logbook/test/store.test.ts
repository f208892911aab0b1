import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { noPrevious, verifyChain } from '@rotorwright/logbook';
import { LogStoreError, openLogStore, type LogStore } from '@rotorwright/logbook/store';
import { newEntry, signed } from './entries.ts';

let folder = '';
let file = '';
const open: LogStore[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'logbook-'));
  file = join(folder, 'logbook.db');
});

afterEach(() => {
  for (const store of open.splice(0)) store.close();
  rmSync(folder, { recursive: true, force: true });
});

function openStore(path = file): LogStore {
  const store = openLogStore(path);
  open.push(store);
  return store;
}

function problemOf(work: () => unknown): string {
  try {
    work();
  } catch (trouble) {
    expect(trouble).toBeInstanceOf(LogStoreError);
    return (trouble as LogStoreError).problem;
  }
  return 'none';
}

describe('appending', () => {
  it('numbers from 1 and chains each entry to the one before', () => {
    const store = openStore();
    const first = store.append(signed(1, 'clutch/nut'));
    const second = store.append(signed(2, 'clutch/cap'));
    expect([first.number, first.previous, second.number, second.previous]).toEqual([1, noPrevious, 2, first.hash]);
    expect(verifyChain(store.entries('whimbrel'))).toEqual({ ok: true, length: 2, hash: second.hash });
  });

  it('keeps what it took after closing and opening again', () => {
    const entry = openStore().append(signed(1, 'clutch/nut', { torque: 1.1, locks: ['medium'], measured: { value: 2e-5, unit: 'm' }, note: 'größer\nals gedacht' }));
    open.splice(0).forEach((store) => store.close());
    expect(openStore().entries('whimbrel')).toEqual([entry]);
  });

  it('answers the same entry sent twice with the one in the book', () => {
    const store = openStore();
    const entry = store.append(signed(1, 'clutch/nut'));
    store.append(signed(2, 'clutch/cap'));
    expect(store.append(signed(1, 'clutch/nut'))).toEqual(entry);
    expect(store.entries('whimbrel')).toHaveLength(2);
  });

  it('refuses an id that is taken by other content, and writes nothing', () => {
    const store = openStore();
    store.append(signed(1, 'clutch/nut'));
    expect(problemOf(() => store.append(signed(1, 'clutch/cap')))).toBe('conflict');
    expect(problemOf(() => store.append({ ...signed(1, 'clutch/nut'), machine: 'sanderling' }))).toBe('conflict');
    expect(store.entries('whimbrel')).toHaveLength(1);
    expect(store.machines()).toEqual(['whimbrel']);
  });

  it('refuses what is not well formed and what corrects nothing', () => {
    const store = openStore();
    expect(problemOf(() => store.append({ ...signed(1, 'clutch/nut'), by: '' }))).toBe('refused');
    expect(problemOf(() => store.append(newEntry(2, { kind: 'corrected', entry: 1, reason: 'wrong step' })))).toBe('refused');
    expect(store.entries('whimbrel')).toEqual([]);
  });

  it('keeps one chain for each machine', () => {
    const store = openStore();
    store.append(signed(1, 'clutch/nut'));
    store.append({ ...signed(2, 'motor/mount'), machine: 'sanderling' });
    store.append(signed(3, 'clutch/cap'));
    expect(store.entries('whimbrel').map((entry) => entry.number)).toEqual([1, 2]);
    expect(store.entries('sanderling').map((entry) => entry.number)).toEqual([1]);
    expect(verifyChain(store.entries('sanderling')).ok).toBe(true);
  });

  it('gives only what is new after a number', () => {
    const store = openStore();
    for (const at of [1, 2, 3, 4]) store.append(signed(at, 'clutch/nut'));
    expect(store.entries('whimbrel', { after: 2 }).map((entry) => entry.number)).toEqual([3, 4]);
  });

  it('takes entries of two openings of one file in turn', () => {
    const [server, command] = [openStore(), openStore()];
    for (const at of [1, 2, 3, 4, 5, 6]) (at % 2 === 0 ? server : command).append(signed(at, 'clutch/nut'));
    expect(verifyChain(server.entries('whimbrel'))).toMatchObject({ ok: true, length: 6 });
  });
});

describe('what the database itself forbids', () => {
  it('changes, deletions and gaps', () => {
    const store = openStore();
    store.append(signed(1, 'clutch/nut'));
    const raw = new DatabaseSync(file);
    expect(() => raw.exec("UPDATE entries SET line = '{}'")).toThrow('never changed');
    expect(() => raw.exec('DELETE FROM entries')).toThrow('never deleted');
    expect(() => raw.exec("INSERT INTO entries VALUES ('whimbrel', 3, 'x', 'x', '{}')")).toThrow('without a gap');
    raw.close();
    expect(store.entries('whimbrel')).toHaveLength(1);
  });

  it('a tampered last entry is not chained to', () => {
    const store = openStore();
    store.append(signed(1, 'clutch/nut'));
    const raw = new DatabaseSync(file);
    raw.exec("DROP TRIGGER entries_never_change; UPDATE entries SET line = replace(line, 'Maren', 'Ilse')");
    raw.close();
    expect(problemOf(() => store.append(signed(2, 'clutch/cap')))).toBe('damaged');
    expect(verifyChain(store.entries('whimbrel'))).toMatchObject({ ok: false, number: 1 });
  });
});

describe('opening', () => {
  it('a file that is no database says so and leaves it alone', () => {
    writeFileSync(file, 'not a database, only words, but long enough to be looked at as one. '.repeat(20));
    const before = readFileSync(file);
    expect(problemOf(() => openStore())).toBe('damaged');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it('a database with a broken page says so', () => {
    const store = openStore();
    for (let at = 1; at <= 200; at += 1) store.append(signed(at, 'clutch/nut', { note: 'x'.repeat(200) }));
    open.splice(0).forEach((each) => each.close());
    const bytes = readFileSync(file);
    bytes.fill(0xa5, 4096, 4096 * 6);
    writeFileSync(file, bytes);
    expect(problemOf(() => openStore())).toBe('damaged');
  });

  it('a database of somebody else is not touched', () => {
    const raw = new DatabaseSync(file);
    raw.exec('CREATE TABLE songs (title TEXT)');
    raw.close();
    expect(problemOf(() => openStore())).toBe('foreign');
  });

  it('a logbook of a newer version is not touched', () => {
    openStore().close();
    const raw = new DatabaseSync(file);
    raw.exec('PRAGMA user_version = 99');
    raw.close();
    expect(problemOf(() => openStore())).toBe('newer');
  });

  it('a folder that is not there says so', () => {
    expect(problemOf(() => openStore(join(folder, 'nowhere', 'logbook.db')))).toBe('unreachable');
  });
});

describe('backups', () => {
  it('come back byte for byte', () => {
    const store = openStore();
    for (let at = 1; at <= 20; at += 1) store.append({ ...signed(at, 'clutch/nut', { note: `Nr. ${at} – µm` }), machine: at % 3 === 0 ? 'sanderling' : 'whimbrel' });
    const lines = [...store.exportLines()];
    const copy = openStore(join(folder, 'copy.db'));
    expect(copy.importLines(lines)).toBe(20);
    expect([...copy.exportLines()]).toEqual(lines);
    expect(copy.importLines(lines)).toBe(0);
  });

  it('extend a book that is behind, and never one that went another way', () => {
    const store = openStore();
    const copy = openStore(join(folder, 'copy.db'));
    store.append(signed(1, 'clutch/nut'));
    copy.importLines(store.exportLines());
    store.append(signed(2, 'clutch/cap'));
    expect(copy.importLines(store.exportLines())).toBe(1);
    store.append(signed(3, 'clutch/cap'));
    copy.append(signed(4, 'clutch/cap'));
    expect(problemOf(() => copy.importLines(store.exportLines()))).toBe('conflict');
    expect(copy.entries('whimbrel')).toHaveLength(3);
  });

  it('with a changed line are refused whole', () => {
    const store = openStore();
    for (const at of [1, 2, 3]) store.append(signed(at, 'clutch/nut'));
    const lines = [...store.exportLines()].map((line, at) => (at === 2 ? line.replace('Maren', 'Ilse') : line));
    const copy = openStore(join(folder, 'copy.db'));
    expect(problemOf(() => copy.importLines(lines))).toBe('refused');
    expect(copy.machines()).toEqual([]);
    expect(problemOf(() => copy.importLines(['{']))).toBe('refused');
  });
});
