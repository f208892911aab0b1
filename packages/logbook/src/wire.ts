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
  /** With `machine/changed`: the machine as it is now, so that nothing has to be asked for twice. */
  readonly current?: MachineOnBoard;
}

/** A live update (`event: machine`): what is now true of one machine. On connecting, one comes for each. */
export interface MachineChange {
  readonly id: string;
  /** Null when the machine is gone. */
  readonly revision: string | null;
  /** Number of the last entry in its book; 0 for an empty one. */
  readonly entries: number;
}
