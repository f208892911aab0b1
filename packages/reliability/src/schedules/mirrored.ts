import { lastEnd, type TickProject } from './project.ts';

/** The project with time running backwards: activity k is activity n − 1 − k. Windows stay where they are when counted from the end of one. */
export function mirrored(ticks: TickProject): TickProject {
  const n = ticks.ids.length;
  const before: { from: number; gap: number }[][] = ticks.ids.map(() => []);
  ticks.before.forEach((list, to) =>
    list.forEach(({ from, gap }) => before[n - 1 - from]!.push({ from: n - 1 - to, gap: gap - ticks.durations[from]! + ticks.durations[to]! })),
  );
  return {
    ...ticks,
    ids: ticks.ids.toReversed(),
    durations: ticks.durations.toReversed(),
    needs: ticks.needs.map((needs) => needs.toReversed()),
    before,
  };
}

/** Starts in the mirrored project that mirror a schedule: what ended last starts first. */
export function mirroredStarts(ticks: TickProject, starts: Float64Array): Float64Array {
  const end = lastEnd(ticks, starts);
  return starts.map((start, i) => end - start - ticks.durations[i]!).toReversed();
}
