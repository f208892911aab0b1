import { Bounds } from './bounds.ts';
import { toTicks, type Project, type TickProject } from './project.ts';
import { nextStart, previousStart, serialSchedule } from './serial-schedule.ts';
import { timeTable } from './time-table.ts';

export interface Schedule {
  /** Latest end, s. */
  readonly makespan: number;
  /** Start of each activity, s. */
  readonly starts: Readonly<Record<string, number>>;
  /** Windows from the first to the one in which the last activity ends. */
  readonly windowsUsed: number;
  /** No schedule can be shorter, s. */
  readonly lowerBound: number;
  /** The makespan is the least there is. */
  readonly proven: boolean;
}

export interface ScheduleOptions {
  /** Stop looking for a better one after this, s of wall clock; 10 when not given. */
  readonly limit?: number;
  /** Clock in ms, to be replaced in tests. */
  readonly now?: () => number;
}

/**
 * Shortest schedule of activities that wait for one another, share resources and fit into windows of time.
 *
 * First a good schedule by serial generation; then a search that either finds a shorter one or learns why there is none
 * (lazy clause generation). When time runs out, the best so far is returned with `proven` false and a true lower bound.
 *
 * @throws ProjectError on a cycle, an unknown or repeated id, an unknown resource, a need above capacity, a duration above the window
 * @source Schutt, Feydy, Stuckey, Wallace, Solving RCPSP/max by lazy clause generation (2013) (from memory)
 */
export function schedule(project: Project, { limit = 10, now = Date.now }: ScheduleOptions = {}): Schedule {
  const ticks = toTicks(project);
  const n = ticks.ids.length;
  if (n === 0) return { makespan: 0, starts: {}, windowsUsed: 0, lowerBound: 0, proven: true };
  const deadline = now() + limit * 1000;
  let best = firstSchedule(ticks);
  const search = new Search(ticks, best);
  const proven = search.run(() => now() > deadline, (starts) => (best = starts));
  const makespan = lastEnd(ticks, best);
  return {
    makespan: makespan / ticks.scale,
    starts: Object.fromEntries(ticks.ids.map((id, i) => [id, best[i]! / ticks.scale])),
    windowsUsed: ticks.window ? windowsUsed(ticks, best) : 1,
    lowerBound: (proven ? makespan : search.lowerBound) / ticks.scale,
    proven,
  };
}

const lastEnd = (ticks: TickProject, starts: ArrayLike<number>): number => ticks.durations.reduce((end, duration, i) => Math.max(end, starts[i]! + duration), 0);

function windowsUsed(ticks: TickProject, starts: ArrayLike<number>): number {
  const opened = ticks.durations.map((_, i) => Math.floor(starts[i]! / ticks.window!.period));
  return Math.max(...opened) - Math.min(...opened) + 1;
}

/** The best of a few serial schedules: longest tail first, most work after it first, most greedy for resources first. */
function firstSchedule(ticks: TickProject): ArrayLike<number> {
  const n = ticks.ids.length;
  const tail = new Float64Array(n);
  const after = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    tail[i] = Math.max(tail[i]!, ticks.durations[i]!);
    for (const { from, gap } of ticks.before[i]!) {
      tail[from] = Math.max(tail[from]!, gap + tail[i]!);
      after[from]! += 1 + after[i]!;
    }
  }
  const work = ticks.durations.map((duration, i) => duration * ticks.needs.reduce((sum, needs, r) => sum + needs[i]! / (ticks.capacities[r]! || 1), 0));
  const rules = [(i: number) => tail[i]!, (i: number) => after[i]!, (i: number) => tail[i]! + work[i]!, (i: number) => -i];
  const candidates = rules.map((rule) => serialSchedule(ticks, orderBy(ticks, rule)));
  return candidates.reduce((best, candidate) => (lastEnd(ticks, candidate) < lastEnd(ticks, best) ? candidate : best));
}

/** All activities, each after those before it, among the ready ones the highest rank first. */
function orderBy(ticks: TickProject, rank: (i: number) => number): number[] {
  const waiting = ticks.before.map((before) => before.length);
  const followers: number[][] = ticks.before.map(() => []);
  ticks.before.forEach((before, i) => before.forEach(({ from }) => followers[from]!.push(i)));
  const ready = waiting.flatMap((count, i) => (count === 0 ? [i] : []));
  const order: number[] = [];
  while (ready.length > 0) {
    const pick = ready.reduce((best, i) => (rank(i) > rank(best) ? i : best));
    ready.splice(ready.indexOf(pick), 1);
    order.push(pick);
    for (const follower of followers[pick]!) if (--waiting[follower]! === 0) ready.push(follower);
  }
  return order;
}

/** Looks for ever shorter schedules. Variable n is the makespan. */
class Search {
  readonly #ticks: TickProject;
  readonly #bounds: Bounds;
  readonly #followers: { readonly to: number; readonly gap: number }[][];
  readonly #usedBy: number[][];
  /** Start of each activity in the best schedule so far: tried first. */
  #hint: ArrayLike<number>;
  lowerBound = 0;

