import type { Activity, Window } from '@rotorwright/reliability';

/**
 * No plan takes fewer windows than this. What cannot start before window a, and must be followed by b windows more, fits into the
 * windows between; so does what waits for nothing, with a and b 0.
 *
 * @param activities each after those that it waits for; every one takes one of the people
 */
export function fewestWindows(activities: readonly Activity[], window: Window, people: number): number {
  const earliest = firstWindows(activities, window);
  const followed = firstWindows(reversed(activities), window);
  const spans = activities.filter(({ duration }) => duration > 0).map(({ id, duration }) => ({ a: earliest.get(id)!, b: followed.get(id)!, duration }));
  let fewest = 0;
  for (const a of new Set(spans.map((span) => span.a))) {
    for (const b of new Set(spans.map((span) => span.b))) {
      const within = spans.filter((span) => span.a >= a && span.b >= b);
      if (within.length === 0) continue;
      const work = within.reduce((sum, { duration }) => sum + duration, 0);
      // What is longer than half a window shares none with its like.
      const long = within.filter(({ duration }) => 2 * duration > window.length).length;
      fewest = Math.max(fewest, a + b + Math.ceil(work / (people * window.length) - 1e-9), a + b + Math.ceil(long / people));
    }
  }
  return fewest;
}

/** Number of the first window in which each can be done, were there people enough; windows count from 0. */
function firstWindows(activities: readonly Activity[], { period, length }: Window): ReadonlyMap<string, number> {
  const ends = new Map<string, number>();
  const windows = new Map<string, number>();
  for (const { id, duration, after = [] } of activities) {
    const ready = after.reduce((latest, { id: before, lag = 0 }) => Math.max(latest, ends.get(before)! + lag), 0);
    const opened = Math.floor(ready / period);
    const fits = ready - opened * period + duration <= length + 1e-9;
    ends.set(id, (fits ? ready : (opened + 1) * period) + duration);
    windows.set(id, fits ? opened : opened + 1);
  }
  return windows;
}

/** The same seen from the end: what came after comes before. */
function reversed(activities: readonly Activity[]): readonly Activity[] {
  const followers = new Map(activities.map(({ id }) => [id, [] as { readonly id: string; readonly lag: number }[]]));
  for (const { id, after = [] } of activities) for (const { id: before, lag = 0 } of after) followers.get(before)!.push({ id, lag });
  return activities.toReversed().map(({ id, duration }) => ({ id, duration, after: followers.get(id)! }));
}
