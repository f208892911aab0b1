import type { NewEntry } from '@rotorwright/logbook';

const key = 'rotorwright.outbox';

/** Entries that were made while the network was gone. Their ids make sending them twice harmless. */
export function readOutbox(storage: Storage): readonly NewEntry[] {
  try {
    const kept: unknown = JSON.parse(storage.getItem(key) ?? '[]');
    return Array.isArray(kept) ? kept.filter((entry): entry is NewEntry => typeof entry === 'object' && entry !== null && 'id' in entry && 'machine' in entry && 'body' in entry) : [];
  } catch {
    return [];
  }
}

/** @throws DOMException when the storage is full or forbidden: the signature must then not be called kept */
export function keepOutbox(storage: Storage, entries: readonly NewEntry[]): void {
  if (entries.length === 0) storage.removeItem(key);
  else storage.setItem(key, JSON.stringify(entries));
}
