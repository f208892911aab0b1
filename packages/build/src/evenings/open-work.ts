import type { Activity } from '@rotorwright/reliability';
import type { StepStatus } from '../next-steps.ts';
import type { Plan, Step } from '../step.ts';

/** Steps that are still to be done, as activities. Time 0 is `from`. */
export interface OpenWork {
  /** In the order of work. */
  readonly steps: readonly Step[];
  readonly activities: readonly Activity[];
}

/** Resource of the activities: whoever works. */
export const PEOPLE = 'people';

/** Id of an activity that takes no time: what must wait for the clock alone comes after it. No step has it, for ids are not empty. */
const CLOCK = '';

/**
 * What is left to be done, what it waits for, and how long that cures.
 *
 * @param states by step id; a step that is not in it is open
 * @param from   time 0, ms since 1970
 * @param now    nothing starts sooner, ms since 1970
 */
export function openWork(plan: Plan, states: ReadonlyMap<string, StepStatus>, from: number, now: number): OpenWork {
  const statusOf = (id: string): StepStatus => states.get(id) ?? { state: 'open' };
  const isOpen = (id: string): boolean => plan.steps.has(id) && ['open', 'undone'].includes(statusOf(id).state);
  const steps = [...plan.steps.values()].filter(({ id }) => isOpen(id));
  const late = (until: number): number => Math.max(0, (until - from) / 1000);
  const activities = steps.map((step): Activity => {
    const clock = step.after.flatMap((id) => {
      const { state, until } = statusOf(id);
      return state === 'curing' && until !== undefined && step.cured.includes(id) ? [late(Date.parse(until))] : [];
    });
    return {
      id: step.id,
      duration: step.takes,
      needs: { [PEOPLE]: 1 },
      after: [
        { id: CLOCK, lag: Math.max(late(now), ...clock) },
        ...step.after.filter(isOpen).map((id) => ({ id, lag: step.cured.includes(id) ? plan.steps.get(id)!.cure : 0 })),
      ],
    };
  });
  return { steps, activities: steps.length === 0 ? [] : [{ id: CLOCK, duration: 0 }, ...activities] };
}

/**
 * From the start of each step to the end of all that waits for it, cures included, s.
 *
 * @param steps in the order of work
 */
export function longestWaits(steps: readonly Step[]): ReadonlyMap<string, number> {
  const waits = new Map(steps.map(({ id, takes, cure }) => [id, takes + cure]));
  const open = new Map(steps.map((step) => [step.id, step]));
  for (const step of steps.toReversed()) {
    for (const id of step.after) {
      const before = open.get(id);
      if (before !== undefined) waits.set(id, Math.max(waits.get(id)!, before.takes + (step.cured.includes(id) ? before.cure : 0) + waits.get(step.id)!));
    }
  }
  return waits;
}
