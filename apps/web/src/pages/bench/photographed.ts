import type { EntryBody } from '@rotorwright/logbook';

/** What is entered at the bench: each may have a photo. */
export type Photographed = Extract<EntryBody, { kind: 'signed' | 'looked' | 'noted' }>;
