import type { Activity, Window } from '@rotorwright/reliability';

/** The first window in which something can be done, counted from 0, and how far into it. */
interface Earliest {
  readonly window: number;
  /** s */
  readonly into: number;
}

/**
 * No plan takes fewer windows than this. What cannot start before window a, and must be followed by b windows more, fits into the
 * windows between; so does what waits for nothing, with a and b 0. What has passed of the first of them, before any of it can
 * start, and of the last, after all of it must have ended, is lost.
 *
 * @param activities each after those that it waits for; every one takes one of the people
 */
export function fewestWindows(activities: readonly Activity[], window: Window, people: number): number {
  const earliest = firstWindows(activities, window);
  const followed = firstWindows(reversed(activities), window);
  const spans = activities.filter(({ duration }) => duration > 0).map(({ id, duration }) => ({ a: earliest.get(id)!, b: followed.get(id)!, duration }));
  let fewest = 0;
  for (const a of new Set(spans.map((span) => span.a.window))) {
    for (const b of new Set(spans.map((span) => span.b.window))) {
      const within = spans.filter((span) => span.a.window >= a && span.b.window >= b);
      if (within.length === 0) continue;
      const work = within.reduce((sum, { duration }) => sum + duration, 0);
      const lost = lostOf(within.map((span) => span.a), a, window) + lostOf(within.map((span) => span.b), b, window);
      // What is longer than half a window shares none with its like.
      const long = within.filter(({ duration }) => 2 * duration > window.length).length;
      fewest = Math.max(fewest, a + b + Math.ceil((work / people + lost) / window.length - 1e-9), a + b + Math.ceil(long / people));
    }
  }
  return fewest;
}

/** How much of a window passes before any can begin; all of it when all begin later. */
const lostOf = (spans: readonly Earliest[], window: number, { length }: Window): number => spans.reduce((least, each) => (each.window === window ? Math.min(least, each.into) : least), length);

/** When each can be done first, were there people enough. */
function firstWindows(activities: readonly Activity[], { period, length }: Window): ReadonlyMap<string, Earliest> {
  const ends = new Map<string, number>();
  const firsts = new Map<string, Earliest>();
  for (const { id, duration, after = [] } of activities) {
    const ready = after.reduce((latest, { id: before, lag = 0 }) => Math.max(latest, ends.get(before)! + lag), 0);
    const opened = Math.floor(ready / period);
    const fits = ready - opened * period + duration <= length + 1e-9;
    const start = fits ? ready : (opened + 1) * period;
    ends.set(id, start + duration);
    firsts.set(id, { window: fits ? opened : opened + 1, into: fits ? ready - opened * period : 0 });
  }
  return firsts;
}

/** The same seen from the end: what came after comes before. */
function reversed(activities: readonly Activity[]): readonly Activity[] {
  const followers = new Map(activities.map(({ id }) => [id, [] as { readonly id: string; readonly lag: number }[]]));
  for (const { id, after = [] } of activities) for (const { id: before, lag = 0 } of after) followers.get(before)!.push({ id, lag });
  return activities.toReversed().map(({ id, duration }) => ({ id, duration, after: followers.get(id)! }));
}
