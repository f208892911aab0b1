import type { TickProject } from './project.ts';

/** Sets tried before a search for the heaviest gives up. */
const MOST_SETS = 20_000;
const MOST_PIVOTS = 400;
/** Rounding of needs, and of what a set weighs that is not worth a pivot. */
const SLACK = 1e-9;
/** By so much weights are made lighter, so that rounding never makes them too heavy. */
const ROUNDING = 1e-11;

/**
 * Weights of activities such that those that can run together never weigh more than 1: then the sum of weight times duration is a
 * lower bound of the makespan, and so it is of what is left at any moment, whatever the durations that the weights were made for.
 *
 * Solved as the cover of all durations by sets that can run together, in the least time. Sets are made when they are wanted, and
 * kept for the next durations.
 *
 * @source Mingozzi, Maniezzo, Ricciardelli, Bianco, An exact algorithm for the resource-constrained project scheduling problem (1998);
 *         revised simplex with column generation: Gilmore, Gomory (1961) (both from memory)
 */
export class Scales {
  readonly #needs: readonly (readonly number[])[];
  readonly #capacities: readonly number[];
  /** By activity, a mark at each other that may run at the same time as far as the two are concerned. */
  readonly #fits: readonly Uint8Array[];
  /** Sets that can run together, as they were wanted. */
  readonly #sets: (readonly number[])[] = [];

  constructor(ticks: TickProject) {
    this.#needs = ticks.durations.map((_, i) => ticks.needs.map((needs) => needs[i]!));
    this.#capacities = ticks.capacities;
    this.#fits = compatible(ticks);
  }

  /**
   * The weights that say most of some durations.
   *
   * @param durations  ticks, by activity; those of none weigh nothing
   * @returns undefined when there are too many sets to be sure of the weights, or time runs out
   */
  heaviest(durations: ArrayLike<number>, outOfTime: () => boolean): Float64Array | undefined {
    const items = Array.from(durations).flatMap((duration, i) => (duration > 0 ? [i] : []));
    const m = items.length;
    const weights = new Float64Array(durations.length);
    // Phase 1: each activity covered by itself. Rows of the inverse are the covers in use, `time` how long each lasts.
    const inverse = Array.from({ length: m }, (_, row) => Float64Array.from({ length: m }, (_, column) => (row === column ? 1 : 0)));
    const time = Float64Array.from(items, (i) => durations[i]!);
    const column = new Float64Array(m);
    for (let pivot = 0; ; pivot++) {
      // Phase 2: the price of each activity; a set that weighs more than 1 would shorten the cover.
      items.forEach((i, k) => {
        let price = 0;
        for (const row of inverse) price += row[k]!;
        weights[i] = Math.max(0, price);
      });
      let set: readonly number[] | undefined = this.#heaviestKnown(weights);
      if (!set || pivot === MOST_PIVOTS) {
        set = this.#heaviestSet(items, weights);
        if (!set || outOfTime()) return undefined;
        const weight = weigh(set, weights);
        if (weight <= 1 + SLACK || pivot === MOST_PIVOTS) return weights.map((price) => price / (Math.max(1, weight) + ROUNDING));
        this.#sets.push(set);
      }
      // Phase 3: it takes the place of the cover that runs out first.
      // Those without a price are left out: covered more than once they would take from it.
      const members = set.flatMap((i) => (weights[i]! > 0 ? [items.indexOf(i)] : []));
      let leaving = -1;
      for (let row = 0; row < m; row++) {
        const lead = inverse[row]!;
        let sum = 0;
        for (const k of members) sum += lead[k]!;
        column[row] = sum;
        if (sum > SLACK && (leaving < 0 || time[row]! / sum < time[leaving]! / column[leaving]!)) leaving = row;
      }
      const scale = column[leaving]!;
      const lead = inverse[leaving]!;
      for (let k = 0; k < m; k++) lead[k]! /= scale;
      time[leaving]! /= scale;
      for (let row = 0; row < m; row++) {
        const factor = column[row]!;
        if (row === leaving || factor === 0) continue;
        const other = inverse[row]!;
        for (let k = 0; k < m; k++) other[k]! -= factor * lead[k]!;
        time[row]! -= factor * time[leaving]!;
      }
    }
  }

  /** The dearest of the sets found before, if it weighs more than 1. */
  #heaviestKnown(price: Float64Array): readonly number[] | undefined {
    let best: readonly number[] | undefined;
    let most = 1 + SLACK;
    for (const set of this.#sets) {
      const weight = weigh(set, price);
      if (weight > most) [best, most] = [set, weight];
    }
    return best;
  }

  /** The set of activities that can run together and is dearest; undefined when it takes too long to be sure. */
  #heaviestSet(items: readonly number[], price: Float64Array): readonly number[] | undefined {
    const needs = this.#needs;
    const order = items.filter((i) => price[i]! > 1e-12).sort((a, b) => price[b]! - price[a]!);
    const room = Float64Array.from(this.#capacities, (capacity) => capacity + SLACK);
    const chosen: number[] = [];
    let best: readonly number[] = [];
    let most = 0;
    let visits = 0;
    const extend = (candidates: readonly number[], own: number): void => {
      if (own > most) {
        most = own;
        best = [...chosen];
      }
      let left = weigh(candidates, price);
      for (let c = 0; c < candidates.length && own + left > most + 1e-12; c++) {
        if (++visits > MOST_SETS) return;
        const i = candidates[c]!;
        left -= price[i]!;
        for (let r = 0; r < room.length; r++) room[r]! -= needs[i]![r]!;
        const rest: number[] = [];
        for (let d = c + 1; d < candidates.length; d++) if (this.#fits[i]![candidates[d]!] === 1 && hasRoom(room, needs[candidates[d]!]!)) rest.push(candidates[d]!);
        chosen.push(i);
        extend(rest, own + price[i]!);
        chosen.pop();
        for (let r = 0; r < room.length; r++) room[r]! += needs[i]![r]!;
      }
    };
    extend(order, 0);
    return visits > MOST_SETS ? undefined : best;
  }
}

function weigh(set: readonly number[], price: Float64Array): number {
  let weight = 0;
  for (const i of set) weight += price[i]!;
  return weight;
}

function hasRoom(room: Float64Array, needs: readonly number[]): boolean {
  for (let r = 0; r < room.length; r++) if (needs[r]! > room[r]!) return false;
  return true;
}

/** By activity, a mark at each other that may run at the same time as far as the two are concerned. */
function compatible(ticks: TickProject): readonly Uint8Array[] {
  const waits = ticks.durations.map(() => new Set<number>());
  ticks.before.forEach((before, i) => before.forEach(({ from }) => [from, ...waits[from]!].forEach((each) => waits[i]!.add(each))));
  return waits.map((_, i) =>
    Uint8Array.from(waits, (_, j) => {
      const exclude = i === j || waits[i]!.has(j) || waits[j]!.has(i);
      return exclude || ticks.needs.some((needs, r) => needs[i]! + needs[j]! > ticks.capacities[r]! + SLACK) ? 0 : 1;
    }),
  );
}
