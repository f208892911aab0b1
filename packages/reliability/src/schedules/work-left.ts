import type { TickProject } from './project.ts';
import { Scales } from './together.ts';

/** A new row is kept when it says so much more of what it was made for, ticks. */
const WORTH_KEEPING = 0.5;

/**
 * Rows of weights, activities that can run together weighing at most 1: each is a lower bound of the time that work left takes. Many
 * are learnt, few are at hand: those that say most of what is left where the search stands.
 */
export class WorkLeft {
  readonly #scales: Scales;
  readonly #outOfTime: () => boolean;
  readonly #learnt: Float64Array[];
  #atHand: readonly Float64Array[];

  constructor(ticks: TickProject, outOfTime: () => boolean) {
    this.#scales = new Scales(ticks);
    this.#outOfTime = outOfTime;
    // One resource at a time holds of every project.
    this.#learnt = ticks.needs.map((needs, r) => Float64Array.from(needs, (need) => need / (ticks.capacities[r]! || 1)));
    this.#atHand = this.#learnt;
  }

  get rows(): readonly Float64Array[] {
    return this.#atHand;
  }

  /** Takes the rows to hand that say most of some work left (durations by activity), after learning one from the middle of it. */
  learnFrom(samples: readonly Float64Array[]): void {
    const middle = samples[samples.length >> 1]!;
    const row = this.#scales.heaviest(middle, this.#outOfTime);
    if (row && this.#learnt.every((known) => weigh(middle, known) + WORTH_KEEPING < weigh(middle, row))) this.#learnt.push(row);
    this.#atHand = [...new Set(samples.flatMap((left) => this.#heaviestOf(left)))];
  }

  #heaviestOf(left: Float64Array): Float64Array | [] {
    let best: Float64Array | [] = [];
    let most = 0;
    for (const row of this.#learnt) {
      const weight = weigh(left, row);
      if (weight > most) [best, most] = [row, weight];
    }
    return best;
  }
}

function weigh(left: Float64Array, row: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < row.length; i++) sum += left[i]! * row[i]!;
  return sum;
}
