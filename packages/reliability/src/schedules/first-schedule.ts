import { mirrored } from './mirrored.ts';
import { lastEnd, type TickProject } from './project.ts';
import { serialSchedule } from './serial-schedule.ts';

/** Schedules made by chance around the best rule. */
const SAMPLES = 60;

/**
 * A good schedule to begin with: the best of a few rules and of chance around them, each pushed to the right and back to the left
 * for as long as that shortens it. Repeatable.
 *
 * @source Valls, Ballestín, Quintanilla, Justification and RCPSP: a technique that pays (2005) (from memory)
 */
export function firstSchedule(ticks: TickProject, outOfTime: () => boolean): Float64Array {
  const n = ticks.ids.length;
  const tail = Float64Array.from(ticks.durations);
  const after = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    for (const { from, gap } of ticks.before[i]!) {
      tail[from] = Math.max(tail[from]!, gap + tail[i]!);
      after[from]! += 1 + after[i]!;
    }
  }
  const work = ticks.durations.map((duration, i) => duration * ticks.needs.reduce((sum, needs, r) => sum + needs[i]! / (ticks.capacities[r]! || 1), 0));
  const backwards = mirrored(ticks);
  const rules = [(i: number) => tail[i]!, (i: number) => after[i]!, (i: number) => tail[i]! + work[i]!, (i: number) => -i];
  let best = serialSchedule(ticks, orderBy(ticks, rules[0]!));
  const random = randomNumbers();
  for (let sample = 0; sample < rules.length + SAMPLES && !outOfTime(); sample++) {
    const rule = rules[sample % 3]!;
    const rank = sample < rules.length ? rules[sample]! : (i: number) => rule(i) * (0.6 + 0.8 * random());
    const found = justified(ticks, backwards, serialSchedule(ticks, orderBy(ticks, rank)));
    if (lastEnd(ticks, found) < lastEnd(ticks, best)) best = found;
  }
  return best;
}

/** Right and left again, latest end first and earliest start first, until it gets no shorter. */
function justified(ticks: TickProject, backwards: TickProject, schedule: Float64Array): Float64Array {
  const n = ticks.ids.length;
  let best = schedule;
  for (;;) {
    const ends = ticks.durations.map((duration, i) => best[i]! + duration);
    const reversed = serialSchedule(backwards, orderBy(backwards, (k) => ends[n - 1 - k]!));
    const left = serialSchedule(ticks, orderBy(ticks, (i) => reversed[n - 1 - i]! + ticks.durations[i]!));
    if (lastEnd(ticks, left) >= lastEnd(ticks, best)) return best;
    best = left;
  }
}

/** All activities, each after those before it, among the ready ones the highest rank first. */
export function orderBy(ticks: TickProject, rank: (i: number) => number): number[] {
  const n = ticks.ids.length;
  const ranks = Float64Array.from({ length: n }, (_, i) => rank(i));
  const waiting = ticks.before.map((before) => before.length);
  const followers: number[][] = ticks.before.map(() => []);
  ticks.before.forEach((before, i) => before.forEach(({ from }) => followers[from]!.push(i)));
  const ready = waiting.flatMap((count, i) => (count === 0 ? [i] : []));
  const order: number[] = [];
  while (ready.length > 0) {
    const pick = ready.reduce((best, i) => (ranks[i]! > ranks[best]! ? i : best));
    ready.splice(ready.indexOf(pick), 1);
    order.push(pick);
    for (const follower of followers[pick]!) if (--waiting[follower]! === 0) ready.push(follower);
  }
  return order;
}

/** From 0 to 1, the same every time: a linear congruence with the constants of Numerical Recipes. */
function randomNumbers(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
