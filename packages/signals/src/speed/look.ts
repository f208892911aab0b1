import type { LineGroup, ReadyFamily } from './comb.ts';
import { lineEvidence } from './evidence.ts';
import { groupScores, groups, type EvidenceRows, type GroupScores, type SpeedGrid } from './scores.ts';
import { meanSpeed, type Turns } from './straighten.ts';
import { whiteFrames } from './whiten.ts';

/** Long frames of a straightened recording, put together in a few parts one after the other: the mean power of each bin over its noise. */
export interface Pooled {
  readonly parts: readonly Float32Array[];
  /** How many independent frames each part is the mean of. */
  readonly independent: number;
  readonly bins: number;
  /** Hz */
  readonly binWidth: number;
  /** Length of a frame, s. */
  readonly span: number;
  /** Noise of each bin, as the mean of all frames. */
  readonly floor: Float64Array;
  /** Bins that tell nothing, neither for a line nor against it; none where this is not there. */
  readonly closed?: Uint8Array;
}

/** A recording straightened along one path, and what each group would make of each speed. */
export interface Look {
  readonly turns: Turns;
  readonly pooled: Pooled;
  readonly scores: GroupScores;
  readonly grid: SpeedGrid;
  /** What the path costs by itself: one that goes far must be worth it, nepers. */
  readonly cost: number;
  /** Median of its speed over its mean. */
  readonly usual: number;
}

/** s */
const longFrame = 2;
/** No line of the long frames counts for more, nepers. */
export const mostPerLine = 9;
/** Parts of a recording that are weighed one by one, and the fewest frames of each. */
const mostParts = 4;
const framesInPart = 2;
/** A line that is missing counts at most so often, however many parts it is missing in. */
const leastPart = 1.5;
/** Independent frames in each frame that overlaps the next by half. */
const independence = 0.62;
/** What a path costs for each neper that its speed goes up or down, nepers. */
const pathCost = 40;

export function poolFrames(straight: Float64Array, rate: number): Pooled {
  const { count, bins, binWidth, span, floor, power } = whiteFrames(straight, rate, Math.min(longFrame, straight.length / rate), 0.5);
  const several = Math.max(1, Math.min(mostParts, Math.floor(count / framesInPart)));
  const parts = Array.from({ length: several }, (_, part) => {
    const from = Math.floor((part * count) / several);
    const until = Math.floor(((part + 1) * count) / several);
    const mean = new Float32Array(bins);
    for (let frame = from; frame < until; frame += 1) for (let bin = 0; bin < bins; bin += 1) mean[bin]! += power[frame * bins + bin]! / (until - from);
    return mean;
  });
  return { parts, independent: Math.max(1, (independence * count) / several), bins, binWidth, span, floor };
}

/** Power of a bin as the mean of all parts. */
export const meanPower = ({ parts }: Pooled, bin: number): number => parts.reduce((sum, part) => sum + part[bin]!, 0) / parts.length;

/**
 * Evidence of all parts together: a line must stand in each of them, so that a path that is right for a while does not pass for one that is right.
 *
 * @param most  no line counts for more, nepers
 */
export function evidenceOfAll(pooled: Pooled, most: number): EvidenceRows {
  const { parts, independent, bins, binWidth, closed } = pooled;
  const rows = new Map<number, Float32Array>();
  const skirts = skirtsOf(pooled);
  return {
    frames: 1, bins, binWidth,
    row: (_, likely) => {
      const known = rows.get(likely);
      if (known !== undefined) return known;
      const weigh = lineEvidence(independent, likely, most / parts.length);
      const least = leastPart * Math.log(1 - likely);
      const row = new Float32Array(bins);
      for (const part of parts) for (let bin = 0; bin < bins; bin += 1) row[bin]! += weigh(skirts[bin] === 1 ? Math.min(part[bin]!, nothing) : part[bin]!);
      for (let bin = 0; bin < bins; bin += 1) row[bin] = closed?.[bin] === 1 ? 0 : Math.max(least, row[bin]!);
      rows.set(likely, row);
      return row;
    },
  };
}

/** Half of what a line fills in a Hann frame, over one by its length; what is this much below the highest within is its skirt. */
const halfLine = 2.2;
const below = 0.1;
/** Power over noise of a bin that tells nothing. */
export const nothing = 0.9;

/** Bins in which a louder line near by is seen, and nothing of their own: one line must not count for two sources. */
function skirtsOf(pooled: Pooled): Uint8Array {
  const { bins, binWidth, span } = pooled;
  const reach = Math.round(halfLine / span / binWidth);
  const power = Float32Array.from({ length: bins }, (_, bin) => meanPower(pooled, bin));
  const skirts = new Uint8Array(bins);
  for (let bin = 0; bin < bins; bin += 1) {
    let most = 0;
    for (let at = Math.max(0, bin - reach); at <= Math.min(bins - 1, bin + reach); at += 1) if (power[at]! > most) most = power[at]!;
    if (power[bin]! < below * most) skirts[bin] = 1;
  }
  return skirts;
}

export function lookAlong(turns: Turns, straight: Float64Array, rate: number, families: readonly ReadyFamily[], grid: SpeedGrid): Look {
  const pooled = poolFrames(straight, rate);
  const scores = groupScores(evidenceOfAll(pooled, mostPerLine), families, grid);
  const speeds = speedsOf(turns, rate);
  const way = speeds.reduce((sum, each, index) => sum + (index === 0 ? 0 : Math.abs(Math.log(each / speeds[index - 1]!))), 0);
  return { turns, pooled, scores, grid, cost: pathCost * way, usual: speeds.slice().sort()[speeds.length >> 1]! / meanSpeed(turns, rate) };
}

/** Stretches of which the mean speed is told, s. */
export const trackStep = 0.25;

/** Mean speed of each short stretch, Hz. */
export function speedsOf(turns: Turns, rate: number): Float64Array {
  const size = trackStep * rate;
  const at = (place: number): number => turns[Math.min(turns.length - 1, Math.round(place))]!;
  return Float64Array.from({ length: Math.max(1, Math.floor((turns.length - 1) / size)) }, (_, index) => (at((index + 1) * size) - at(index * size)) / trackStep);
}

/** Evidence of some groups together, for each speed. */
export function totalOf({ scores, grid }: Look, some: readonly LineGroup[] = groups): Float32Array {
  const total = new Float32Array(grid.speeds.length);
  for (const group of some) for (let place = 0; place < total.length; place += 1) total[place]! += scores[group][place]!;
  return total;
}

/** The highest places of a row, the highest first, each at least `apart` places from those before it. */
export function highest(row: Float32Array, count: number, apart: number): readonly number[] {
  const found: number[] = [];
  while (found.length < count) {
    let best = -1;
    for (let at = 0; at < row.length; at += 1) if ((best === -1 || row[at]! > row[best]!) && found.every((each) => Math.abs(each - at) > apart)) best = at;
    if (best === -1) return found;
    found.push(best);
  }
  return found;
}
