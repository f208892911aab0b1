import { Queue } from '../queue.ts';
import { Wants, type Clause } from './clauses.ts';
import { Prices } from './prices.ts';
import { costOfAll, goalIndex, needsOf, type Problem, type Solution } from './problem.ts';
import type { Want } from './wants.ts';
import type { Barred } from './way-finder.ts';
import { WorkingOrder } from './working-order.ts';

export interface Found {
  /** Cheapest first; none holds all of another. */
  readonly solutions: readonly Solution[];
  /** The first is the cheapest of all. */
  readonly proven: boolean;
  /** No way costs less. Infinity: there is none. */
  readonly lowerBound: number;
  /** The search was cut off before all that may cost little more was looked at. */
  readonly cut: boolean;
}

/** A set of ties that are taken, and of ties that are left alone, on the way to a solution. */
interface Branch {
  readonly taken: readonly number[];
  readonly left: readonly number[];
  /** Taken ties whose needs are not met yet; -1 is the goal. */
  readonly open: readonly number[];
  /** What was missing for each open tie when it was last looked at. */
  readonly known: ReadonlyMap<number, readonly Clause[]>;
  /** No solution in this branch costs less. */
  readonly bound: number;
  /** Absent while it has only been named: what must be taken besides, and its own bound, are not known yet. */
  readonly next?: Next;
}

/** What to branch on; or it is a solution, in this order. */
type Next = { readonly clause: Clause } | { readonly order: readonly number[] };

/** Branches that may be looked into before the search gives up proving: a few seconds at most on the largest machines. */
const mostBranches = 4000;

/** Branches that may be looked into for other ways once the cheapest is known. */
const mostForMore = 240;

/** Other ways are told when they cost at most this much more. Our own choice. */
const close = 1.25;
const mostWays = 3;

/** Ways are told apart when so much of the work of the cheapest is not shared: the other end of a link is no other way. Our own choice. */
const different = 0.25;

/**
 * Finds the cheapest set of ties whose undoing reaches the goal.
 *
 * Best first over sets of ties taken and left. What is missing is told as clauses (at least one of these ties must be
 * undone); a clause of one tie is taken at once; on another the branch splits: its first tie taken; the first left and
 * the second taken; and so on, so that no set is met twice. A branch is looked into when its turn comes: until then it
 * has the bound of what it was split from. The bound adds what the wants that are left must cost.
 * A set whose needs are all met may still argue in a circle, each tie waiting for the other; then one of the ties that
 * wait must be freed by something else, which is a clause too.
 * Once the cheapest is known, other ways must have work of their own: that raises the bound of what shares much with it.
 */
export function search(problem: Problem): Found {
  const order = new WorkingOrder(problem);
  const searcher = new Searcher(problem, order);
  const queue = new Queue<Branch>((branch) => branch.bound);
  const solutions: Solution[] = [];
  queue.push({ taken: [], left: [], open: [goalIndex], known: new Map(), bound: 0 });
  let looked = 0;
  let limit = mostBranches;
  let cut = false;
  for (let branch = queue.pop(); branch !== undefined; branch = queue.pop()) {
    const [best] = solutions;
    if (best !== undefined && (branch.bound > best.cost * close || solutions.length === mostWays)) break;
    const least = leastOfAnother(problem, solutions, branch);
    if (least > branch.bound) queue.push({ ...branch, bound: least });
    else if (branch.next === undefined) {
      looked += 1;
      if (looked > limit) {
        cut = true;
        if (best !== undefined) break;
        const dive = searcher.dive(branch);
        return { solutions: dive === undefined ? [] : [dive], proven: false, lowerBound: branch.bound, cut };
      }
      const settled = searcher.settle(branch);
      if (settled !== undefined) queue.push(settled);
    } else if ('order' in branch.next) {
      const ties = branch.next.order;
      const isNew = (found: readonly number[]) => solutions.every((known) => costOfAll(problem, found.filter((tie) => !known.ties.includes(tie))) >= different * (best?.cost ?? 0));
      // What has too little work of its own has no more of it when it is pruned.
      if (isNew(ties)) {
        const solution = order.pruned(ties);
        if (isNew(solution.ties) && solutions.every((known) => !known.ties.every((tie) => solution.ties.includes(tie)))) solutions.push(solution);
      }
      if (best === undefined) limit = looked + mostForMore;
    } else for (const child of searcher.split(branch, branch.next.clause).toReversed()) queue.push(child);
  }
  return { solutions, proven: true, lowerBound: solutions[0]?.cost ?? Infinity, cut };
}

