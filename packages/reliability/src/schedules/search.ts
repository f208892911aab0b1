import { Bounds } from './bounds.ts';
import { FIRST_RULE_KIND } from './trail.ts';
import { LiteralHeap } from './literal-heap.ts';
import { mutuallyExclusive, type Pair } from './pairs.ts';
import { lastEnd, type TickProject } from './project.ts';
import { nextStart, previousStart } from './serial-schedule.ts';
import { TimeTable } from './time-table.ts';

// Reasons of a moved bound, and what their three numbers say.
/** Waits for another, or another waits for it: the other variable, ticks from start to start. */
const GAP = FIRST_RULE_KIND;
/** The same for two that exclude each other and whose order is settled: other variable, ticks, pair. */
const ORDER = FIRST_RULE_KIND + 1;
/** The order is settled because the other one does not fit: who cannot be first, who cannot be second, the latter's last start. */
const ONE_WAY = FIRST_RULE_KIND + 2;
/** Too little of a resource is left: resource, first and last moment. */
const FULL = FIRST_RULE_KIND + 3;

/** The first conflicts are met on the way of a greedy builder: what starts earliest first. Then what took part in most conflicts. */
const GREEDY_CONFLICTS = 30;
/** Conflicts until the first restart, and how much longer the next takes. */
const FIRST_RESTART = 100;
const LONGER = 1.2;
/** Learnt clauses that are kept at most. */
const CLAUSES = 3000;

/**
 * Looks for ever shorter schedules, and learns why there is none.
 *
 * Variables: 0 … n − 1 the starts, n the makespan, n + 1 + p the order of pair p (1: its first activity comes first).
 */
export class Search {
  readonly #ticks: TickProject;
  readonly #bounds: Bounds;
  readonly #heap: LiteralHeap;
  readonly #followers: readonly (readonly { readonly to: number; readonly gap: number }[])[];
  readonly #tables: readonly TimeTable[];
  /** By activity, the tables of what it needs. */
  readonly #tablesOf: readonly (readonly number[])[];
  readonly #touched: Uint8Array;
  readonly #pairs: readonly Pair[];
  /** By activity, the pairs it is in. */
  readonly #pairsOf: readonly (readonly number[])[];
  /** Start of each activity in the best schedule so far: tried first. */
  #hint: ArrayLike<number>;
  #done = false;
  #sinceRestart = 0;
  #restartAt = FIRST_RESTART;
  /** No schedule is shorter, ticks: what waiting and sharing say without a search. */
  readonly lowerBound: number;

