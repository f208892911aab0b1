/** Something to be done without interruption. */
export interface Activity {
  readonly id: string;
  /** s */
  readonly duration: number;
  /** How much of each resource it takes while it runs. */
  readonly needs?: Readonly<Record<string, number>>;
  /** Starts no sooner than each of these has ended and its lag has passed (cure), s. */
  readonly after?: readonly { readonly id: string; readonly lag?: number }[];
}

/** Activities lie whole inside a window: from k·period to k·period + length, k = 0, 1, 2 … */
export interface Window {
  /** s */
  readonly period: number;
  /** s */
  readonly length: number;
}

export interface Project {
  readonly activities: readonly Activity[];
  /** Capacity of each resource. */
  readonly resources?: Readonly<Record<string, number>>;
  readonly window?: Window;
}

/** Why a project is none. */
export class ProjectError extends Error {
  /** Where to mend it: `activities[3].duration`, `resources.heat`, `window` */
  readonly path: string;
  /** What stands there. */
  readonly given: unknown;

  constructor(path: string, given: unknown, message: string) {
    super(message);
    this.name = 'ProjectError';
    this.path = path;
    this.given = given;
  }
}

/** A project in whole ticks, checked, activities in an order that respects `after`. */
export interface TickProject {
  /** Ticks a second. */
  readonly scale: number;
  readonly ids: readonly string[];
  readonly durations: readonly number[];
  /** By resource, by activity. */
  readonly needs: readonly (readonly number[])[];
  readonly capacities: readonly number[];
  /** By activity: those before it, with the ticks from their start to its start at least. */
  readonly before: readonly (readonly { readonly from: number; readonly gap: number }[])[];
  readonly window: Window | undefined;
}

/** When the last activity ends, ticks. */
export const lastEnd = (ticks: TickProject, starts: ArrayLike<number>): number => ticks.durations.reduce((end, duration, i) => Math.max(end, starts[i]! + duration), 0);

/**
 * Checks a project and brings it to whole ticks.
 *
 * @throws ProjectError on a cycle, an unknown or repeated id, an unknown resource, a need above capacity, a duration above the
 *         window, a negative or infinite number
 */
export function toTicks(project: Project): TickProject {
  const { activities, resources = {}, window } = project;
  const index = new Map<string, number>();
  for (const [place, { id }] of activities.entries()) {
    if (index.has(id)) throw new ProjectError(`activities[${place}].id`, id, `activity ${id} is listed twice; give each its own id`);
    index.set(id, index.size);
  }
  for (const [name, capacity] of Object.entries(resources)) {
    if (!(capacity >= 0 && Number.isFinite(capacity))) throw new ProjectError(`resources.${name}`, capacity, `resource ${name}: the capacity must not be negative, got ${capacity}`);
  }
  if (window && !(window.period > 0 && window.length > 0 && window.length <= window.period && Number.isFinite(window.period))) {
    throw new ProjectError('window', window, `window: length must be over 0 s and at most the period, got ${window.length} s of ${window.period} s`);
  }
  for (const place of activities.keys()) checkActivity(activities[place]!, `activities[${place}]`, index, resources, window);

  const times = [...activities.flatMap(({ duration, after = [] }) => [duration, ...after.map(({ lag = 0 }) => lag)]), ...(window ? [window.period, window.length] : [])];
  const scale = ticksASecond(times);
  const order = topological(activities, index);
  const place = new Map(order.map((activity, i) => [activity, i]));
  const names = Object.keys(resources);
  return {
    scale,
    ids: order.map((i) => activities[i]!.id),
    durations: order.map((i) => Math.round(activities[i]!.duration * scale)),
    needs: names.map((name) => order.map((i) => needOf(activities[i]!, name))),
    capacities: names.map((name) => resources[name]!),
    before: order.map((i) =>
      (activities[i]!.after ?? []).map(({ id, lag = 0 }) => {
        const from = index.get(id)!;
        return { from: place.get(from)!, gap: Math.round((activities[from]!.duration + lag) * scale) };
      }),
    ),
    window: window && { period: Math.round(window.period * scale), length: Math.round(window.length * scale) },
  };
}

const needOf = ({ needs = {} }: Activity, resource: string): number => (Object.hasOwn(needs, resource) ? needs[resource]! : 0);

function checkActivity({ id, duration, needs = {}, after = [] }: Activity, path: string, index: ReadonlyMap<string, number>, resources: Readonly<Record<string, number>>, window: Window | undefined): void {
  if (!(duration >= 0 && Number.isFinite(duration))) throw new ProjectError(`${path}.duration`, duration, `activity ${id}: the duration must not be negative, got ${duration} s`);
  if (window && duration > window.length) throw new ProjectError(`${path}.duration`, duration, `activity ${id}: takes ${duration} s, but a window is only ${window.length} s long`);
  for (const [name, need] of Object.entries(needs)) {
    if (!Object.hasOwn(resources, name)) throw new ProjectError(`${path}.needs.${name}`, need, `activity ${id}: needs ${name}, which is no resource; known: ${Object.keys(resources).join(', ') || 'none'}`);
    if (!(need >= 0 && Number.isFinite(need))) throw new ProjectError(`${path}.needs.${name}`, need, `activity ${id}: the need of ${name} must not be negative, got ${need}`);
    if (need > resources[name]!) throw new ProjectError(`${path}.needs.${name}`, need, `activity ${id}: needs ${need} of ${name}, but there are only ${resources[name]}`);
  }
  for (const [place, { id: before, lag = 0 }] of after.entries()) {
    if (!index.has(before)) throw new ProjectError(`${path}.after[${place}].id`, before, `activity ${id}: comes after ${before}, which is not listed`);
    if (!(lag >= 0 && Number.isFinite(lag))) throw new ProjectError(`${path}.after[${place}].lag`, lag, `activity ${id}: the lag after ${before} must not be negative, got ${lag} s`);
  }
}

/** The coarsest tick in which all times are whole: a power of ten to a microsecond, else microseconds. */
function ticksASecond(times: readonly number[]): number {
  for (let scale = 1; scale < 1e6; scale *= 10) {
    if (times.every((time) => Math.abs(time * scale - Math.round(time * scale)) < 1e-9 * Math.max(1, time * scale))) return scale;
  }
  return 1e6;
}

function topological(activities: readonly Activity[], index: ReadonlyMap<string, number>): number[] {
  const waiting = activities.map(({ after = [] }) => after.length);
  const followers: number[][] = activities.map(() => []);
  activities.forEach(({ after = [] }, i) => after.forEach(({ id }) => followers[index.get(id)!]!.push(i)));
  // The order grows while it is walked through.
  const order = waiting.flatMap((count, i) => (count === 0 ? [i] : []));
  for (const next of order) for (const follower of followers[next]!) if (--waiting[follower]! === 0) order.push(follower);
  if (order.length < activities.length) {
    // Whoever is stuck waits for one that is: walking back from any of them ends in a circle.
    const walk: number[] = [];
    let here = waiting.findIndex((count) => count > 0);
    while (!walk.includes(here)) {
      walk.push(here);
      here = activities[here]!.after!.map(({ id }) => index.get(id)!).find((before) => waiting[before]! > 0)!;
    }
    const circle = walk.slice(walk.indexOf(here));
    throw new ProjectError(`activities[${circle[0]!}].after`, activities[circle[0]!]!.after, `these wait for one another: ${circle.map((i) => activities[i]!.id).join(', ')}`);
  }
  return order;
}
