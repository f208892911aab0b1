import type { Plan, Step } from './step.ts';

/** What is known of a step: from the logbook, or made up for a forecast. */
export interface StepStatus {
  readonly state: 'open' | 'signed' | 'undone' | 'curing';
  /** Curing: when it holds, ISO 8601. */
  readonly until?: string;
}

export interface Wait {
  readonly step: Step;
  readonly because: 'open' | 'undone' | 'curing';
  readonly until?: string;
}

export interface NextSteps {
  /** What can be done now, in the order of work. */
  readonly ready: readonly Step[];
  /** What must wait, and for what, in the order of work. */
  readonly waiting: readonly { readonly step: Step; readonly for: readonly Wait[] }[];
  /** What cures now, soonest first. */
  readonly curing: readonly { readonly step: Step; readonly until: string }[];
}

/**
 * What to do next, and what must be done or must cure before.
 *
 * @param states by step id; a step that is not in it is open
 */
export function nextSteps(plan: Plan, states: ReadonlyMap<string, StepStatus>): NextSteps {
  const stateOf = (id: string): StepStatus => states.get(id) ?? { state: 'open' };
  const toDo = [...plan.steps.values()].filter(({ id }) => isToDo(stateOf(id)));
  const waits = toDo.map((step) => ({ step, for: waitsOf(plan, states, step) }));
  const curing = [...plan.steps.values()].flatMap((step) => {
    const { state, until } = stateOf(step.id);
    return state === 'curing' && until !== undefined ? [{ step, until }] : [];
  });
  return {
    ready: waits.filter((wait) => wait.for.length === 0).map(({ step }) => step),
    waiting: waits.filter((wait) => wait.for.length > 0),
    curing: curing.toSorted((a, b) => (a.until < b.until ? -1 : 1)),
  };
}

/** @param status a step of which nothing is known is open */
export function isToDo(status: StepStatus = { state: 'open' }): boolean {
  return status.state === 'open' || status.state === 'undone';
}

/** What must be done, or must cure, before a step; nothing when it can be done now. */
export function waitsOf(plan: Plan, states: ReadonlyMap<string, StepStatus>, step: Step): readonly Wait[] {
  return step.after.flatMap((id) => waitFor(plan, id, states.get(id) ?? { state: 'open' }, step.cured.includes(id)));
}

function waitFor(plan: Plan, id: string, { state, until }: StepStatus, cured: boolean): readonly Wait[] {
  const step = plan.steps.get(id);
  if (step === undefined || state === 'signed' || (state === 'curing' && !cured)) return [];
  return [{ step, because: state, ...(until === undefined ? {} : { until }) }];
}