  constructor(ticks: TickProject, first: ArrayLike<number>) {
    this.#ticks = ticks;
    this.#hint = first;
    const n = ticks.ids.length;
    const end = lastEnd(ticks, first);
    this.#followers = ticks.ids.map(() => []);
    ticks.before.forEach((before, to) => before.forEach(({ from, gap }) => this.#followers[from]!.push({ to, gap })));
    this.#usedBy = ticks.ids.map((_, i) => ticks.needs.flatMap((needs, resource) => (needs[i]! > 0 ? [resource] : [])));
    const adjust = (code: number, value: number): number => {
      const x = code >> 1;
      if (x === n) return value;
      return (code & 1) === 0 ? nextStart(ticks, ticks.durations[x]!, value) : previousStart(ticks, ticks.durations[x]!, value);
    };
    this.#bounds = new Bounds(
      [...ticks.durations.map(() => 0), 0],
      [...ticks.durations.map((duration) => previousStart(ticks, duration, end - duration)), end],
      adjust,
    );
  }

  /** @returns whether the best found is proven to be shortest */
  run(outOfTime: () => boolean, found: (starts: ArrayLike<number>) => void): boolean {
    const bounds = this.#bounds;
    const n = this.#ticks.ids.length;
    let restartAt = 100;
    let sinceRestart = 0;
    // Everything is looked at once, then the makespan is pressed below the best so far.
    for (let i = 0; i < n; i++) if (!this.#spread(2 * i) || !this.#spread(2 * i + 1)) return true;
    if (!this.#settle()) return true;
    this.lowerBound = bounds.bound[2 * n]!;
    if (!bounds.enforce(2 * n + 1, lastEnd(this.#ticks, this.#hint) - 1, [])) return true;
    for (;;) {
      if (!this.#settle()) {
        sinceRestart++;
        if (!bounds.learn()) return true;
        if ((bounds.conflicts & 63) === 0 && outOfTime()) return false;
        continue;
      }
      if (bounds.level === 0) this.lowerBound = Math.max(this.lowerBound, bounds.bound[2 * n]!);
      if (sinceRestart >= restartAt) {
        sinceRestart = 0;
        restartAt *= 1.3;
        bounds.backTo(0);
        bounds.forget(6000);
        continue;
      }
      const choice = this.#choose();
      if (choice) {
        bounds.decide(choice[0], choice[1]);
        if (outOfTime()) return false;
        continue;
      }
      this.#hint = Float64Array.from({ length: n }, (_, i) => bounds.bound[2 * i]!);
      found(this.#hint);
      bounds.backTo(0);
      if (!bounds.enforce(2 * n + 1, lastEnd(this.#ticks, this.#hint) - 1, [])) return true;
    }
  }

  /** All propagation to a fixed point. False on a conflict. */
  #settle(): boolean {
    const bounds = this.#bounds;
    if (bounds.conflict) return false;
    const touched = new Set<number>(this.#ticks.capacities.keys());
    for (;;) {
      const spread = (code: number): boolean => {
        const x = code >> 1;
        if (x < this.#usedBy.length) for (const resource of this.#usedBy[x]!) touched.add(resource);
        return this.#spread(code);
      };
      if (!bounds.propagate(spread)) return false;
      const resource = touched.values().next().value;
      if (resource === undefined) return true;
      touched.delete(resource);
      if (!timeTable(this.#ticks, resource, bounds)) return false;
    }
  }

  /** Waiting for one another: a new bound of one activity moves those after it or before it. */
  #spread(code: number): boolean {
    const bounds = this.#bounds;
    const x = code >> 1;
    const n = this.#ticks.ids.length;
    const value = bounds.bound[code]!;
    if ((code & 1) === 0) {
      if (x === n) return true;
      for (const { to, gap } of this.#followers[x]!) if (!bounds.enforce(2 * to, value + gap, [code, value])) return false;
      return bounds.enforce(2 * n, value + this.#ticks.durations[x]!, [code, value]);
    }
    if (x === n) {
      for (let i = 0; i < n; i++) if (!bounds.enforce(2 * i + 1, value - this.#ticks.durations[i]!, [code, value])) return false;
      return true;
    }
    for (const { from, gap } of this.#ticks.before[x]!) if (!bounds.enforce(2 * from + 1, value - gap, [code, value])) return false;
    return true;
  }

  /** What to decide next: early on the earliest activity at once; later what took part in most conflicts. */
  #choose(): [code: number, value: number] | undefined {
    const { bound } = this.#bounds;
    const n = this.#ticks.ids.length;
    if (this.#bounds.conflicts > 50) {
      let most = 0;
      let pick = -1;
      let at = 0;
      for (const [key, activity] of this.#bounds.activity) {
        if (activity <= most) continue;
        const x = Math.floor(key / 2 ** 40);
        const value = key - x * 2 ** 40;
        if (x < n && bound[2 * x]! < value && value <= bound[2 * x + 1]!) {
          most = activity;
          pick = x;
          at = value;
        }
      }
      if (pick >= 0) return this.#hint[pick]! >= at ? [2 * pick, at] : [2 * pick + 1, at - 1];
    }
    let pick = -1;
    for (let i = 0; i < n; i++) {
      if (bound[2 * i]! === bound[2 * i + 1]!) continue;
      if (pick < 0 || bound[2 * i]! < bound[2 * pick]! || (bound[2 * i]! === bound[2 * pick]! && bound[2 * i + 1]! < bound[2 * pick + 1]!)) pick = i;
    }
    return pick < 0 ? undefined : [2 * pick + 1, bound[2 * pick]!];
  }
}
