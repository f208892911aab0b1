import type { Entry, NewEntry } from '@rotorwright/logbook';
import { Refused } from './api.ts';
import type { Kept, Outbox, Refusal } from './outbox.ts';
import type { Photo } from './photo.ts';

/** What the courier tells of while it works. */
export interface News {
  /** The book has taken entries of a machine. They leave the device only once it is fulfilled: until then nothing else may know of them. */
  readonly recorded: (machine: string, entries: readonly Entry[]) => Promise<void>;
  /** They could not be sent now; they stay here. */
  readonly away: (error: unknown) => void;
  /** What lies here has changed. */
  readonly changed: () => void;
}

/** Carries entries from this device into the book. */
export interface Courier {
  /**
   * Puts entries on the device, then into the book, with the pictures that they name.
   *
   * @returns 'recorded' when the book has them, 'kept' when they wait here for the network
   * @throws Refused when the server will not have them: then they are not kept either
   * @throws DOMException, NetworkGone when they can be put neither here nor there
   */
  readonly sign: (entries: readonly NewEntry[], photos?: readonly Photo[]) => Promise<'recorded' | 'kept'>;
  /** Sends what waits, machine by machine, in the order in which it was made. Calls while it is at work lead to one more round. */
  readonly deliver: () => Promise<void>;
}

/** The server takes 200 entries and 64 KiB at once; a note may be long. */
const mostAtOnce = 20;

/** How long a signer waits for the book before he is told that the entry is kept here, ms. */
const patience = 5000;

/**
 * @param record  sends photos, then the entries of one machine that name them; all entries are taken, or none
 * @param waits   whether a sender should wait for the answer: not while the network is known to be gone
 */
export function courier(outbox: Outbox, record: (machine: string, entries: readonly NewEntry[], photos: readonly Photo[]) => Promise<readonly Entry[]>, waits: () => boolean, news: News): Courier {
  let round: Promise<void> | undefined;
  let again = false;

  const deliver = async (): Promise<void> => {
    again = true;
    round ??= (async () => {
      try {
        while (again) {
          again = false;
          await deliverOnce();
        }
      } catch (error) {
        news.away(error);
      } finally {
        round = undefined;
        news.changed();
      }
    })();
    return round;
  };

  async function deliverOnce(): Promise<void> {
    const waiting = (await outbox.read()).filter(({ refused }) => refused === undefined);
    for (const machine of new Set(waiting.map(({ entry }) => entry.machine))) {
      const theirs = waiting.filter(({ entry }) => entry.machine === machine);
      for (let from = 0; from < theirs.length; from += mostAtOnce) await send(machine, theirs.slice(from, from + mostAtOnce));
    }
  }

  /** One that the server refuses must not keep the others back: they are sent one by one then. */
  async function send(machine: string, kept: readonly Kept[]): Promise<void> {
    try {
      const entries = await record(machine, kept.map(({ entry }) => entry), kept.flatMap(({ photo }) => photo ?? []));
      await news.recorded(machine, entries);
      await outbox.drop(kept.map(({ key }) => key));
    } catch (error) {
      if (!(error instanceof Refused) || !error.final) throw error;
      const [only] = kept;
      if (kept.length > 1) for (const each of kept) await send(machine, [each]);
      else if (only) await outbox.mark(only, refusalOf(error));
    }
  }

  return {
    deliver,
    sign: async (entries, photos = []) => {
      const machine = entries[0]?.machine;
      if (machine === undefined) return 'recorded';
      try {
        await outbox.add(entries, photos);
      } catch {
        // A browser that keeps nothing can still hand on: it counts as signed only once the book has it.
        await news.recorded(machine, await record(machine, entries, photos));
        return 'recorded';
      }
      news.changed();
      const delivered = deliver();
      if (!waits()) return 'kept';
      // The entry is on the disk already: a slow network is no reason to keep the signer waiting.
      await Promise.race([delivered, new Promise((resolve) => setTimeout(resolve, patience))]);
      const ids = new Set(entries.map(({ id }) => id));
      const left = (await outbox.read()).filter(({ entry }) => ids.has(entry.id));
      const refused = left.find((kept) => kept.refused !== undefined)?.refused;
      if (refused === undefined) return left.length === 0 ? 'recorded' : 'kept';
      // Whoever signs stands here and is told: nothing is left behind.
      await outbox.drop(left.map(({ key }) => key));
      news.changed();
      throw new Refused(422, { error: refused });
    },
  };
}

const refusalOf = ({ code, message, details }: Refused): Refusal => ({ code, message, details });
