import type { StepStatus } from '../next-steps.ts';
import type { HazardHolds } from './holds.ts';
import type { Chain } from './keeps.ts';

type State = StepStatus['state'];

const worstFirst: readonly State[] = ['undone', 'open', 'curing', 'signed'];

/** A chain is as good as its worst step: undone, open, curing, signed. A step that is not in `states` is open. */
export function worstState(steps: Iterable<string>, states: ReadonlyMap<string, StepStatus>): State {
  const found = new Set([...steps].map((step) => states.get(step)?.state ?? 'open'));
  return worstFirst.find((state) => found.has(state)) ?? 'signed';
}

/** Steps whose signatures guard a chain, in its order. */
export function stepsOf({ links }: Chain): readonly string[] {
  return [...new Set(links.map(({ step }) => step))];
}

/** How many single points of some hazards stand in which state; each step counts once. */
export function countPoints(hazards: Iterable<HazardHolds>, states: ReadonlyMap<string, StepStatus>): Readonly<Record<State | 'total', number>> {
  const counts = { undone: 0, open: 0, curing: 0, signed: 0, total: 0 };
  for (const step of new Set([...hazards].flatMap(({ singlePoints }) => singlePoints.map((point) => point.step)))) {
    counts[worstState([step], states)] += 1;
    counts.total += 1;
  }
  return counts;
}
