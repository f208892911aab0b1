import type { Plan, PlannedModule, Step } from '@rotorwright/build';
import type { SignatureState } from '@rotorwright/logbook';

/** Counts of signatures, as the headers of Build and Bench show them. */
export interface Tally {
  readonly total: number;
  /** Signed, cured or still curing. */
  readonly signed: number;
  readonly undone: number;
  readonly curing: number;
}

export function tally(steps: readonly Step[], stateOf: (step: string) => SignatureState): Tally {
  const states = steps.map((step) => stateOf(step.id));
  const count = (state: SignatureState): number => states.filter((one) => one === state).length;
  return { total: states.length, signed: count('signed') + count('curing'), undone: count('undone'), curing: count('curing') };
}

/** One state for a whole module: the worst of what is not yet open, so that a broken seal is never hidden by good ones. */
export function moduleState(module: PlannedModule, stateOf: (step: string) => SignatureState): SignatureState {
  const { total, signed, undone, curing } = tally(module.steps, stateOf);
  if (undone > 0) return 'undone';
  if (signed < total) return 'open';
  return curing > 0 ? 'curing' : 'signed';
}

export interface Blocker {
  readonly step: Step;
  /** open: still to be done; curing: done, but its lock does not hold yet. */
  readonly why: 'open' | 'curing';
}

/** What a step waits for: what comes first and is not done, or must have cured and has not. */
export function blockersOf(plan: Plan, step: Step, stateOf: (step: string) => SignatureState): readonly Blocker[] {
  const cured = new Set(step.cured);
  return step.after.flatMap((id): readonly Blocker[] => {
    const first = plan.steps.get(id);
    if (!first) return [];
    const state = stateOf(id);
    if (state === 'open' || state === 'undone') return [{ step: first, why: 'open' }];
    return state === 'curing' && cured.has(id) ? [{ step: first, why: 'curing' }] : [];
  });
}
