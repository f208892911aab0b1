import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Entry, NewEntry } from '@rotorwright/logbook';
import { api, NetworkGone, Refused } from '../apps/web/src/data/api.ts';
import { courier, type News } from '../apps/web/src/data/courier.ts';
import { adoptFormer, givenUpWords, photoOf, type Kept, type Outbox } from '../apps/web/src/data/outbox.ts';
import { sizeWithin, type Photo } from '../apps/web/src/data/photo.ts';

const note = (number: number, machine = 'whimbrel'): NewEntry => ({ id: `entry-${number}`, machine, at: '2026-11-24T20:14:00Z', by: 'Maren', body: { kind: 'noted', note: `note ${number}` } });

/** A device in memory. */
function device(full = false): Outbox & { readonly lie: () => readonly Kept[] } {
  const records = new Map<number, Omit<Kept, 'key'>>();
  let key = 0;
  const lie = (): readonly Kept[] => [...records].map(([each, record]) => ({ key: each, ...record }));
  return {
    lie,
    read: async () => lie(),
    add: async (entries, photos) => {
      if (full) throw new DOMException('full', 'QuotaExceededError');
      for (const entry of entries) records.set((key += 1), { entry, ...photoOf(entry, photos) });
    },
    drop: async (keys) => {
      for (const each of keys) records.delete(each);
    },
    mark: async (kept, refused) => void records.set(kept.key, { entry: kept.entry, ...(kept.photo ? { photo: kept.photo } : {}), ...(refused ? { refused } : {}) }),
  };
}

/** A book that takes an entry once, and behaves as its tests want: `trouble` is asked before and after it writes. */
function book(trouble: (when: 'before' | 'after', entries: readonly NewEntry[]) => void = () => undefined) {
  const entries: NewEntry[] = [];
  return {
    entries,
    record: async (_: string, sent: readonly NewEntry[]): Promise<readonly Entry[]> => {
      await Promise.resolve();
      trouble('before', sent);
      for (const entry of sent) if (!entries.some(({ id }) => id === entry.id)) entries.push(entry);
      trouble('after', sent);
      return sent as readonly Entry[];
    },
  };
}

const silent: News = { recorded: async () => undefined, away: () => undefined, changed: () => undefined };
const gone = (): never => {
  throw new NetworkGone('gone');
};
const refuse = (code: string, status = 409): never => {
  throw new Refused(status, { error: { code, message: 'The step has changed.' } });
};

describe('a signature on its way into the book', () => {
  it('is recorded, and then lies on the device no more', async () => {
    const [here, there] = [device(), book()];
    expect(await courier(here, there.record, () => true, silent).sign([note(1)])).toBe('recorded');
    expect([there.entries, here.lie()]).toEqual([[note(1)], []]);
  });

  it('leaves the device only once the page knows that the book has it', async () => {
    const [here, there] = [device(), book()];
    const lay: number[] = [];
    await courier(here, there.record, () => true, { ...silent, recorded: async () => void lay.push(here.lie().length) }).sign([note(1)]);
    expect([lay, here.lie()]).toEqual([[1], []]);
  });

  it('is kept while the network is gone, and sent once when it is back, in the order in which it was made', async () => {
    let away = true;
    const [here, there] = [device(), book(() => void (away && gone()))];
    const carrier = courier(here, there.record, () => true, silent);
    for (const number of [1, 2, 3]) expect(await carrier.sign([note(number)])).toBe('kept');
    away = false;
    await carrier.deliver();
    await carrier.deliver();
    expect([there.entries, here.lie()]).toEqual([[note(1), note(2), note(3)], []]);
  });

  it('does not wait for an answer while the network is known to be gone', async () => {
    const here = device();
    const never = new Promise<never>(() => undefined);
    expect(await courier(here, () => never, () => false, silent).sign([note(1)])).toBe('kept');
    expect(here.lie().map(({ entry }) => entry)).toEqual([note(1)]);
  });

  it('whose answer gets lost is in the book once', async () => {
    let lost = 1;
    const [here, there] = [device(), book((when) => void (when === 'after' && (lost -= 1) >= 0 && gone()))];
    const carrier = courier(here, there.record, () => true, silent);
    expect(await carrier.sign([note(1)])).toBe('kept');
    await carrier.deliver();
    expect([there.entries, here.lie()]).toEqual([[note(1)], []]);
  });

  it('that the server refuses at once is told to the signer, and not left behind', async () => {
    const [here, there] = [device(), book(() => refuse('step/changed'))];
    await expect(courier(here, there.record, () => true, silent).sign([note(1)])).rejects.toMatchObject({ code: 'step/changed' });
    expect(here.lie()).toEqual([]);
  });

  it('waits while the server has trouble of its own', async () => {
    const [here, there] = [device(), book(() => refuse('logbook/busy', 500))];
    expect(await courier(here, there.record, () => true, silent).sign([note(1)])).toBe('kept');
    expect(here.lie()).toHaveLength(1);
  });

  it('on a device that keeps nothing counts only once the book has it', async () => {
    const there = book();
    expect(await courier(device(true), there.record, () => true, silent).sign([note(1)])).toBe('recorded');
    expect(there.entries).toEqual([note(1)]);
    await expect(courier(device(true), book(gone).record, () => true, silent).sign([note(2)])).rejects.toThrow(NetworkGone);
  });
});

