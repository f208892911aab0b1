import { meanPhasor, type FollowedLine, type Phasors } from './phasors.ts';

/** A block is smeared when its phases are worth less than this part of what they are in the middle one. */
const smeared = 0.5;
/** Where more of the recording than this is smeared, it is no slip of the path, part of all blocks. */
const mostSmeared = 0.25;

/** Blocks one after the other: the first, and the one behind the last. */
export type Run = readonly [from: number, until: number];

/**
 * What the phases of all lines are worth in each block, along the angle that was followed: logarithm of the odds against noise, nepers.
 *
 * @param phasors  of each line, block after block
 * @param angle    turns, one a block
 * @param span     of a block, s
 */
export function worthOfBlocks(lines: readonly FollowedLine[], phasors: readonly Phasors[], angle: Float64Array, span: number): Float64Array {
  const worth = new Float64Array(angle.length);
  for (const [index, { order, noise }] of lines.entries()) {
    const { real, imaginary } = phasors[index]!;
    const turn = 2 * Math.PI * order;
    const [re, im] = meanPhasor(phasors[index]!, turn, angle);
    const variance = noise / span;
    for (let block = 0; block < angle.length; block += 1) {
      const c = Math.cos(turn * angle[block]!);
      const s = Math.sin(turn * angle[block]!);
      worth[block]! += (real[block]! * (re * c - im * s) + imaginary[block]! * (re * s + im * c)) / variance;
    }
  }
  return worth;
}

/** Blocks in which the lines lose their phases. There the angle may have lost or gained turns; or nothing is to be heard. */
export function smearedRuns(worth: Float64Array): readonly Run[] {
  const least = smeared * worth.slice().sort()[worth.length >> 1]!;
  const runs: Run[] = [];
  for (let from = 0; from < worth.length; from += 1) {
    let until = from;
    while (until < worth.length && worth[until]! < least) until += 1;
    if (until > from) runs.push([from, until]);
    from = until;
  }
  const all = runs.reduce((sum, [from, until]) => sum + until - from, 0);
  return all > mostSmeared * worth.length ? [] : runs;
}

/**
 * The angle, but straight through some blocks: as fast as the rotor turns beside them. What lies behind is moved along.
 *
 * @param times  of the places: the start, the middle of each block, the end
 * @param whole  turns, one a place
 */
export function straightThrough(times: Float64Array, whole: Float64Array, runs: readonly Run[]): Float64Array {
  const last = whole.length - 1;
  const straight = whole.slice();
  for (const [from, until] of runs) {
    // Places of a run are one behind its blocks; a run at an end takes the end along.
    const [first, behind] = [from === 0 ? 0 : from + 1, until + 1 === last ? last + 1 : until + 1];
    const slopes = [...(first >= 2 ? [slope(times, whole, first - 2, first - 1)] : []), ...(behind + 1 <= last ? [slope(times, whole, behind, behind + 1)] : [])];
    const speed = slopes.reduce((sum, each) => sum + each, 0) / Math.max(1, slopes.length);
    if (first === 0) {
      const at = straight[behind]!;
      for (let place = 0; place < behind; place += 1) straight[place] = at - speed * (times[behind]! - times[place]!);
      continue;
    }
    const at = straight[first - 1]!;
    const before = straight[Math.min(last, behind)]!;
    for (let place = first; place <= Math.min(last, behind); place += 1) straight[place] = at + speed * (times[place]! - times[first - 1]!);
    const moved = straight[Math.min(last, behind)]! - before;
    for (let place = behind + 1; place <= last; place += 1) straight[place]! += moved;
  }
  return straight;
}

const slope = (times: Float64Array, whole: Float64Array, from: number, until: number): number => (whole[until]! - whole[from]!) / (times[until]! - times[from]!);
