import type { LineGroup, ReadyFamily } from './comb.ts';
import { speedsOf } from './look.ts';
import { mendPath } from './refine.ts';
import { evidenceByFrame, groupScores, speedGrid, sumOf, type GroupScores, type SpeedGrid } from './scores.ts';
import { meanSpeed, turnsOf, type Turns } from './straighten.ts';
import { bestWay } from './track.ts';
import { whiteFrames, type WhiteFrames } from './whiten.ts';

/** Step of the first search, logarithm of speed. */
const coarse = 4e-4;
const mostPerLine = 5;
const everything: readonly LineGroup[] = ['main', 'tail', 'engine', 'mesh'];

/** A way to search: length of the frames, s; charge for each step of speed from frame to frame; groups that are trusted. */
interface Search {
  readonly span: number;
  /** A calm path, a free one; besides them a straight line is tried. */
  readonly charges: readonly number[];
  readonly sets: readonly (readonly LineGroup[])[];
  /** How far such a path may be out, and by which frames it is mended before it is looked at. */
  readonly mend: readonly (readonly [span: number, reach: number])[];
}

/** From the likeliest to the last resort. */
const searches: readonly Search[] = [
  { span: 0.5, charges: [0.15, 0.015], sets: [everything], mend: [] },
  { span: 0.5, charges: [0.15, 0.015], sets: [['main', 'tail', 'mesh'], ['main', 'engine'], ['engine'], ['main'], ['tail']], mend: [] },
  // While a rotor speeds up, only short frames hold a line.
  { span: 0.2, charges: [0.012], sets: [everything, ['main', 'tail']], mend: [[0.3, 0.03], [0.5, 0.01]] },
];

/** Two paths are one when they nowhere part by more, logarithm of speed. */
const alike = 6e-4;

/** What the search goes through. */
export interface Searched {
  readonly samples: Float64Array;
  /** Hz */
  readonly rate: number;
  readonly straighten: (turns: Turns) => Float64Array;
  readonly families: readonly ReadyFamily[];
  /** Turns of the main rotor in a second, Hz. */
  readonly slowest: number;
  readonly fastest: number;
}

/** Paths that the speed may have taken, search after search, each worth a closer look. They may be off by a constant factor. */
export function* candidatePaths({ samples, rate, straighten, families, slowest, fastest }: Searched): Generator<readonly Turns[], undefined> {
  const grid = speedGrid(slowest, fastest, coarse);
  const shapes: Float64Array[] = [];
  let frames: { readonly span: number; readonly white: WhiteFrames; readonly scores: GroupScores } | undefined;
  for (const { span, charges, sets, mend } of searches) {
    if (frames?.span !== span) {
      const white = whiteFrames(samples, rate, span, 0.5);
      frames = { span, white, scores: groupScores(evidenceByFrame(white, mostPerLine), families, grid) };
    }
    const { white, scores } = frames;
    const found: Turns[] = [];
    for (const set of sets) {
      const own = families.filter(({ family }) => set.includes(family.group));
      if (own.length === 0) continue;
      const sum = sumOf(scores, set);
      const ways = [...(mend.length === 0 ? [steady(sum, grid, white)] : []), ...charges.map((charge) => bestWay(sum, grid.speeds.length, charge))];
      for (const way of ways) {
        const speeds = smooth(way, coarse).map((log) => slowest * Math.exp(log));
        const times = Float64Array.from(speeds, (_, frame) => white.first + frame * white.step);
        const orders = own.flatMap(({ lines }) => lines.map(({ order }) => order));
        const turns = mend.reduce((turns, [frame, reach]) => mendPath(turns, straighten, rate, orders, frame, reach), turnsOf(times, speeds, samples.length, rate));
        // A path that differs by a constant factor alone straightens the recording as well.
        const shape = shapeOf(turns, rate);
        if (shapes.some((other) => other.every((each, index) => Math.abs(each - shape[index]!) < alike))) continue;
        shapes.push(shape);
        found.push(turns);
      }
    }
    yield found;
  }
}

/** Logarithms of a path's speed over its mean. */
function shapeOf(turns: Turns, rate: number): Float64Array {
  const mean = meanSpeed(turns, rate);
  return speedsOf(turns, rate).map((speed) => Math.log(speed / mean));
}

function steady(sum: Float32Array, { speeds }: SpeedGrid, { count }: WhiteFrames): Int32Array {
  let best = 0;
  let most = -Infinity;
  for (let place = 0; place < speeds.length; place += 1) {
    let all = 0;
    for (let frame = 0; frame < count; frame += 1) all += sum[frame * speeds.length + place]!;
    if (all > most) {
      most = all;
      best = place;
    }
  }
  return new Int32Array(count).fill(best);
}

/** Logarithms of speed over the slowest, each the mean of itself and its neighbours: the grid's steps go. */
function smooth(way: Int32Array, step: number): Float64Array {
  return Float64Array.from(way, (place, frame) => {
    const before = way[Math.max(0, frame - 1)]!;
    const behind = way[Math.min(way.length - 1, frame + 1)]!;
    return (step * (before + 2 * place + behind)) / 4;
  });
}

