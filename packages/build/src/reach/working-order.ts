import { Wants } from './clauses.ts';
import { costOfAll, goalIndex, needsOf, type Problem, type Solution } from './problem.ts';

/** In which order ties come undone, and whether the goal is then reached. */
export class WorkingOrder {
  readonly #problem: Problem;
  readonly #wants: Wants;
  /** What was in the way of each tie, or of the goal, when it was last looked at. */
  readonly #blockers = new Map<number, readonly number[]>();
  /** Working space: 1 for each tie that is undone. */
  readonly #undone: Uint8Array;

  constructor(problem: Problem) {
    this.#problem = problem;
    this.#wants = new Wants(problem.graph);
    this.#undone = new Uint8Array(problem.graph.ties.length);
  }

  /** An order in which ties come undone, as far as it goes, and those that wait for each other. Work stays in one module while it can. */
  of(taken: readonly number[]): { readonly order: readonly number[]; readonly stuck: readonly number[] } {
    const { ties } = this.#problem.graph;
    this.#undone.fill(0);
    const waiting = taken.toSorted((a, b) => a - b);
    const order: number[] = [];
    let module: string | undefined;
    while (waiting.length > 0) {
      const here = this.#firstFree(waiting, module, true);
      const at = here === -1 ? this.#firstFree(waiting, module, false) : here;
      if (at === -1) break;
      const next = waiting[at]!;
      waiting.splice(at, 1);
      this.#undone[next] = 1;
      order.push(next);
      module = ties[next]?.module;
    }
    return { order, stuck: waiting };
  }

  /** Without ties that the goal is reached without: taken where a clause had to be met that another met later. */
  pruned(order: readonly number[]): Solution {
    let ties = order;
    for (const tie of order.toReversed()) {
      const fewer = this.of(ties.filter((other) => other !== tie));
      if (fewer.stuck.length === 0 && this.#reaches(fewer.order)) ties = fewer.order;
    }
    return { ties, cost: costOfAll(this.#problem, ties) };
  }

  #reaches(ties: readonly number[]): boolean {
    this.#undone.fill(0);
    for (const tie of ties) this.#undone[tie] = 1;
    return this.#isFree(goalIndex);
  }

  /** The first in a module, or in any other, that is free to come undone; -1: none is. */
  #firstFree(waiting: readonly number[], module: string | undefined, isHere: boolean): number {
    const { ties } = this.#problem.graph;
    return waiting.findIndex((tie) => (ties[tie]?.module === module) === isHere && this.#isFree(tie));
  }

  /** Whether all that a tie needs is met. What was in its way still is while none of that is undone: looking again costs a walk through the machine. */
  #isFree(tie: number): boolean {
    const before = this.#blockers.get(tie);
    if (before !== undefined && !before.some((other) => this.#undone[other] === 1)) return false;
    for (const { want } of needsOf(this.#problem, tie)) {
      const blocker = this.#wants.blocker(want, this.#undone);
      if (blocker === undefined) continue;
      this.#blockers.set(tie, blocker);
      return false;
    }
    return true;
  }
}
