import { reach, type Reach } from '@rotorwright/build';
import type { Machine } from '@rotorwright/machine';

/** What is to be got at, and in which machine. */
export interface Wanted {
  readonly machine: Machine;
  readonly thing: string;
}

// A stop is the end of this worker: whoever started it terminates it.
addEventListener('message', ({ data: { machine, thing } }: MessageEvent<Wanted>) => postMessage(reach(machine, [thing]) satisfies Reach));
