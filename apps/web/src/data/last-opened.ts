const key = 'rotorwright.last-opened';

/** The machine that was open last on this device: it stays on the board while the list of machines is shown. */
export function readLastOpened(storage: Storage): string | undefined {
  return storage.getItem(key) ?? undefined;
}

export function keepLastOpened(storage: Storage, machine: string): void {
  try {
    storage.setItem(key, machine);
  } catch {
    // Without storage the first machine lies on the board.
  }
}
