import type { Machine } from '@rotorwright/machine';
import { reach, undoneBy, type Reach } from '../reach/index.ts';
import type { Plan, Step } from '../step.ts';
import { changedSteps, replacedParts, type PartChange } from './replaced.ts';

/** A machine and the plan that follows from its file. */
export interface Planned {
  readonly machine: Machine;
  readonly plan: Plan;
}

/** A step that a change makes due, or due again. */
export interface Again {
  readonly step: Step;
  /** new: the change brings it; changed: something else is done there now; opened: it comes undone on the way; falls: what it rests on does. */
  readonly why: 'new' | 'changed' | 'opened' | 'falls';
}

/** What a change of the file means at the bench. */
export interface ChangeWork {
  readonly parts: readonly PartChange[];
  /** The ways to take apart what changes, in the machine as it is built; none when nothing that is built changes. */
  readonly wayIn?: Reach;
  /** What must be signed, again or for the first time, in the order of work; by the cheapest way in. */
  readonly again: readonly Again[];
  /** Steps that the machine no longer has. */
  readonly gone: readonly Step[];
}

/**
 * What must come apart, and what must be done again, to bring a change of the file about: whatever is replaced or done in
 * another way must come undone first, with all that stands before it.
 */
export function workOfChange(before: Planned, after: Planned): ChangeWork {
  const parts = replacedParts(before.machine, after.machine);
  const steps = changedSteps(before.plan, after.plan);
  const formerOf = (step: Step): string => (before.plan.steps.has(step.id) ? step.id : (step.was ?? step.id));
  const isBuilt = (id: string): boolean => before.machine.joints.has(id) || before.machine.stacks.has(id);
  // 1. What must be free: parts that are replaced or go, joints and stacks that are made in another way or go.
  const redone = steps.filter(({ kind }) => kind !== 'new').map(({ step }) => formerOf(step));
  const goals = [...new Set([...parts.filter(({ kind }) => kind !== 'new').map(({ id }) => id), ...redone.filter(isBuilt)])];
  const wayIn = goals.length === 0 ? undefined : reach(before.machine, goals);
  // 2. What comes undone on the way, and what falls with that.
  const [way] = wayIn?.ways ?? [];
  const falls = undoneBy(before.plan)([...(way?.undo.map(({ id }) => id) ?? []), ...(way?.unmeasured ?? []), ...redone]);
  const moved = new Set(way?.unmeasured);
  const kinds = new Map(steps.map(({ step, kind }) => [step.id, kind]));
  const again = [...after.plan.steps.values()].flatMap((step): readonly Again[] => {
    const kind = kinds.get(step.id);
    if (kind === 'new' || kind === 'changed') return [{ step, why: kind }];
    const fall = falls.get(formerOf(step));
    return fall === undefined ? [] : [{ step, why: fall.why === 'falls' || moved.has(formerOf(step)) ? 'falls' : 'opened' }];
  });
  return { parts, ...(wayIn === undefined ? {} : { wayIn }), again, gone: steps.filter(({ kind }) => kind === 'gone').map(({ step }) => step) };
}
