import type { Entry, NewEntry } from '@rotorwright/logbook';
import { useEffect, useMemo, useRef, useState } from 'react';
import { api } from './api.ts';
import { courier, type Courier } from './courier.ts';
import type { Device } from './device.ts';
import { adoptFormer, outboxOn, type Kept, type Outbox } from './outbox.ts';
import type { Photo } from './photo.ts';

export interface OutboxHere {
  /** Undefined until the device has been read. */
  readonly kept: readonly Kept[] | undefined;
  readonly courier: Courier;
  readonly outbox: Outbox;
  /** Reads again what lies here, and has the other tabs do so. */
  readonly changed: () => void;
}

/** Between two tries to send what waits, ms; a network that comes back is noticed at once. */
const pause = 10_000;

/**
 * What waits on this device, and who carries it into the book.
 *
 * @param recorded   told what the book has taken
 * @param away       told why nothing can be sent
 */
export function useCourier(device: Device, reachable: boolean, recorded: (machine: string, entries: readonly Entry[]) => Promise<void>, away: (error: unknown) => void): OutboxHere {
  const [kept, setKept] = useState<readonly Kept[]>();
  const there = useRef(reachable);
  there.current = reachable;
  const here = useMemo(() => {
    const outbox = outboxOn(device);
    const tabs = new BroadcastChannel('rotorwright.outbox');
    // A browser that keeps nothing has nothing waiting.
    const look = (): void => void outbox.read().then(setKept, () => setKept([]));
    const changed = (): void => {
      look();
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- only a window has an origin to name
      tabs.postMessage('changed');
    };
    tabs.addEventListener('message', look);
    const record = async (machine: string, entries: readonly NewEntry[], photos: readonly Photo[]): Promise<readonly Entry[]> => {
      for (const photo of photos) await api.keepPhoto(photo);
      return api.record(machine, entries);
    };
    return { outbox, changed, look, courier: courier(outbox, record, () => there.current, { recorded, away, changed }) };
  }, [device, recorded, away]);

  useEffect(() => void adoptFormer(here.outbox, localStorage).catch(() => undefined).then(here.look), [here]);

  const waits = kept?.some(({ refused }) => refused === undefined) ?? false;
  useEffect(() => {
    if (!waits) return undefined;
    if (reachable) void here.courier.deliver();
    const again = setInterval(() => void here.courier.deliver(), pause);
    return () => clearInterval(again);
  }, [here, waits, reachable]);

  return { kept, courier: here.courier, outbox: here.outbox, changed: here.changed };
}
