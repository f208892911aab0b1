import type { Activity, Project } from '../../src/index.ts';

export interface Hardness {
  /** Arcs over nodes, the two ends counted as nodes. */
  readonly networkComplexity: number;
  /** Share of the pairs of activity and resource in which there is a need. */
  readonly resourceFactor: number;
  /** 0: capacities that let the greediest run alone; 1: so much that nothing waits for a resource. */
  readonly resourceStrength: number;
}

/** Repeatable random numbers from 0 to 1: mulberry32. */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * A random project of the kind on which such solvers are compared: durations and needs from 1 to 10, three activities at each end,
 * no more than three arcs into or out of one, no arc that others imply.
 *
 * @source Kolisch, Sprecher, Drexl, Characterization and generation of a general class of resource-constrained project scheduling
 *         problems (1995): complexity, factor and strength (from memory)
 */
export function hardProject(hardness: Hardness, seed: number, count = 30, resources = 4): Project {
  const random = randomFrom(seed);
  const upTo = (most: number): number => 1 + Math.floor(random() * most);
  const durations = Array.from({ length: count }, () => upTo(10));
  const before = network(count, hardness.networkComplexity, random);
  const needs = Array.from({ length: count }, () => Array.from({ length: resources }, () => 0));
  const pairs = Array.from({ length: count * resources }, (_, pair) => ({ pair, key: random() })).sort((a, b) => a.key - b.key).map(({ pair }) => pair);
  for (const pair of pairs.slice(0, Math.round(hardness.resourceFactor * pairs.length))) needs[Math.floor(pair / resources)]![pair % resources] = upTo(10);
  const starts = Array.from({ length: count }, () => 0);
  for (let i = 0; i < count; i++) for (const j of before[i]!) starts[i] = Math.max(starts[i]!, starts[j]! + durations[j]!);
  const capacities = Array.from({ length: resources }, (_, r) => {
    const least = Math.max(...needs.map((need) => need[r]!));
    const peak = Math.max(...starts.map((time) => needs.reduce((sum, need, i) => (starts[i]! <= time && time < starts[i]! + durations[i]! ? sum + need[r]! : sum), 0)));
    return least + Math.round(hardness.resourceStrength * (peak - least));
  });
  return {
    resources: Object.fromEntries(capacities.map((capacity, r) => [`r${r}`, capacity])),
    activities: durations.map((duration, i): Activity => ({
      id: `a${i}`,
      duration,
      needs: Object.fromEntries(needs[i]!.flatMap((need, r) => (need > 0 ? [[`r${r}`, need]] : []))),
      after: before[i]!.map((j) => ({ id: `a${j}` })),
    })),
  };
}

/** Predecessors of each activity, all with smaller numbers. */
function network(count: number, complexity: number, random: () => number): number[][] {
  const ends = 3;
  const most = 3;
  const before: number[][] = Array.from({ length: count }, () => []);
  const after: number[][] = Array.from({ length: count }, () => []);
  const reaches = (from: number, to: number): boolean => from === to || after[from]!.some((next) => next <= to && reaches(next, to));
  const join = (from: number, to: number): boolean => {
    if (from >= to || to < ends || from >= count - ends || before[to]!.length >= most || after[from]!.length >= most || reaches(from, to)) return false;
    // No arc may become one that others imply.
    const above = before.flatMap((_, i) => (reaches(i, from) ? [i] : []));
    const below = before.flatMap((_, i) => (reaches(to, i) ? [i] : []));
    if (above.some((i) => after[i]!.some((j) => below.includes(j)))) return false;
    before[to]!.push(from);
    after[from]!.push(to);
    return true;
  };
  const pick = (from: number, to: number): number => from + Math.floor(random() * (to - from));
  for (let i = ends; i < count; i++) for (let tries = 0; before[i]!.length === 0 && tries < 200; tries++) join(pick(0, Math.min(i, count - ends)), i);
  for (let i = count - ends - 1; i >= 0; i--) for (let tries = 0; after[i]!.length === 0 && tries < 200; tries++) join(i, pick(Math.max(ends, i + 1), count));
  // Two more nodes stand for the ends, each with an arc to those that have none.
  const arcs = (): number => before.reduce((sum, list) => sum + Math.max(1, list.length), 0) + after.filter((list) => list.length === 0).length;
  for (let tries = 0; arcs() < complexity * (count + 2) && tries < 20_000; tries++) join(pick(0, count), pick(0, count));
  return before;
}
