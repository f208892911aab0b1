import { firstOf, Wants } from './clauses.ts';
import { costOfAll, goalIndex, wantsOf, type Problem, type Solution } from './problem.ts';

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
    const { graph } = this.#problem;
    const undone = new Uint8Array(graph.ties.length);
    const waiting = taken.toSorted((a, b) => a - b);
    const order: number[] = [];
    let module: string | undefined;
    while (waiting.length > 0) {
      const isHere = (tie: number) => graph.ties[tie]?.module === module;
      const here = waiting.findIndex((tie) => isHere(tie) && this.#isFree(tie, undone));
      const at = here === -1 ? waiting.findIndex((tie) => !isHere(tie) && this.#isFree(tie, undone)) : here;
      const [next] = at === -1 ? [] : waiting.splice(at, 1);
      if (next === undefined) break;
      undone[next] = 1;
      order.push(next);
      module = graph.ties[next]?.module;
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

  /** Whether all that a tie needs is met. What was in its way still is while none of that is undone: looking again costs a walk through the machine. */
  #isFree(tie: number, undone: Uint8Array): boolean {
    if (this.#blockers.get(tie)?.every((other) => undone[other] !== 1) === true) return false;
    const blocker = firstOf(wantsOf(this.#problem, tie), (want) => this.#wants.blocker(want, undone));
    if (blocker !== undefined) this.#blockers.set(tie, blocker);
    return blocker === undefined;
  }
}
