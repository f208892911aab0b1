import { schedule, scheduleInOrder, type Activity, type OrderedSchedule, type Project, type Window } from '@rotorwright/reliability';
import type { StepStatus } from '../next-steps.ts';
import type { Plan, Step } from '../step.ts';
import { fewestWindows } from './fewest.ts';
import { longestWaits, openWork, PEOPLE, type OpenWork } from './open-work.ts';

export interface EveningOptions {
  /** When the first evening begins, ISO 8601; the others begin at the same hour of the following days. */
  readonly from: string;
  /** Nothing is planned before this moment, ISO 8601; `from` when not given. */
  readonly now?: string;
  /** s */
  readonly length: number;
  /** How many work side by side, each on a step of their own. */
  readonly people: number;
  /** s of computing to spend on fewer evenings, once the order of work itself has not given the fewest; none when not given. */
  readonly limit?: number;
}

export interface PlannedWork {
  readonly step: Step;
  /** ISO 8601 */
  readonly starts: string;
  /** ISO 8601 */
  readonly ends: string;
  /** Until when its compound or glue cures, ISO 8601. */
  readonly curesUntil?: string;
}

export interface Evening {
  /** ISO 8601 */
  readonly from: string;
  /** ISO 8601 */
  readonly to: string;
  /** s of work, of all people together. */
  readonly work: number;
  /** In the order of their starts. */
  readonly steps: readonly PlannedWork[];
}

export interface Evenings {
  /** Those in which something is done. */
  readonly evenings: readonly Evening[];
  /** Evenings from the first to the one in which the last step is done, whether something is done in them or not. */
  readonly count: number;
  /** No plan takes fewer. */
  readonly atLeast: number;
  /** There is none with fewer evenings. */
  readonly proven: boolean;
  /** When the last lock and glue has cured, ISO 8601; absent when nothing is left to do. */
  readonly ready?: string;
  /** Steps longer than an evening: where there are any, nothing is planned. */
  readonly tooLong: readonly Step[];
}

const DAY = 86_400;

/**
 * What is left to be done, in as few evenings as may be: steps wait for one another and for what cures, and each is done in one
 * go. The order of work is kept where it gives the fewest evenings.
 *
 * @param states by step id; a step that is not in it is open
 * @throws RangeError when a time is none, the evening is not over 0 s and at most a day, or people is no whole number from 1
 */
export function evenings(plan: Plan, states: ReadonlyMap<string, StepStatus>, options: EveningOptions): Evenings {
  const { length, people, limit = 0 } = options;
  const from = momentOf(options.from);
  const now = options.now === undefined ? from : momentOf(options.now);
  if (!(length > 0 && length <= DAY)) throw new RangeError(`evenings: length must be over 0 s and at most ${DAY} s, got ${length}`);
  if (!(Number.isInteger(people) && people >= 1)) throw new RangeError(`evenings: people must be a whole number from 1, got ${people}`);
  const window = { period: DAY, length };
  const work = openWork(plan, states, from, now);
  const tooLong = work.steps.filter(({ takes }) => takes > length);
  if (tooLong.length > 0) return { evenings: [], count: 0, atLeast: 0, proven: false, tooLong };
  const project: Project = { activities: work.activities, resources: { [PEOPLE]: people }, window };
  const atLeast = fewestWindows(work.activities, window, people);
  let found = scheduleInOrder(project);
  // Where another order saves no evening, the order of work is the better one to follow.
  const take = (other: OrderedSchedule): void => void (other.windowsUsed < found.windowsUsed && (found = other));
  if (found.windowsUsed > atLeast) take(scheduleInOrder({ ...project, activities: urgentFirst(work) }));
  if (found.windowsUsed === atLeast || limit === 0) return told(work.steps, found, atLeast, from, window);
  const shortest = schedule(project, { limit });
  take(shortest);
  return told(work.steps, found, shortest.proven ? found.windowsUsed : atLeast, from, window);
}

/** What the rest waits for longest comes first. */
function urgentFirst({ steps, activities }: OpenWork): readonly Activity[] {
  const waits = longestWaits(steps);
  return activities.toSorted((a, b) => (waits.get(b.id) ?? Infinity) - (waits.get(a.id) ?? Infinity));
}

function momentOf(text: string): number {
  const moment = Date.parse(text);
  if (Number.isNaN(moment)) throw new RangeError(`evenings: a time must be ISO 8601, got “${text}”`);
  return moment;
}

function told(steps: readonly Step[], { starts, windowsUsed: count }: OrderedSchedule, atLeast: number, from: number, { period, length }: Window): Evenings {
  const iso = (seconds: number): string => new Date(from + seconds * 1000).toISOString();
  const byEvening = new Map<number, Step[]>();
  for (const step of steps.toSorted((a, b) => starts[a.id]! - starts[b.id]!)) {
    const evening = Math.floor(starts[step.id]! / period);
    byEvening.set(evening, [...(byEvening.get(evening) ?? []), step]);
  }
  const last = steps.reduce((latest, { id, takes, cure }) => Math.max(latest, starts[id]! + takes + cure), 0);
  return {
    evenings: [...byEvening].map(([evening, own]) => ({
      from: iso(evening * period),
      to: iso(evening * period + length),
      work: own.reduce((sum, { takes }) => sum + takes, 0),
      steps: own.map((step) => {
        const end = starts[step.id]! + step.takes;
        return { step, starts: iso(starts[step.id]!), ends: iso(end), ...(step.cure > 0 ? { curesUntil: iso(end + step.cure) } : {}) };
      }),
    })),
    count,
    atLeast,
    proven: count === atLeast,
    ...(steps.length === 0 ? {} : { ready: iso(last) }),
    tooLong: [],
  };
}