/** A way that shares what a branch has taken from a known one, and has enough work of its own besides, costs at least so much. */
function leastOfAnother(problem: Problem, [best, ...others]: readonly Solution[], { taken }: Branch): number {
  if (best === undefined) return 0;
  const shared = [best, ...others].map(({ ties }) => costOfAll(problem, taken.filter((tie) => ties.includes(tie))));
  return Math.max(...shared) + different * best.cost;
}

class Searcher {
  readonly #problem: Problem;
  readonly #order: WorkingOrder;
  readonly #wants: Wants;
  readonly #undone: Uint8Array;
  readonly #left: Uint8Array;
  readonly #prices: Prices;
  readonly #costs: Float64Array;
  /** For each tie those that need it undone as it is, whatever else; and those that need these, and so on, filled as they are asked for. */
  readonly #neededBy: readonly (readonly number[])[];
  readonly #after = new Map<number, readonly number[]>();
  /** What cannot help a tie, and in which branch that was so: written anew when it is asked for in another. */
  readonly #barred = new Map<number, { branch: number; readonly ties: Uint8Array }>();
  #branch = 0;
  /** Working space: what cannot help a tie that waits for others; what ties have not paid yet. */
  readonly #waiting: Uint8Array;
  readonly #rest: Float64Array;

  constructor(problem: Problem, order: WorkingOrder) {
    this.#problem = problem;
    this.#order = order;
    this.#wants = new Wants(problem.graph);
    this.#undone = new Uint8Array(problem.graph.ties.length);
    this.#left = new Uint8Array(problem.graph.ties.length);
    this.#prices = new Prices(problem.graph);
    this.#costs = Float64Array.from(problem.graph.ties, ({ cost }) => cost);
    this.#waiting = new Uint8Array(problem.graph.ties.length);
    this.#rest = new Float64Array(problem.graph.ties.length);
    const neededBy: number[][] = problem.graph.ties.map(() => []);
    for (const [tie, needs] of problem.needs.entries()) for (const { want } of needs) for (const first of certain(want)) neededBy[first]?.push(tie);
    this.#neededBy = neededBy;
  }

  /** Takes what must be taken, and says what is to be decided next; nothing when the branch leads nowhere. */
  settle(from: Branch): Branch | undefined {
    const taken = [...from.taken];
    this.#branch += 1;
    for (const tie of taken) this.#undone[tie] = 1;
    for (const tie of from.left) this.#left[tie] = 1;
    try {
      return this.#settle(from, taken, [...from.open], new Map(from.known));
    } finally {
      for (const tie of taken) this.#undone[tie] = 0;
      for (const tie of from.left) this.#left[tie] = 0;
    }
  }

