import type { EntryBody, NewEntry } from '@rotorwright/logbook';
import type { Device } from './device.ts';
import type { Photo } from './photo.ts';

/** Why the server does not take an entry. */
export interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly details: readonly string[];
}

/** An entry that was made here and is not known to be in the book. */
export interface Kept {
  /** Its place in the order in which entries were made here. */
  readonly key: number;
  readonly entry: NewEntry;
  /** The picture that the entry names; handed over before it. */
  readonly photo?: Photo;
  /** It will not be sent again by itself: somebody must put it right. */
  readonly refused?: Refusal;
}

/** Entries on this device. Their ids make sending one twice harmless. */
export interface Outbox {
  /** In the order in which they were made. */
  readonly read: () => Promise<readonly Kept[]>;
  /** When it is fulfilled, they and the pictures that they name outlast the browser. @throws DOMException when they cannot be kept */
  readonly add: (entries: readonly NewEntry[], photos: readonly Photo[]) => Promise<void>;
  readonly drop: (keys: readonly number[]) => Promise<void>;
  /** Says of an entry why it is refused; without a reason, that it is to be sent again. */
  readonly mark: (kept: Kept, refused: Refusal | undefined) => Promise<void>;
}

type Record = Omit<Kept, 'key'>;

/** What lies beside an entry: the picture that it names, if it names one. */
export function photoOf({ body }: NewEntry, photos: readonly Photo[]): { readonly photo?: Photo } {
  const photo = 'photo' in body ? photos.find(({ sha256 }) => sha256 === body.photo) : undefined;
  return photo ? { photo } : {};
}

export function outboxOn(device: Device): Outbox {
  return {
    read: async () => {
      const kept: Kept[] = [];
      await device.transact('outbox', 'readonly', (store) => {
        const request = store.openCursor();
        request.addEventListener('success', () => {
          const cursor = request.result;
          if (!cursor) return;
          kept.push({ key: cursor.key as number, ...(cursor.value as Record) });
          cursor.continue();
        });
        return undefined;
      });
      return kept;
    },
    add: (entries, photos) => device.transact('outbox', 'readwrite', (store) => {
      for (const entry of entries) store.add({ entry, ...photoOf(entry, photos) } satisfies Record);
      return undefined;
    }),
    drop: (keys) => device.transact('outbox', 'readwrite', (store) => {
      for (const key of keys) store.delete(key);
      return undefined;
    }),
    mark: async ({ key, entry, photo }, refused) => void (await device.transact('outbox', 'readwrite', (store) => store.put({ entry, ...(photo ? { photo } : {}), ...(refused ? { refused } : {}) } satisfies Record, key))),
  };
}

/** Where entries waited before they moved into the database. */
const formerKey = 'rotorwright.outbox';

/** Moves what an earlier version of these pages left waiting. */
export async function adoptFormer(outbox: Outbox, storage: Storage): Promise<void> {
  const text = storage.getItem(formerKey);
  if (text === null) return;
  const former: unknown = JSON.parse(text);
  if (Array.isArray(former)) await outbox.add(former.filter((entry): entry is NewEntry => typeof entry === 'object' && entry !== null && 'id' in entry && 'machine' in entry && 'body' in entry), []);
  storage.removeItem(formerKey);
}

/** What the book is told of an entry that is given up: what it was, and why. */
export function givenUpWords({ at, by, body }: NewEntry, reason: string): string {
  return `Dropped on the device where it was made, because the book refused it: ${entryWords(body)}, by ${by}, ${at}. ${reason}`;
}

function entryWords(body: EntryBody): string {
  switch (body.kind) {
    case 'signed': return `the signature of ${body.step}`;
    case 'looked': return `the second look at ${body.step}, found ${body.found}`;
    case 'noted': return `the note “${body.note.slice(0, 300)}”`;
    case 'counted': return `the count of bag ${body.bag}`;
    case 'balanced': return `the readings of ${body.calculation}`;
    case 'heard': return `the recording by ${body.sensor}`;
    case 'opened': return `the opening of ${body.things.slice(0, 10).join(', ')}`;
    case 'corrected': return `the correction of entry ${body.entry}`;
  }
}
