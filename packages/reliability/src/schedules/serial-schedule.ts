import type { TickProject } from './project.ts';

/** First start at or after `time` that keeps an activity whole inside a window. */
export function nextStart(project: TickProject, duration: number, time: number): number {
  if (!project.window) return time;
  const { period, length } = project.window;
  const opened = Math.floor(time / period) * period;
  return time - opened <= length - duration ? time : opened + period;
}

/** Last start at or before `time` that does. */
export function previousStart(project: TickProject, duration: number, time: number): number {
  if (!project.window) return time;
  const { period, length } = project.window;
  const opened = Math.floor(time / period) * period;
  return Math.min(time, opened + length - duration);
}

/**
 * Starts each activity, in the given order, as early as those before it, the windows and the resources allow.
 *
 * @param order  all activities, each after those before it
 * @returns      start ticks by activity
 * @source serial schedule generation, Kolisch (1996) (from memory); over all feasible orders it reaches a least makespan
 */
export function serialSchedule(project: TickProject, order: readonly number[]): Float64Array {
  const starts = new Float64Array(order.length);
  const profile = new Profile(project.capacities);
  for (const activity of order) {
    const duration = project.durations[activity]!;
    let time = 0;
    for (const { from, gap } of project.before[activity]!) time = Math.max(time, starts[from]! + gap);
    const needs = project.needs.map((each) => each[activity]!);
    for (;;) {
      time = nextStart(project, duration, time);
      const clash = duration === 0 ? undefined : profile.clash(needs, time, time + duration);
      if (clash === undefined) break;
      time = clash;
    }
    starts[activity] = time;
    if (duration > 0 && needs.some((need) => need > 0)) profile.take(needs, time, time + duration);
  }
  return starts;
}

/** What is left of each resource: from moment k up to moment k + 1 it is `left[k]`, never the same twice running; after the last, all of it. */
class Profile {
  readonly #moments: number[] = [0];
  readonly #left: number[][];

  constructor(capacities: readonly number[]) {
    this.#left = [[...capacities]];
  }

  /** Where too little is left from one moment to another: when that step ends. */
  clash(needs: readonly number[], from: number, to: number): number | undefined {
    for (let k = this.#at(from); k < this.#moments.length && this.#moments[k]! < to; k++) {
      const left = this.#left[k]!;
      for (let r = 0; r < needs.length; r++) if (needs[r]! > 0 && needs[r]! > left[r]! + 1e-9) return this.#moments[k + 1]!;
    }
    return undefined;
  }

  take(needs: readonly number[], from: number, to: number): void {
    const first = this.#split(from);
    const last = this.#split(to);
    for (let k = first; k < last; k++) for (let r = 0; r < needs.length; r++) this.#left[k]![r]! -= needs[r]!;
    this.#join(last);
    this.#join(first);
  }

  /** Takes out a moment at which nothing changes: a search then goes from one piece of work to the next, not from one activity to the next. */
  #join(k: number): void {
    if (k === 0 || !this.#left[k]!.every((left, r) => left === this.#left[k - 1]![r])) return;
    this.#moments.splice(k, 1);
    this.#left.splice(k, 1);
  }

  /** Step that holds a moment. */
  #at(time: number): number {
    let low = 0;
    let high = this.#moments.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#moments[middle]! <= time) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  #split(time: number): number {
    const k = this.#at(time);
    if (this.#moments[k] === time) return k;
    this.#moments.splice(k + 1, 0, time);
    this.#left.splice(k + 1, 0, [...this.#left[k]!]);
    return k + 1;
  }
}
