import type { Plan, Step } from '@rotorwright/build';
import type { SignatureState } from '@rotorwright/logbook';

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
