import { firstOf, Wants } from './clauses.ts';
import { costOfAll, goalIndex, needsOf, type Problem, type Solution } from './problem.ts';

/** In which order ties come undone, and whether the goal is then reached. */
export class WorkingOrder {
  readonly #problem: Problem;
  readonly #wants: Wants;
  /** What was in the way of each tie, or of the goal, when it was last looked at. */
  readonly #blockers = new Map<number, readonly number[]>();

  constructor(problem: Problem) {
    this.#problem = problem;
    this.#wants = new Wants(problem.graph);
  }

  /** An order in which ties come undone, as far as it goes, and those that wait for each other. Work stays in one module while it can. */
  of(taken: readonly number[]): { readonly order: readonly number[]; readonly stuck: readonly number[] } {
    const { ties } = this.#problem.graph;
    const undone = new Uint8Array(ties.length);
    const waiting = taken.toSorted((a, b) => a - b);
    const order: number[] = [];
    let module: string | undefined;
    const isHere = (tie: number) => ties[tie]?.module === module;
    const isElsewhere = (tie: number) => !isHere(tie);
    while (waiting.length > 0) {
      const here = this.#firstFree(waiting, undone, isHere);
      const at = here === -1 ? this.#firstFree(waiting, undone, isElsewhere) : here;
      if (at === -1) break;
      const next = waiting[at]!;
      waiting.splice(at, 1);
      undone[next] = 1;
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
    const undone = new Uint8Array(this.#problem.graph.ties.length);
    for (const tie of ties) undone[tie] = 1;
    return this.#isFree(goalIndex, undone);
  }

  #firstFree(waiting: readonly number[], undone: Uint8Array, isAsked: (tie: number) => boolean): number {
    for (let at = 0; at < waiting.length; at += 1) if (isAsked(waiting[at]!) && this.#isFree(waiting[at]!, undone)) return at;
    return -1;
  }

  /** Whether all that a tie needs is met. What was in its way still is while none of that is undone: looking again costs a walk through the machine. */
  #isFree(tie: number, undone: Uint8Array): boolean {
    const before = this.#blockers.get(tie);
    if (before !== undefined && !before.some((other) => undone[other] === 1)) return false;
    const blocker = firstOf(needsOf(this.#problem, tie), ({ want }) => this.#wants.blocker(want, undone));
    if (blocker !== undefined) this.#blockers.set(tie, blocker);
    return blocker === undefined;
  }
}
