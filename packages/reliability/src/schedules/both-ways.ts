import { mirrored, mirroredStarts } from './mirrored.ts';
import { lastEnd, type TickProject } from './project.ts';
import { searchStates } from './states.ts';
import { WorkLeft } from './work-left.ts';

/** States kept in a layer: few find good schedules fast, and say in which direction fewer are made; the last leaves none out. */
const WIDTHS = [200, 2000, Infinity];

/** A direction in which states are gone through. */
interface Way {
  readonly ticks: TickProject;
  readonly workLeft: WorkLeft;
  /** A schedule of the project from one of this direction. */
  readonly turned: (starts: Float64Array) => Float64Array;
}

/**
 * A shorter schedule by going through states, or the proof that there is none: as time runs, and from the end back. First few states
 * of each layer in both directions, then all in the one that made fewer. Windows allow one direction only: what is shortest from the
 * end back begins late in its first window.
 *
 * @param end    a schedule that ends then is known: only shorter ones are looked for
 * @param found  is given each shorter schedule
 * @returns      whether the last found, or the known one, is proven to be shortest
 */
export function searchBothWays(ticks: TickProject, end: number, outOfTime: () => boolean, found: (starts: Float64Array) => void): boolean {
  const backwards = mirrored(ticks);
  let ways: readonly Way[] = [
    { ticks, workLeft: new WorkLeft(ticks, outOfTime), turned: (starts) => starts },
    ...(ticks.window ? [] : [{ ticks: backwards, workLeft: new WorkLeft(backwards, outOfTime), turned: (starts: Float64Array) => mirroredStarts(backwards, starts) }]),
  ];
  let known = end;
  for (const width of WIDTHS) {
    const kept: number[] = [];
    for (const way of width === Infinity ? ways.slice(0, 1) : ways) {
      const answer = searchStates(way.ticks, way.workLeft, known, width, outOfTime);
      if (answer.starts) {
        known = lastEnd(way.ticks, answer.starts);
        found(way.turned(answer.starts));
      }
      if (answer.certain) return true;
      kept.push(answer.kept);
    }
    if (kept.length === 2 && kept[1]! < kept[0]!) ways = ways.toReversed();
  }
  return false;
}