  /** @param first  a schedule that keeps all rules */
  constructor(ticks: TickProject, first: ArrayLike<number>) {
    this.#ticks = ticks;
    this.#hint = first;
    const n = ticks.ids.length;
    const end = lastEnd(ticks, first);
    const followers: { readonly to: number; readonly gap: number }[][] = ticks.ids.map(() => []);
    ticks.before.forEach((before, to) => before.forEach(({ from, gap }) => followers[from]!.push({ to, gap })));
    this.#followers = followers;
    this.#pairs = mutuallyExclusive(ticks);
    const pairsOf: number[][] = ticks.ids.map(() => []);
    this.#pairs.forEach(({ first: one, second: other }, p) => [one, other].forEach((i) => pairsOf[i]!.push(p)));
    this.#pairsOf = pairsOf;
    const variables = n + 1 + this.#pairs.length;
    this.#heap = new LiteralHeap(variables);
    const durations = ticks.durations;
    this.#bounds = new Bounds(
      [...durations.map(() => 0), 0, ...this.#pairs.map(() => 0)],
      [...durations.map((duration) => previousStart(ticks, duration, end - duration)), end, ...this.#pairs.map(() => 1)],
      {
        adjust: (code, value) => {
          const x = code >> 1;
          if (ticks.window === undefined || x >= n) return value;
          return (code & 1) === 0 ? nextStart(ticks, durations[x]!, value) : previousStart(ticks, durations[x]!, value);
        },
        explain: (into, entry, code, value, kind, a, b, c) => this.#explain(into, entry, code, value, kind, a, b, c),
        met: (code, value) => this.#heap.met(code, value),
      },
    );
    this.#tables = ticks.capacities.map((_, resource) => new TimeTable(ticks, resource, this.#bounds, FULL));
    this.#touched = new Uint8Array(this.#tables.length).fill(1);
    this.#tablesOf = durations.map((duration, i) => (duration === 0 ? [] : ticks.needs.flatMap((needs, resource) => (needs[i]! > 0 ? [resource] : []))));
    // Everything is looked at once, then the makespan is pressed below the best so far.
    for (let i = 0; i < n && !this.#done; i++) this.#done = !this.#spread(2 * i) || !this.#spread(2 * i + 1);
    this.#done ||= !this.#settle();
    this.lowerBound = this.#done ? end : this.#bounds.bound[2 * n]!;
    this.#done ||= !this.#bounds.give(2 * n + 1, end - 1);
  }

  /** A schedule found elsewhere: only shorter ones are looked for from here on. */
  improve(starts: ArrayLike<number>): void {
    this.#hint = starts;
    this.#bounds.backTo(0);
    this.#wentBack();
    if (!this.#bounds.give(2 * this.#ticks.ids.length + 1, lastEnd(this.#ticks, starts) - 1)) this.#done = true;
  }

  /**
   * Goes on until there is no shorter schedule, or until it is told to stop; it can be called again.
   *
   * @param stop   is given the number of conflicts so far
   * @param found  is given each shorter schedule
   * @returns      whether the best found is proven to be shortest
   */
  run(stop: (conflicts: number) => boolean, found: (starts: Float64Array) => void): boolean {
    const bounds = this.#bounds;
    const n = this.#ticks.ids.length;
    for (let steps = 1; !this.#done; steps++) {
      if ((steps & 63) === 0 && stop(bounds.conflicts)) return false;
      if (!this.#settle()) {
        this.#sinceRestart++;
        if (!bounds.learn()) this.#done = true;
        this.#wentBack();
        this.#heap.age();
      } else if (this.#sinceRestart >= this.#restartAt) {
        this.#sinceRestart = 0;
        this.#restartAt *= LONGER;
        bounds.backTo(0);
        this.#wentBack();
        bounds.forget(CLAUSES);
      } else if (!this.#decide()) {
        const starts = Float64Array.from({ length: n }, (_, i) => bounds.bound[2 * i]!);
        found(starts);
        this.improve(starts);
      }
    }
    return true;
  }

  #wentBack(): void {
    this.#heap.restore();
    for (const table of this.#tables) table.invalidate();
  }

  /** All propagation to a fixed point. False on a conflict. */
  #settle(): boolean {
    const bounds = this.#bounds;
    const spread = (code: number): boolean => this.#spread(code);
    for (;;) {
      if (!bounds.propagate(spread)) return false;
      const resource = this.#touched.indexOf(1);
      if (resource < 0) return true;
      this.#touched[resource] = 0;
      if (!this.#tables[resource]!.run()) return false;
    }
  }

  /** A bound moved: it moves those after it or before it. */
  #spread(code: number): boolean {
    const bounds = this.#bounds;
    const x = code >> 1;
    const n = this.#ticks.ids.length;
    const value = bounds.bound[code]!;
    if (x > n) return this.#keepOrder(x - n - 1);
    if (x === n) {
      if ((code & 1) === 0) return true;
      for (let i = 0; i < n; i++) if (!bounds.enforce(2 * i + 1, value - this.#ticks.durations[i]!, GAP, n, this.#ticks.durations[i]!, 0)) return false;
      return true;
    }
    for (const resource of this.#tablesOf[x]!) {
      this.#touched[resource] = 1;
      this.#tables[resource]!.touch(x);
    }
    if ((code & 1) === 0) {
      for (const { to, gap } of this.#followers[x]!) if (!bounds.enforce(2 * to, value + gap, GAP, x, gap, 0)) return false;
      if (!bounds.enforce(2 * n, value + this.#ticks.durations[x]!, GAP, x, this.#ticks.durations[x]!, 0)) return false;
    } else for (const { from, gap } of this.#ticks.before[x]!) if (!bounds.enforce(2 * from + 1, value - gap, GAP, x, gap, 0)) return false;
    for (const p of this.#pairsOf[x]!) if (!this.#keepOrder(p)) return false;
    return true;
  }

  /** Two that exclude each other: settles their order when only one is left, and keeps it. */
  #keepOrder(p: number): boolean {
    const bounds = this.#bounds;
    const { bound } = bounds;
    const { first, second } = this.#pairs[p]!;
    const order = 2 * (this.#ticks.ids.length + 1 + p);
    if (bound[order]! === bound[order + 1]!) return bound[order]! === 1 ? this.#keep(first, second, p) : this.#keep(second, first, p);
    if (bound[2 * first]! + this.#ticks.durations[first]! > bound[2 * second + 1]!) return bounds.enforce(order + 1, 0, ONE_WAY, first, second, bound[2 * second + 1]!);
    if (bound[2 * second]! + this.#ticks.durations[second]! > bound[2 * first + 1]!) return bounds.enforce(order, 1, ONE_WAY, second, first, bound[2 * first + 1]!);
    return true;
  }

  #keep(earlier: number, later: number, p: number): boolean {
    const { bound } = this.#bounds;
    const duration = this.#ticks.durations[earlier]!;
    return (
      this.#bounds.enforce(2 * later, bound[2 * earlier]! + duration, ORDER, earlier, duration, p) &&
      this.#bounds.enforce(2 * earlier + 1, bound[2 * later + 1]! - duration, ORDER, later, duration, p)
    );
  }

  #explain(into: number[], entry: number, code: number, value: number, kind: number, a: number, b: number, c: number): void {
    if (kind === FULL) this.#tables[a]!.explain(into, entry, code, b, c);
    else if (kind === ONE_WAY) into.push(2 * a, c - this.#ticks.durations[a]! + 1, 2 * b + 1, c);
    else {
      if ((code & 1) === 0) into.push(2 * a, value - b);
      else into.push(2 * a + 1, value + b);
      if (kind === ORDER) {
        const order = 2 * (this.#ticks.ids.length + 1 + c);
        // The pair's first activity comes first when the moved bound is the second's lower or the first's upper one.
        const firstEarlier = ((code & 1) === 0) === (this.#pairs[c]!.first === a);
        into.push(firstEarlier ? order : order + 1, firstEarlier ? 1 : 0);
      }
    }
  }

  /** Decides on something that is open; false when nothing is: a schedule. */
  #decide(): boolean {
    const bounds = this.#bounds;
    const { bound } = bounds;
    const n = this.#ticks.ids.length;
    if (bounds.conflicts > GREEDY_CONFLICTS) {
      const busiest = this.#heap.next((x, value) => x !== n && bound[2 * x]! < value && value <= bound[2 * x + 1]!);
      if (busiest) {
        const [x, value] = busiest;
        if (this.#hinted(x) >= value) bounds.decide(2 * x, value);
        else bounds.decide(2 * x + 1, value - 1);
        return true;
      }
    }
    let pick = -1;
    for (let i = 0; i < n; i++) {
      if (bound[2 * i]! === bound[2 * i + 1]!) continue;
      if (pick < 0 || bound[2 * i]! < bound[2 * pick]! || (bound[2 * i]! === bound[2 * pick]! && bound[2 * i + 1]! < bound[2 * pick + 1]!)) pick = i;
    }
    if (pick >= 0) bounds.decide(2 * pick + 1, bound[2 * pick]!);
    return pick >= 0;
  }

  /** Value of a variable in the best schedule so far. */
  #hinted(x: number): number {
    const n = this.#ticks.ids.length;
    if (x < n) return this.#hint[x]!;
    const { first, second } = this.#pairs[x - n - 1]!;
    return this.#hint[first]! < this.#hint[second]! ? 1 : 0;
  }
}
