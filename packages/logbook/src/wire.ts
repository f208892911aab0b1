import type { Entry } from './entry.ts';

/** What travels between the server and a page. */
export interface MachineOnBoard {
  readonly id: string;
  /** The whole machine file. */
  readonly text: string;
  /** SHA-256 of the text, hex: sent back with a change, so that nobody overwrites what he has not seen. */
  readonly revision: string;
  readonly demo: boolean;
  readonly entries: readonly Entry[];
}

/** The one shape of every error answer. */
export interface WireError {
  readonly error: { readonly code: string; readonly message: string; readonly details?: readonly string[] };
}
