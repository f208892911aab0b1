import { searchBothWays } from './both-ways.ts';
import { firstSchedule, orderBy } from './first-schedule.ts';
import { lastEnd, toTicks, type Project, type TickProject } from './project.ts';
import { Search } from './search.ts';
import { serialSchedule } from './serial-schedule.ts';
import { Scales } from './together.ts';

export interface OrderedSchedule {
  /** Latest end, s. */
  readonly makespan: number;
  /** Start of each activity, s. */
  readonly starts: Readonly<Record<string, number>>;
  /** Windows from the first to the one in which the last activity ends. */
  readonly windowsUsed: number;
}

export interface Schedule extends OrderedSchedule {
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

/** Conflicts after which learning is set aside to go through states. */
const CONFLICTS = 400;

/**
 * Shortest schedule of activities that wait for one another, share resources and fit into windows of time.
 *
 * First a good schedule by rules and chance. Then two ways to a shorter one, or to the proof that there is none: learning from
 * conflicts, which is fast where resources leave room, and going through states, which is fast where little runs at once. When time
 * runs out, the best so far is returned with `proven` false and a true lower bound.
 *
 * @throws ProjectError on a cycle, an unknown or repeated id, an unknown resource, a need above capacity, a duration above the window
 * @source Schutt, Feydy, Stuckey, Wallace, Explaining the cumulative propagator (2011); Demeulemeester, Herroelen (1997) (both from memory)
 */
export function schedule(project: Project, { limit = 10, now = Date.now }: ScheduleOptions = {}): Schedule {
  const ticks = toTicks(project);
  const n = ticks.ids.length;
  if (n === 0) return { makespan: 0, starts: {}, windowsUsed: 0, lowerBound: 0, proven: true };
  const deadline = now() + limit * 1000;
  const found = shortest(ticks, () => now() > deadline);
  return { ...inSeconds(ticks, found.starts), lowerBound: found.lowerBound / ticks.scale, proven: found.proven };
}

/**
 * Starts each activity as early as those before it, the windows and the resources allow, in the order in which they are listed;
 * one that waits for a later one comes after it.
 *
 * @throws ProjectError as `schedule` does
 */
export function scheduleInOrder(project: Project): OrderedSchedule {
  const ticks = toTicks(project);
  if (ticks.ids.length === 0) return { makespan: 0, starts: {}, windowsUsed: 0 };
  const place = new Map(project.activities.map(({ id }, i) => [id, i]));
  return inSeconds(ticks, serialSchedule(ticks, orderBy(ticks, (i) => -place.get(ticks.ids[i]!)!)));
}

const inSeconds = (ticks: TickProject, starts: ArrayLike<number>): OrderedSchedule => ({
  makespan: lastEnd(ticks, starts) / ticks.scale,
  starts: Object.fromEntries(ticks.ids.map((id, i) => [id, starts[i]! / ticks.scale])),
  windowsUsed: windowsUsed(ticks, starts),
});

function shortest(ticks: TickProject, outOfTime: () => boolean): { readonly starts: Float64Array; readonly lowerBound: number; readonly proven: boolean } {
  let best = firstSchedule(ticks, outOfTime);
  const search = new Search(ticks, best);
  const proven = (): { readonly starts: Float64Array; readonly lowerBound: number; readonly proven: true } => ({ starts: best, lowerBound: lastEnd(ticks, best), proven: true });
  const improve = (starts: Float64Array): void => void (best = starts);
  if (search.run((conflicts) => conflicts >= CONFLICTS || outOfTime(), improve)) return proven();
  const weights = new Scales(ticks).heaviest(ticks.durations, outOfTime);
  const lowerBound = Math.max(search.lowerBound, weights ? leastTime(ticks, weights) : 0);
  if (lowerBound === lastEnd(ticks, best)) return proven();
  const certain = searchBothWays(ticks, lastEnd(ticks, best), outOfTime, (starts) => {
    best = starts;
    search.improve(best);
  });
  if (certain) return proven();
  return search.run(outOfTime, improve) ? proven() : { starts: best, lowerBound, proven: false };
}

/** The weights' lower bound of the makespan: no sooner has there been so much time inside windows. */
function leastTime({ durations, window }: TickProject, weights: ArrayLike<number>): number {
  const work = Math.ceil(durations.reduce((sum, duration, i) => sum + duration * weights[i]!, 0) - 1e-6);
  if (!window) return work;
  const full = Math.ceil(work / window.length) - 1;
  return full * window.period + (work - full * window.length);
}

/** From the first window, whether it is used or not, to that of the last activity. What starts where a window ends is still in it. */
function windowsUsed({ durations, window }: TickProject, starts: ArrayLike<number>): number {
  if (!window) return 1;
  const { period, length } = window;
  const places = durations.map((duration, i) => Math.floor(starts[i]! / period) - (duration === 0 && length === period && starts[i]! > 0 && starts[i]! % period === 0 ? 1 : 0));
  return Math.max(...places) + 1;
}
