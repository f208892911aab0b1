import type { LineGroup, ReadyFamily } from './comb.ts';
import { lineEvidence, type LineEvidence } from './evidence.ts';
import type { WhiteFrames } from './whiten.ts';

/** Speeds of the main rotor that are tried, each the same part above the one before. */
export interface SpeedGrid {
  /** Logarithm of one speed over the one before. */
  readonly step: number;
  /** Turns in a second, Hz. */
  readonly speeds: Float64Array;
}

export function speedGrid(slowest: number, fastest: number, step: number): SpeedGrid {
  const count = Math.max(2, Math.ceil(Math.log(fastest / slowest) / step) + 1);
  return { step, speeds: Float64Array.from({ length: count }, (_, index) => slowest * Math.exp(index * step)) };
}

/** Evidence of each group for each speed, frame after frame. */
export type GroupScores = Readonly<Record<LineGroup, Float32Array>>;

export const groups: readonly LineGroup[] = ['main', 'tail', 'engine', 'mesh'];

/** Lines above this part of the sampling rate are let be: there the filters begin. */
const highest = 0.46;

/** Evidence at each bin of each frame, for lines that are likely to be there by so much. */
export interface EvidenceRows {
  readonly frames: number;
  readonly bins: number;
  /** Hz */
  readonly binWidth: number;
  readonly row: (frame: number, likely: number) => Float32Array;
}

/** How loud each group would be at each speed: its families' lines up to the harmonic that fits best, and faint ones besides. */
export function groupScores({ frames, bins, binWidth, row }: EvidenceRows, families: readonly ReadyFamily[], { speeds }: SpeedGrid): GroupScores {
  const scores: Record<LineGroup, Float32Array> = { main: new Float32Array(0), tail: new Float32Array(0), engine: new Float32Array(0), mesh: new Float32Array(0) };
  for (const group of groups) scores[group] = new Float32Array(frames * speeds.length);
  const end = Math.floor(2 * highest * (bins - 1));
  for (let frame = 0; frame < frames; frame += 1) {
    for (const { family, lines, faint } of families) {
      const into = scores[family.group];
      if (lines.length > 0) addHarmonics(into, frame * speeds.length, speeds, Float64Array.from(lines, ({ order }) => order / binWidth), row(frame, lines[0]!.likely), end);
      for (const { order, likely } of faint) addFaint(into, frame * speeds.length, speeds, order / binWidth, row(frame, likely), end);
    }
  }
  return scores;
}

/**
 * Each frame by itself.
 *
 * @param most  no line counts for more, nepers
 */
export function evidenceByFrame({ count, bins, binWidth, power }: WhiteFrames, most: number): EvidenceRows {
  const weighers = new Map<number, LineEvidence>();
  let rows = new Map<number, Float32Array>();
  let at = -1;
  return {
    frames: count, bins, binWidth,
    row: (frame, likely) => {
      if (frame !== at) rows = new Map();
      at = frame;
      const known = rows.get(likely);
      if (known !== undefined) return known;
      const weigh = weighers.get(likely) ?? lineEvidence(1, likely, most);
      weighers.set(likely, weigh);
      const row = new Float32Array(bins);
      for (let bin = 0; bin < bins; bin += 1) row[bin] = weigh(power[frame * bins + bin]!);
      rows.set(likely, row);
      return row;
    },
  };
}

function addHarmonics(into: Float32Array, at: number, speeds: Float64Array, places: Float64Array, row: Float32Array, end: number): void {
  for (let index = 0; index < speeds.length; index += 1) {
    const speed = speeds[index]!;
    let sum = 0;
    let best = 0;
    for (let line = 0; line < places.length; line += 1) {
      const bin = (places[line]! * speed + 0.5) | 0;
      if (bin >= end) break;
      sum += row[bin]!;
      if (sum > best) best = sum;
    }
    into[at + index]! += best;
  }
}

function addFaint(into: Float32Array, at: number, speeds: Float64Array, place: number, row: Float32Array, end: number): void {
  for (let index = 0; index < speeds.length; index += 1) {
    const bin = (place * speeds[index]! + 0.5) | 0;
    if (bin >= end) return;
    if (row[bin]! > 0) into[at + index]! += row[bin]!;
  }
}

/** Sum of some groups, for a search that trusts no others. */
export function sumOf(scores: GroupScores, some: readonly LineGroup[]): Float32Array {
  const sum = new Float32Array(scores.main.length);
  for (const group of some) {
    const own = scores[group];
    for (let index = 0; index < sum.length; index += 1) sum[index]! += own[index]!;
  }
  return sum;
}
