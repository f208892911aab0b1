import type { Answer } from '@rotorwright/build';

/** What a builder puts on record. */
export type EntryBody =
  | {
      readonly kind: 'signed';
      /** Step id. */
      readonly step: string;
      /** Fingerprint of the step as the signer saw it. */
      readonly fingerprint: string;
      /** Locks and torque as used, N·m. */
      readonly locks?: readonly string[];
      readonly torque?: number | 'snug';
      /** s until what was done here has cured, counted from `at`. */
      readonly cure: number;
      /** K, of the workshop while it cures; the cure above is that at this temperature. */
      readonly temperature?: number;
      /** SI value with its unit, or the answer to a question of feel. */
      readonly measured?: { readonly value: number; readonly unit: string } | { readonly feel: Answer['feel'] };
      readonly note?: string;
      /** SHA-256, hex, of a picture that was taken of it. */
      readonly photo?: string;
    }
  | { readonly kind: 'opened'; readonly things: readonly string[]; readonly reason: string }
  /** A second look at what was signed. Found bad, the step is to be done again. */
  | {
      readonly kind: 'looked';
      readonly step: string;
      /** Fingerprint of the step as it was looked at. */
      readonly fingerprint: string;
      readonly found: 'good' | 'bad';
      /** Found bad: what is wrong. */
      readonly note?: string;
      /** SHA-256, hex, of a picture of what was found. */
      readonly photo?: string;
    }
  /** Takes an earlier entry back, by its number; the earlier one stays in the book. */
  | { readonly kind: 'corrected'; readonly entry: number; readonly reason: string }
  /** `photo`: SHA-256, hex, of a picture. */
  | { readonly kind: 'noted'; readonly step?: string; readonly note: string; readonly photo?: string }
  /** What lay in a bag of the kit. */
  | { readonly kind: 'counted'; readonly bag: string; readonly lines: readonly CountedLine[] }
  /** Readings by which something was balanced: of two blades, or of runs with trial masses. */
  | {
      readonly kind: 'balanced';
      /** Of this kind of entry; the inputs are those that the calculation took when it was written. */
      readonly version: 1;
      /** Catalogue id. */
      readonly calculation: string;
      /** As they were typed: a number, or a text with its unit. */
      readonly inputs: Readonly<Record<string, Reading>>;
      /** What turns together, by its id in the file. */
      readonly of?: string;
      readonly note?: string;
    }
  /** What a recording said; those of a sound machine are what later ones are held against. */
  | {
      readonly kind: 'heard';
      readonly healthy: boolean;
      /** What recorded it and where: only alike ones can be compared. */
      readonly sensor: string;
      readonly record: HeardRecord;
    };

/** A value as it was typed, or several that belong together. */
export type Reading = number | string | readonly Reading[] | { readonly [name: string]: Reading };

/** What is kept of a recording. `version` says which rule made the levels. */
export interface HeardRecord {
  readonly version: 1;
  /** Mean of the main rotor, rad/s. */
  readonly speed: number;
  /** s */
  readonly seconds: number;
  /** Unit of a calibrated sensor. */
  readonly unit?: string;
  /** Order in turns of the main rotor, level in dB. */
  readonly lines: readonly { readonly source?: string; readonly multiple?: number; readonly order: number; readonly level: number }[];
}

/** One kind of part, as it was found. */
export interface CountedLine {
  readonly item: string;
  /** How many the file asked for. */
  readonly wanted: number;
  /** Sound pieces in the bag. */
  readonly sound: number;
  readonly damaged?: number;
  /** Sound pieces put in from elsewhere. */
  readonly replaced?: number;
}

/** An entry on its way into the book. `id` is made by the writer, so that sending it twice records it once. */
export interface NewEntry {
  readonly id: string;
  /** Machine id. */
  readonly machine: string;
  /** When it was done: ISO 8601 with zone Z. */
  readonly at: string;
  readonly by: string;
  readonly body: EntryBody;
}

/** An entry in the book. Each holds the hash of the one before; number 1 holds 64 zeros. */
export interface Entry extends NewEntry {
  readonly number: number;
  /** When the store took it. */
  readonly received: string;
  readonly previous: string;
  /** SHA-256, hex, over the canonical JSON of all the rest. */
  readonly hash: string;
}

export type SignatureState = 'open' | 'signed' | 'undone' | 'curing';