  #settle({ left, bound }: Branch, taken: number[], open: number[], known: Map<number, readonly Clause[]>): Branch | undefined {
    for (;;) {
      let clauses: Clause[] = [];
      let grown = false;
      for (let at = 0; at < open.length; at += 1) {
        const missing = this.#missing(open[at] ?? goalIndex, known);
        if (missing.length === 0) {
          open.splice(at, 1);
          at -= 1;
        }
        for (const clause of missing) {
          if (clause.length === 0) return undefined;
          const [only] = clause;
          if (clause.length > 1 || only === undefined) clauses.push(clause);
          else if (this.#undone[only] !== 1) {
            this.#take(only, taken, open);
            grown = true;
          }
        }
      }
      if (grown) continue;
      if (this.#bothSidesOff()) return undefined;
      if (clauses.length === 0) {
        const { order, stuck } = this.#order.of(taken);
        if (stuck.length === 0) return { taken, left, open: [], known, bound: costOfAll(this.#problem, taken), next: { order } };
        const freeing = this.#freeing(order, stuck);
        if (freeing.length === 0) return undefined;
        if (freeing.length === 1 && freeing[0] !== undefined) {
          this.#take(freeing[0], taken, open);
          continue;
        }
        clauses = [freeing];
      }
      const shortest = clauses.reduce((best, each) => (each.length < best.length ? each : best));
      const least = costOfAll(this.#problem, taken) + (open.length > 0 ? this.#priceOf(open) : Math.min(...shortest.map((tie) => this.#costOf(tie))));
      // What a cheapest cut chooses comes first: it leaves the bound as it is.
      const clause = shortest.toSorted((a, b) => Number(this.#prices.isCut(b)) - Number(this.#prices.isCut(a)) || this.#costOf(a) - this.#costOf(b));
      return least === Infinity ? undefined : { taken, left, open, known, bound: Math.max(bound, least), next: { clause } };
    }
  }

  #take(tie: number, taken: number[], open: number[]): void {
    this.#undone[tie] = 1;
    taken.push(tie);
    if ((this.#problem.needs[tie]?.length ?? 0) > 0) open.push(tie);
  }

  /** The branches that a branch falls into, one for each tie of its clause. */
  split({ taken, left, open, known, bound }: Branch, clause: Clause): readonly Branch[] {
    return clause.map((tie, at) => {
      const more = (this.#problem.needs[tie]?.length ?? 0) > 0 ? [tie] : [];
      return { taken: [...taken, tie], left: [...left, ...clause.slice(0, at)], open: [...open, ...more], known, bound };
    });
  }

  /** Some solution of a branch: always the way that looks cheapest, and back where it ends. */
  dive(from: Branch): Solution | undefined {
    const open = [from];
    for (let left = mostBranches, branch = open.pop(); branch !== undefined && left > 0; branch = open.pop(), left -= 1) {
      const settled = this.settle(branch);
      if (settled?.next === undefined) continue;
      if ('order' in settled.next) return this.#order.pruned(settled.next.order);
      open.push(...this.split(settled, settled.next.clause).toReversed());
    }
    return undefined;
  }

  /** A clause that nothing has met since still holds, less what is left alone by now; looking again costs a walk through the machine. */
  #missing(tie: number, known: Map<number, readonly Clause[]>): readonly Clause[] {
    const before = known.get(tie)?.filter((clause) => clause.every((other) => this.#undone[other] !== 1)) ?? [];
    const missing = before.length > 0 ? before.map((clause) => clause.filter((other) => this.#left[other] !== 1)) : needsOf(this.#problem, tie).flatMap(({ want }) => this.#wants.missing(want, this.#undone, this.#barredFor(tie)));
    known.set(tie, missing);
    return missing;
  }

  /** What cannot help a tie: what is left alone, and what itself needs that tie undone first. */
  #barredFor(tie: number): Barred {
    let known = this.#barred.get(tie);
    if (known === undefined) this.#barred.set(tie, known = { branch: 0, ties: new Uint8Array(this.#left.length) });
    if (known.branch !== this.#branch) {
      known.branch = this.#branch;
      known.ties.set(this.#left);
      for (const later of this.#afterOf(tie)) known.ties[later] = 1;
    }
    return known.ties;
  }

  #afterOf(tie: number): readonly number[] {
    const known = this.#after.get(tie);
    if (known !== undefined) return known;
    const after = new Set<number>(tie === goalIndex ? [] : this.#neededBy[tie]);
    for (const later of after) for (const next of this.#neededBy[later] ?? []) after.add(next);
    const found = [...after];
    this.#after.set(tie, found);
    return found;
  }

  /** What is wanted by some ties costs at least so much. */
  #priceOf(open: readonly number[]): number {
    this.#prices.forgetCuts();
    this.#rest.set(this.#costs);
    let sum = 0;
    for (const tie of open) {
      const barred = this.#barredFor(tie);
      for (const { want } of needsOf(this.#problem, tie)) sum += this.#prices.of(want, this.#rest, this.#undone, barred);
    }
    return sum;
  }

  /** Of ties that wait for each other, the first to come undone is freed by something else: for each what that could be. */
  #freeing(order: readonly number[], stuck: readonly number[]): Clause {
    const { graph, needs } = this.#problem;
    const undone = new Uint8Array(graph.ties.length);
    for (const tie of order) undone[tie] = 1;
    const barred = this.#left.slice();
    for (const tie of stuck) barred[tie] = 1;
    const found = new Set<number>();
    for (const tie of stuck) {
      this.#waiting.set(barred);
      for (const later of this.#afterOf(tie)) this.#waiting[later] = 1;
      const missing = (needs[tie] ?? []).flatMap(({ want }) => this.#wants.missing(want, undone, this.#waiting, 1));
      const shortest = missing.reduce<Clause | undefined>((best, clause) => (best === undefined || clause.length < best.length ? clause : best), undefined);
      for (const other of shortest ?? []) found.add(other);
    }
    return [...found];
  }

  #bothSidesOff(): boolean {
    const isOff = (ties: readonly number[]) => ties.length > 0 && ties.every((tie) => this.#undone[tie] === 1);
    return this.#problem.sides.some(({ ties, keep }) => (keep === undefined ? ties.filter(isOff).length > 1 : isOff(ties[keep] ?? [])));
  }

  #costOf(tie: number): number {
    return this.#costs[tie] ?? 0;
  }
}

/** Ties that a want needs in any case. */
function certain(want: Want): readonly number[] {
  if ('undone' in want) return [want.undone];
  return 'all' in want ? want.all.flatMap(certain) : [];
}
