import type { TickProject } from './project.ts';

/** Sets tried before a search for the heaviest gives up. */
const MOST_SETS = 20_000;
const MOST_PIVOTS = 400;

/**
 * Weights of activities such that those that can run together never weigh more than 1: then the sum of weight times duration is a
 * lower bound of the makespan, and so it is of what is left at any moment.
 *
 * Solved as the cover of all durations by sets that can run together, in the least time; sets are made when they are wanted.
 *
 * @returns undefined when there are too many sets to be sure of the weights, or time runs out
 * @source Mingozzi, Maniezzo, Ricciardelli, Bianco, An exact algorithm for the resource-constrained project scheduling problem (1998);
 *         revised simplex with column generation: Gilmore, Gomory (1961) (both from memory)
 */
export function heaviestWeights(ticks: TickProject, outOfTime: () => boolean): Float64Array | undefined {
  const items = ticks.durations.flatMap((duration, i) => (duration > 0 ? [i] : []));
  const m = items.length;
  const fits = compatible(ticks, items);
  // Phase 1: each activity covered by itself. Rows of the inverse are the covers in use, `time` how long each lasts.
  const inverse = Array.from({ length: m }, (_, row) => Float64Array.from({ length: m }, (_, column) => (row === column ? 1 : 0)));
  const time = Float64Array.from(items, (i) => ticks.durations[i]!);
  for (let pivot = 0; ; pivot++) {
    // Phase 2: the price of each activity; a set that weighs more than 1 would shorten the cover.
    const price = new Float64Array(m);
    for (const row of inverse) row.forEach((value, column) => (price[column]! += value));
    for (let k = 0; k < m; k++) price[k] = Math.max(0, price[k]!);
    const found = heaviestSet(ticks, items, fits, price);
    if (!found || outOfTime()) return undefined;
    if (found.weight <= 1 + 1e-9 || pivot === MOST_PIVOTS) {
      const weights = new Float64Array(ticks.durations.length);
      items.forEach((i, k) => (weights[i] = price[k]! / Math.max(1, found.weight)));
      return weights;
    }
    // Phase 3: it takes the place of the cover that runs out first.
    const column = inverse.map((row) => found.set.reduce((sum, k) => sum + row[k]!, 0));
    let leaving = -1;
    for (let row = 0; row < m; row++) if (column[row]! > 1e-9 && (leaving < 0 || time[row]! / column[row]! < time[leaving]! / column[leaving]!)) leaving = row;
    const scale = column[leaving]!;
    const lead = inverse[leaving]!;
    for (let k = 0; k < m; k++) lead[k]! /= scale;
    time[leaving]! /= scale;
    for (let row = 0; row < m; row++) {
      const factor = column[row]!;
      if (row === leaving || factor === 0) continue;
      for (let k = 0; k < m; k++) inverse[row]![k]! -= factor * lead[k]!;
      time[row]! -= factor * time[leaving]!;
    }
  }
}

/** By item, a mark at each other that may run at the same time as far as the two are concerned. */
function compatible(ticks: TickProject, items: readonly number[]): readonly Uint8Array[] {
  const waits = ticks.durations.map(() => new Set<number>());
  ticks.before.forEach((before, i) => before.forEach(({ from }) => [from, ...waits[from]!].forEach((each) => waits[i]!.add(each))));
  return items.map((i) =>
    Uint8Array.from(items, (j) => {
      const exclude = i === j || waits[i]!.has(j) || waits[j]!.has(i);
      return exclude || ticks.needs.some((needs, r) => needs[i]! + needs[j]! > ticks.capacities[r]! + 1e-9) ? 0 : 1;
    }),
  );
}

/** The set of items that can run together and is dearest; undefined when it takes too long to be sure. */
function heaviestSet(ticks: TickProject, items: readonly number[], fits: readonly Uint8Array[], price: Float64Array): { readonly set: readonly number[]; readonly weight: number } | undefined {
  const order = items.map((_, k) => k).filter((k) => price[k]! > 1e-12).sort((a, b) => price[b]! - price[a]!);
  const room = Float64Array.from(ticks.capacities, (capacity) => capacity + 1e-9);
  const chosen: number[] = [];
  let best: readonly number[] = [];
  let weight = 0;
  let visits = 0;
  const extend = (candidates: readonly number[], own: number): void => {
    if (own > weight) {
      weight = own;
      best = [...chosen];
    }
    let left = candidates.reduce((sum, k) => sum + price[k]!, 0);
    for (let c = 0; c < candidates.length && own + left > weight + 1e-12; c++) {
      if (++visits > MOST_SETS) return;
      const k = candidates[c]!;
      left -= price[k]!;
      const needs = (r: number): number => ticks.needs[r]![items[k]!]!;
      if (room.some((value, r) => needs(r) > value)) continue;
      for (let r = 0; r < room.length; r++) room[r]! -= needs(r);
      chosen.push(k);
      extend(candidates.slice(c + 1).filter((other) => fits[k]![other] === 1), own + price[k]!);
      chosen.pop();
      for (let r = 0; r < room.length; r++) room[r]! += needs(r);
    }
  };
  extend(order, 0);
  return visits > MOST_SETS ? undefined : { set: best, weight };
}
