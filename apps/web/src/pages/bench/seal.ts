import type { Step } from '@rotorwright/build';
import type { ReadableMachine } from '../../data/index.ts';
import { dayOf, reachAt } from '../../sheet/index.ts';
import { undoneWords } from '../build/undone-words.ts';
import type { Bench } from './use-bench.ts';

/** A signature of the step as it stands in the book, or on this device while it waits. */
export interface Seal {
  readonly state: 'open' | 'signed' | 'undone' | 'curing';
  readonly by?: string;
  /** "24 Nov 2026, 20:14" */
  readonly when?: string;
  readonly reason?: string;
  /** Where it is listed what comes apart before it can be done again. */
  readonly wayIn?: string;
  /** ms since 1970; while it cures. */
  readonly until?: number;
  /** Made here and not yet in the book. */
  readonly waiting: boolean;
}

/** The standing signature of a step, in the words of the bench. */
export function sealOf(open: Bench, step: Step): Seal {
  const waiting = open.waiting.has(step.id);
  const standing = open.state.steps.get(step.id);
  if (!standing) return { state: 'open', waiting };
  const until = untilOf(open, step.id);
  return {
    state: standing.state, waiting,
    ...(standing.by === undefined ? {} : { by: standing.by }), ...(standing.at === undefined ? {} : { when: dayOf(standing.at) }),
    ...(standing.state === 'undone' ? { reason: undoneWords(standing.reason), ...(step.kind === 'fit' || step.kind === 'assemble' ? { wayIn: reachAt(open.id, step.id) } : {}) } : {}), ...(until === undefined ? {} : { until }),
  };
}

/** When what was done in a step has cured, ms since 1970; undefined when nothing cures there. */
export function untilOf(open: ReadableMachine, step: string): number | undefined {
  const standing = open.state.steps.get(step);
  return standing?.state === 'curing' && standing.until !== undefined ? Date.parse(standing.until) : undefined;
}

/** The part of a cure that has passed, 0 to 1. */
export function passedOf(open: ReadableMachine, step: string, now: number): number {
  const until = untilOf(open, step);
  const cure = (open.plan.steps.get(step)?.cure ?? 0) * 1000;
  return until === undefined || cure === 0 ? 1 : Math.min(1, Math.max(0, 1 - (until - now) / cure));
}
