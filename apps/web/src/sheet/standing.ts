import type { MachineView } from '../data/index.ts';
import type { MarkState } from './state-mark.tsx';

/** How many signatures are in which state, and what is wrong with the file. */
export interface Counts {
  readonly steps: number;
  readonly signed: number;
  readonly open: number;
  readonly undone: number;
  readonly curing: number;
  readonly errors: number;
  readonly warnings: number;
}

export function countsOf(view: Pick<MachineView, 'state' | 'findings'>): Counts {
  const counts = { steps: 0, signed: 0, open: 0, undone: 0, curing: 0, errors: 0, warnings: 0 };
  for (const { state } of view.state?.steps.values() ?? []) {
    counts.steps += 1;
    counts[state] += 1;
  }
  for (const { severity } of view.findings) {
    if (severity === 'error') counts.errors += 1;
    else if (severity === 'warning') counts.warnings += 1;
  }
  return counts;
}

/** The state of a machine in one mark and a few words: what is wrong comes before what is left to do. */
export function stateOf(view: Pick<MachineView, 'state' | 'findings'>): { readonly mark: MarkState; readonly words: string } {
  const { steps, undone, open, curing, errors } = countsOf(view);
  if (errors > 0) return { mark: 'exceeded', words: errors === 1 ? 'file has an error' : `file has ${errors} errors` };
  if (undone > 0) return { mark: 'undone', words: `${undone} undone` };
  if (steps === 0) return { mark: 'unknown', words: 'build not described' };
  if (open > 0) return { mark: 'open', words: `${open} of ${steps} open` };
  if (curing > 0) return { mark: 'curing', words: `${curing} curing` };
  return { mark: 'signed', words: `all ${steps} signed` };
}
