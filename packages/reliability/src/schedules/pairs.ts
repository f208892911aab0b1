import type { TickProject } from './project.ts';

/** Two activities that cannot run at the same time, and neither of which waits for the other. */
export interface Pair {
  readonly first: number;
  readonly second: number;
}

/** With more pairs than this, settling orders costs more than it helps. */
const MOST = 4000;

/** Pairs of activities that together need more than there is of some resource. None when they are too many to be of use. */
export function mutuallyExclusive(ticks: TickProject): readonly Pair[] {
  const n = ticks.ids.length;
  const waits = waitsFor(ticks);
  const pairs: Pair[] = [];
  for (let first = 0; first < n; first++) {
    for (let second = first + 1; second < n; second++) {
      if (ticks.durations[first] === 0 || ticks.durations[second] === 0 || waits[second]![first] === 1) continue;
      if (ticks.needs.some((needs, r) => needs[first]! + needs[second]! > ticks.capacities[r]! + 1e-9)) pairs.push({ first, second });
      if (pairs.length > MOST) return [];
    }
  }
  return pairs;
}

/** By activity, a mark at each that it waits for, at once or by way of others. Activities stand in an order that respects `before`. */
function waitsFor(ticks: TickProject): readonly Uint8Array[] {
  const waits = ticks.ids.map(() => new Uint8Array(ticks.ids.length));
  ticks.before.forEach((before, i) => {
    for (const { from } of before) {
      waits[i]![from] = 1;
      waits[from]!.forEach((mark, j) => mark === 1 && (waits[i]![j] = 1));
    }
  });
  return waits;
}
