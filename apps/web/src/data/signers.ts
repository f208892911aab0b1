/** Names that have signed on this device, and who signs now. */
export interface Signers {
  readonly names: readonly string[];
  readonly now?: string;
}

const key = 'rotorwright.signers';

export function readSigners(storage: Storage): Signers {
  try {
    const json = JSON.parse(storage.getItem(key) ?? 'null') as unknown;
    if (typeof json !== 'object' || json === null || !('names' in json) || !Array.isArray(json.names)) return { names: [] };
    const names = json.names.filter((name): name is string => typeof name === 'string' && name !== '');
    const now = 'now' in json && typeof json.now === 'string' && names.includes(json.now) ? json.now : undefined;
    return now === undefined ? { names } : { names, now };
  } catch {
    return { names: [] };
  }
}

/** The same names with one chosen; a new one comes first. */
export function withSigner(signers: Signers, name: string): Signers {
  const clean = name.trim().replaceAll(/\s+/g, ' ');
  if (clean === '') return signers;
  return { names: signers.names.includes(clean) ? signers.names : [clean, ...signers.names], now: clean };
}

export function keepSigners(storage: Storage, signers: Signers): void {
  try {
    storage.setItem(key, JSON.stringify(signers));
  } catch {
    // Without storage the name is asked for again after a reload: a nuisance, no loss.
  }
}