describe('a photo', () => {
  const photo = { sha256: 'ab'.repeat(32), picture: new Blob(['picture'], { type: 'image/jpeg' }) };
  const named: NewEntry = { ...note(1), body: { kind: 'noted', note: 'Photo', photo: photo.sha256 } };

  it('lies beside the entry that names it, and goes along until the book has both', async () => {
    let away = true;
    const here = device();
    const sent: unknown[] = [];
    const record = async (_: string, entries: readonly NewEntry[], photos: readonly Photo[]): Promise<readonly Entry[]> => {
      if (away) gone();
      sent.push([entries, photos]);
      return entries as readonly Entry[];
    };
    const carrier = courier(here, record, () => true, silent);
    expect(await carrier.sign([named, note(2)], [photo])).toBe('kept');
    expect(here.lie().map((kept) => kept.photo)).toEqual([photo, undefined]);
    away = false;
    await carrier.deliver();
    expect([sent, here.lie()]).toEqual([[[[named, note(2)], [photo]]], []]);
  });

  it('that the server refuses stays here with its entry and the reason, and keeps none of the others back', async () => {
    const here = device();
    await here.add([named, note(2)], [photo]);
    const there = book();
    await courier(here, async (machine, entries, photos) => (photos.length > 0 ? refuse('photo/refused', 422) : there.record(machine, entries)), () => true, silent).deliver();
    expect(there.entries).toEqual([note(2)]);
    expect(here.lie()).toMatchObject([{ entry: named, photo, refused: { code: 'photo/refused' } }]);
  });

  // by hand: 4000 × 3000 to 1600 × 1200; a strip keeps one pixel; a small one stays
  it.each([[[4000, 3000], [1600, 1200]], [[3000, 4000], [1200, 1600]], [[8000, 1], [1600, 1]], [[640, 480], [640, 480]]] as const)('of %j pixels is kept in %j', ([width, height], [wide, high]) => {
    expect(sizeWithin({ width, height })).toEqual({ width: wide, height: high });
  });
});

describe('an answer', () => {
  afterEach(() => vi.unstubAllGlobals());
  const answered = (body: string, status: number) => vi.stubGlobal('fetch', async () => new Response(body, { status }));

  it.each([
    ['that breaks off after the book has written', '[{"id":"ent', 201],
    ['of a network that wants a login', '<html>Welcome</html>', 200],
    ['of a gateway', 'Bad gateway', 502],
    ['of a proxy that forbids', '<html>No</html>', 403],
  ])('%s refuses nothing: what was sent stays here', async (_, body, status) => {
    answered(body, status);
    await expect(api.record('whimbrel', [note(1)])).rejects.toThrow(NetworkGone);
  });

  it('of the server itself refuses, and says so with its code', async () => {
    answered(JSON.stringify({ error: { code: 'step/changed', message: 'Changed.' } }), 409);
    await expect(api.record('whimbrel', [note(1)])).rejects.toMatchObject({ code: 'step/changed', final: true });
    answered(JSON.stringify({ error: { code: 'logbook/busy', message: 'Busy.' } }), 500);
    await expect(api.record('whimbrel', [note(1)])).rejects.toMatchObject({ code: 'logbook/busy', final: false });
  });
});

describe('an entry that is refused after the network came back', () => {
  it('stays here with the reason, and keeps none of the others back', async () => {
    let away = true;
    const there = book((when, sent) => {
      if (away) gone();
      if (when === 'before' && sent.some(({ id }) => id === 'entry-2')) refuse('step/changed');
    });
    const here = device();
    const carrier = courier(here, there.record, () => true, silent);
    for (const number of [1, 2, 3]) await carrier.sign([note(number)]);
    away = false;
    await carrier.deliver();
    expect(there.entries).toEqual([note(1), note(3)]);
    expect(here.lie()).toMatchObject([{ entry: note(2), refused: { code: 'step/changed', message: 'The step has changed.' } }]);
    await carrier.deliver();
    expect(here.lie()).toHaveLength(1);
  });

  it('is told to the book in words when it is given up', () => {
    expect(givenUpWords(note(2), 'Signed again.')).toBe('Dropped on the device where it was made, because the book refused it: the note “note 2”, by Maren, 2026-11-24T20:14:00Z. Signed again.');
  });
});

it('law: however often the network breaks, before or after the book has written, each entry is in the book exactly once', async () => {
  await fc.assert(fc.asyncProperty(fc.array(fc.constantFrom('ok', 'before', 'after'), { maxLength: 40 }), fc.integer({ min: 1, max: 60 }), async (breaks, count) => {
    const plan = [...breaks];
    const there = book((when) => {
      const next = plan[0];
      if (when === 'after' || next === 'before') plan.shift();
      if (next === when) gone();
    });
    const here = device();
    const carrier = courier(here, there.record, () => true, silent);
    const entries = Array.from({ length: count }, (_, index) => note(index, index % 3 === 0 ? 'turnstone' : 'whimbrel'));
    await Promise.all(entries.map((entry) => carrier.sign([entry])));
    while (here.lie().length > 0) await carrier.deliver();
    for (const machine of ['turnstone', 'whimbrel']) expect(there.entries.filter((entry) => entry.machine === machine)).toEqual(entries.filter((entry) => entry.machine === machine));
  }));
});

describe('entries that an earlier version left waiting', () => {
  const storage = (kept: string): Storage => {
    const map = new Map([['rotorwright.outbox', kept]]);
    return { getItem: (key: string) => map.get(key) ?? null, removeItem: (key: string) => map.delete(key) } as unknown as Storage;
  };
  it('move into the database, and are there once', async () => {
    const [here, former] = [device(), storage(JSON.stringify([note(1), 7, null, {}]))];
    await adoptFormer(here, former);
    await adoptFormer(here, former);
    expect(here.lie().map(({ entry }) => entry)).toEqual([note(1)]);
  });
  it('are left where they are when the device is full', async () => {
    const former = storage(JSON.stringify([note(1)]));
    await expect(adoptFormer(device(true), former)).rejects.toThrow();
    expect(former.getItem('rotorwright.outbox')).not.toBeNull();
  });
});
