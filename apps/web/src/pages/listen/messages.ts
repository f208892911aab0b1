import type { MachineSound } from '@rotorwright/figures';
import type { Hearing, HearingProgress, Recording, Waterfall } from '@rotorwright/signals';

/** What the page hands to the worker: a file as it is, or sound that the browser has unpacked; before the first, a machine to practise on. */
export type Asked = { readonly practice: MachineSound } | Question;

export type Question = {
  readonly sound: MachineSound;
  /** All of a long recording, piece after piece, instead of its loudest fifteen seconds. */
  readonly whole: boolean;
} & ({ readonly bytes: ArrayBuffer; readonly kind: 'wav' | 'table' } | { readonly recording: Recording });

export interface Heard {
  readonly hearing: Hearing;
  /** One hearing a piece, in the order of time, of which `hearing` is the surest; it alone where the whole was not asked for. */
  readonly pieces: readonly Hearing[];
  /** All of the recording, for drawing. */
  readonly waterfall: Waterfall;
  readonly warnings: readonly string[];
  /** Of all that was recorded, s. */
  readonly seconds: number;
}

/** What the worker says: how far it is, what was heard, or why nothing can be. */
export type Told =
  | { readonly progress: HearingProgress }
  | Heard
  | { readonly problem: string };
