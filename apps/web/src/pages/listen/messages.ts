import type { MachineSound } from '@rotorwright/figures';
import type { Hearing, HearingProgress, Recording } from '@rotorwright/signals';

/** What the page hands to the worker: a file as it is, or sound that the browser has unpacked. */
export type Asked =
  | { readonly sound: MachineSound; readonly bytes: ArrayBuffer; readonly kind: 'wav' | 'table' }
  | { readonly sound: MachineSound; readonly recording: Recording };

/** What the worker says: how far it is, what was heard, or why nothing can be. */
export type Told =
  | { readonly progress: HearingProgress }
  | { readonly hearing: Hearing; readonly warnings: readonly string[] }
  | { readonly problem: string };
