import type { MachineOnBoard } from '@rotorwright/logbook';
import type { Device } from './device.ts';

/** The board as the server gave it last. */
export interface Snapshot {
  readonly boards: readonly MachineOnBoard[];
  /** ms since 1970 */
  readonly at: number;
}

const key = 'board';

/** A browser that keeps nothing keeps no snapshot either: then the pages need the server to open, and say so. */
export async function keepSnapshot(device: Device, snapshot: Snapshot): Promise<void> {
  await device.transact('snapshot', 'readwrite', (store) => store.put(snapshot, key)).catch(() => undefined);
}

/** Undefined when none was kept here, or the browser keeps nothing. */
export async function readSnapshot(device: Device): Promise<Snapshot | undefined> {
  try {
    return await device.transact('snapshot', 'readonly', (store) => store.get(key) as IDBRequest<Snapshot | undefined>);
  } catch {
    // Then there is nothing to show, and the sheet says that the server does not answer.
    return undefined;
  }
}
