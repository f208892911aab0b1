import type { EntryBody, NewEntry } from '@rotorwright/logbook';

const fingerprint = `f1:${'0'.repeat(64)}`;

/** An entry with a settled id and hour; the number keeps entries apart. */
export function newEntry(number: number, body: Partial<EntryBody> & { readonly kind: EntryBody['kind'] }, by = 'Maren'): NewEntry {
  const hours = String(Math.floor(number / 60)).padStart(2, '0');
  const minutes = String(number % 60).padStart(2, '0');
  return { id: `entry-${String(number).padStart(6, '0')}`, machine: 'whimbrel', at: `2026-03-01T${hours}:${minutes}:00Z`, by, body: body as EntryBody };
}

export function signed(number: number, step: string, more: Partial<Extract<EntryBody, { kind: 'signed' }>> = {}, by?: string): NewEntry {
  return newEntry(number, { kind: 'signed', step, fingerprint, cure: 0, ...more }, by);
}
