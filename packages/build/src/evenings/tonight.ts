import { gathered } from '../lookup.ts';
import { isToDo, nextSteps, waitsOf, type StepStatus } from '../next-steps.ts';
import type { Plan, Step } from '../step.ts';
import { longestWaits, openWork } from './open-work.ts';
import type { PlannedWork } from './evenings.ts';

export interface TonightOptions {
  /** When it begins, ISO 8601. */
  readonly now: string;
  /** s that one person has. */
  readonly time: number;
  /** Tools that are not at hand, named as the steps name them. */
  readonly without?: readonly string[];
}

export interface Tonight {
  /** A choice that fits into the time, one after the other. */
  readonly steps: readonly PlannedWork[];
  /** s of it that are left. */
  readonly left: number;
  /** What cures already, soonest first. */
  readonly curing: readonly { readonly step: Step; readonly until: string }[];
  /** Could be done now, but for a tool. */
  readonly wantTool: readonly { readonly step: Step; readonly tools: readonly string[] }[];
  /** Could be done now, but takes longer than there is. */
  readonly tooLong: readonly Step[];
}

/**
 * What can be done in a short time with the tools at hand. What the rest of the build waits for longest comes first, its cure
 * counted; then what fits beside it. Of this and the plain order of work, the one that uses the time better.
 *
 * @param states by step id; a step that is not in it is open
 * @throws RangeError when the time is none
 */
export function tonight(plan: Plan, states: ReadonlyMap<string, StepStatus>, { now, time, without = [] }: TonightOptions): Tonight {
  const from = Date.parse(now);
  if (Number.isNaN(from)) throw new RangeError(`tonight: now must be ISO 8601, got “${now}”`);
  if (!(time > 0 && Number.isFinite(time))) throw new RangeError(`tonight: time must be over 0 s, got ${time}`);
  const missing = new Set(without);
  const lacks = (step: Step): readonly string[] => step.tools.filter((tool) => missing.has(tool));
  const { ready, curing } = nextSteps(plan, states);
  const waits = longestWaits(openWork(plan, states, from, from).steps);
  const usable = (step: Step): boolean => lacks(step).length === 0;
  const byWait = fill(plan, states, time, usable, (step) => waits.get(step.id)!);
  const byOrder = fill(plan, states, time, usable, () => 0);
  const chosen = workOf(byOrder) > workOf(byWait) ? byOrder : byWait;
  const iso = (seconds: number): string => new Date(from + seconds * 1000).toISOString();
  let clock = 0;
  const steps = chosen.map((step): PlannedWork => {
    const starts = clock;
    clock += step.takes;
    return { step, starts: iso(starts), ends: iso(clock), ...(step.cure > 0 ? { curesUntil: iso(clock + step.cure) } : {}) };
  });
  return {
    steps,
    left: time - clock,
    curing,
    wantTool: ready.flatMap((step) => (lacks(step).length > 0 ? [{ step, tools: lacks(step) }] : [])),
    tooLong: ready.filter((step) => step.takes > time && lacks(step).length === 0),
  };
}

const workOf = (steps: readonly Step[]): number => steps.reduce((sum, { takes }) => sum + takes, 0);

/** One after the other, the highest rank first among those that can be done then; where ranks are even, in the order of work. */
function fill(plan: Plan, states: ReadonlyMap<string, StepStatus>, time: number, usable: (step: Step) => boolean, rank: (step: Step) => number): readonly Step[] {
  const places = new Map([...plan.steps.keys()].map((id, at) => [id, at]));
  const followers = gathered(plan.steps.values(), ({ after }) => after);
  const isBefore = (one: Step, other: Step): boolean => rank(one) > rank(other) || (rank(one) === rank(other) && places.get(one.id)! < places.get(other.id)!);
  const then = new Map(states);
  const free = new Set(nextSteps(plan, states).ready.filter(usable));
  const chosen: Step[] = [];
  let left = time;
  for (;;) {
    let next: Step | undefined;
    for (const step of free) if (step.takes <= left && (next === undefined || isBefore(step, next))) next = step;
    if (next === undefined) return chosen;
    chosen.push(next);
    free.delete(next);
    then.set(next.id, { state: next.cure > 0 ? 'curing' : 'signed' });
    left -= next.takes;
    for (const follower of followers.get(next.id) ?? []) if (usable(follower) && isToDo(then.get(follower.id)) && waitsOf(plan, then, follower).length === 0) free.add(follower);
  }
}
