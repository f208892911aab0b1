import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, hashEntry, noPrevious, readEntry, sealEntry, verifyChain, type Entry } from '@rotorwright/logbook';
import { newEntry, signed } from './entries.ts';

function book(length: number): Entry[] {
  const entries: Entry[] = [];
  for (let number = 1; number <= length; number += 1) {
    const note = number % 3 === 0 ? newEntry(number, { kind: 'noted', note: `note ${number}` }) : signed(number, 'clutch/nut', { torque: 1.1, locks: ['medium'], measured: { value: 2e-5, unit: 'm' } });
    entries.push(sealEntry(note, number, entries.at(-1)?.hash ?? noPrevious, '2026-03-02T08:00:00.000Z'));
  }
  return entries;
}

describe('the hash of an entry', () => {
  it('is SHA-256 over the canonical JSON of all the rest (independent route: the hash of the runtime)', () => {
    for (const entry of book(3)) {
      const { hash, ...rest } = entry;
      expect(createHash('sha256').update(canonicalJson(rest), 'utf8').digest('hex')).toBe(hash);
    }
  });

  it('does not depend on the order in which the members were written', () => {
    const [entry] = book(1) as [Entry];
    const reversed = Object.fromEntries(Object.entries(entry).toReversed()) as unknown as Entry;
    expect(hashEntry(reversed)).toBe(entry.hash);
  });

  it('survives the way through JSON, with members that are undefined left out', () => {
    const entry = sealEntry(signed(1, 'clutch/nut', { note: undefined }), 1, noPrevious, '2026-03-02T08:00:00.000Z');
    expect(JSON.parse(JSON.stringify(entry))).toEqual(entry);
    expect(hashEntry(JSON.parse(JSON.stringify(entry)) as Entry)).toBe(entry.hash);
  });

  it('a number below 1 is refused', () => {
    expect(() => sealEntry(signed(1, 'clutch/nut'), 0, noPrevious, '2026-03-02T08:00:00.000Z')).toThrow(RangeError);
  });
});

/** Paths to every value inside an entry. */
function pathsOf(value: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, member]) => pathsOf(member, [...path, key]));
}

function changed(value: unknown): unknown {
  if (typeof value === 'number') return value + 1;
  return typeof value === 'string' ? `${value.slice(0, -1)}${value.endsWith('1') ? '2' : '1'}` : null;
}

function tampered(entry: Entry, path: readonly string[]): Entry {
  const copy = structuredClone(entry) as unknown as Record<string, unknown>;
  let holder = copy;
  for (const key of path.slice(0, -1)) holder = holder[key] as Record<string, unknown>;
  const last = path.at(-1) ?? '';
  holder[last] = changed(holder[last]);
  return copy as unknown as Entry;
}

describe('a chain', () => {
  it('holds as written, and in two parts', () => {
    const entries = book(7);
    const last = entries.at(-1) as Entry;
    expect(verifyChain(entries)).toEqual({ ok: true, length: 7, hash: last.hash });
    const half = entries[3] as Entry;
    expect(verifyChain(entries.slice(4), half)).toEqual({ ok: true, length: 7, hash: last.hash });
    expect(verifyChain([])).toEqual({ ok: true, length: 0, hash: noPrevious });
  });

  it('breaks when any field of any entry is changed', () => {
    const entries = book(6);
    let tried = 0;
    for (const [at, entry] of entries.entries()) {
      for (const path of pathsOf(entry)) {
        const check = verifyChain(entries.with(at, tampered(entry, path)));
        expect(check.ok, `${at + 1} ${path.join('.')}`).toBe(false);
        tried += 1;
      }
    }
    expect(tried).toBeGreaterThan(60);
  });

  it('breaks at the place where an entry was taken out, doubled or swapped', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 12 }), fc.nat(), (length, seed) => {
        const entries = book(length);
        const at = seed % (length - 1);
        const [first, second] = [entries[at] as Entry, entries[at + 1] as Entry];
        expect(verifyChain(entries.toSpliced(at, 1))).toMatchObject({ ok: false, number: at + 1 });
        expect(verifyChain(entries.toSpliced(at, 0, first))).toMatchObject({ ok: false, number: at + 2 });
        expect(verifyChain(entries.toSpliced(at, 2, second, first))).toMatchObject({ ok: false, number: at + 1 });
      }),
      { numRuns: 30 },
    );
  });

  it('breaks when an entry is changed and sealed anew, at the one after it', () => {
    const entries = book(4);
    const second = entries[1] as Entry;
    const forged = sealEntry({ ...second, by: 'Ilse' }, 2, second.previous, second.received);
    expect(verifyChain(entries.with(1, forged))).toMatchObject({ ok: false, number: 3 });
  });

  it('does not take an entry of another machine', () => {
    const [first] = book(1) as [Entry];
    const stranger = sealEntry({ ...signed(2, 'motor/mount'), machine: 'sanderling' }, 2, first.hash, '2026-03-02T08:00:00.000Z');
    expect(verifyChain([first, stranger])).toMatchObject({ ok: false, number: 2 });
  });
});

describe('reading a sealed entry', () => {
  it('takes what was sealed and refuses each tampered field', () => {
    const [entry] = book(1) as [Entry];
    expect(readEntry(JSON.parse(JSON.stringify(entry)))).toEqual({ ok: true, entry });
    for (const path of pathsOf(entry)) expect(readEntry(tampered(entry, path)).ok, path.join('.')).toBe(false);
  });
});
