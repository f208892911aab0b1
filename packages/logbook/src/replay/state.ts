import type { EntryBody, SignatureState } from '../entry.ts';

type Signed = Extract<EntryBody, { kind: 'signed' }>;

/** Why a step that was signed must be done again. `entry` is the number of the entry that says so. */
export type UndoneReason =
  /** The file says something else now than what was signed for. */
  | { readonly why: 'changed'; readonly entry: number; readonly signed: string; readonly now: string }
  /** It was opened later, or falls with a step that was. */
  | { readonly why: 'opened'; readonly entry: number; readonly by: string; readonly at: string; readonly reason: string; readonly fallsWith?: string }
  /** The signature was taken back. */
  | { readonly why: 'corrected'; readonly entry: number; readonly signature: number; readonly reason: string }
  /** A second look found it bad. */
  | { readonly why: 'found-bad'; readonly entry: number; readonly by: string; readonly at: string; readonly reason: string }
  /** What was measured is not what is wanted. */
  | { readonly why: 'failed'; readonly entry: number; readonly measured: NonNullable<Signed['measured']> };

/** A second look at a signature that stands. */
export type SecondLook =
  /** Nobody has looked yet. Another person may at once; the signer alone only from this moment on, ISO 8601. */
  | { readonly state: 'wanted'; readonly aloneFrom: string }
  /** `alone`: by the signer himself, after a pause. */
  | { readonly state: 'seen'; readonly by: string; readonly at: string; readonly entry: number; readonly alone: boolean };

/** One line of a step's history: who did what to it, when, with what. */
export interface StepEvent {
  readonly entry: number;
  readonly kind: EntryBody['kind'];
  readonly at: string;
  readonly by: string;
  readonly locks?: readonly string[];
  readonly torque?: number | 'snug';
  readonly temperature?: number;
  readonly measured?: Signed['measured'];
  readonly fingerprint?: string;
  /** Of a second look. */
  readonly found?: 'good' | 'bad';
  /** Note of a signature or a look, or the reason of an opening or a correction. */
  readonly words?: string;
  /** SHA-256, hex, of the picture that belongs to it. */
  readonly photo?: string;
  /** Number of the entry that took this one back. */
  readonly takenBack?: number;
}

export interface StepState {
  readonly state: SignatureState;
  /** Curing: until when, ISO 8601. */
  readonly until?: string;
  /** The signature that stands, or the last one that stood. */
  readonly by?: string;
  readonly at?: string;
  readonly entry?: number;
  /** Signed or curing: of a step that asks for a second look, and of any other that somebody looked at again. */
  readonly secondLook?: SecondLook;
  /** Undone: why. */
  readonly reason?: UndoneReason;
  /** In the order in which it was done. */
  readonly history: readonly StepEvent[];
}

export interface StepCounts {
  readonly open: number;
  readonly signed: number;
  readonly undone: number;
  readonly curing: number;
  readonly total: number;
}

/** What has been done to a machine, at one moment. */
export interface BuildState {
  /** ISO 8601 */
  readonly now: string;
  /** Every step of the plan. */
  readonly steps: ReadonlyMap<string, StepState>;
  /** By module copy. */
  readonly modules: ReadonlyMap<string, StepCounts>;
  readonly total: StepCounts;
  /** Numbers of entries that name a step or thing which the plan does not have: the file has lost it, or never had it. */
  readonly elsewhere: readonly number[];
}
