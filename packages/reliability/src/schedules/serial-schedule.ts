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
  const starts = new Float64Array(order.length).fill(-1);
  const placed: number[] = [];
  for (const activity of order) {
    const duration = project.durations[activity]!;
    let time = 0;
    for (const { from, gap } of project.before[activity]!) time = Math.max(time, starts[from]! + gap);
    for (;;) {
      time = nextStart(project, duration, time);
      const blockedUntil = firstClash(project, starts, placed, activity, time);
      if (blockedUntil === undefined) break;
      time = blockedUntil;
    }
    starts[activity] = time;
    placed.push(activity);
  }
  return starts;
}

/** Where the activity, started at `time`, finds too little of a resource: the tick at which the next of the others has ended. */
function firstClash(project: TickProject, starts: ArrayLike<number>, placed: readonly number[], activity: number, time: number): number | undefined {
  const end = time + project.durations[activity]!;
  if (end === time) return undefined;
  const running = placed.filter((other) => starts[other]! < end && starts[other]! + project.durations[other]! > time);
  for (let resource = 0; resource < project.capacities.length; resource++) {
    const need = project.needs[resource]![activity]!;
    if (need === 0) continue;
    for (const moment of [time, ...running.map((other) => starts[other]!).filter((start) => start > time)]) {
      const there = running.filter((other) => starts[other]! <= moment && starts[other]! + project.durations[other]! > moment && project.needs[resource]![other]! > 0);
      const used = there.reduce((sum, other) => sum + project.needs[resource]![other]!, 0);
      if (used + need > project.capacities[resource]! + 1e-9) return Math.min(...there.map((other) => starts[other]! + project.durations[other]!));
    }
  }
  return undefined;
}
