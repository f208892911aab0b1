import { meanPhasor, type FollowedLine, type Phasors } from './phasors.ts';
import type { Wander } from './wander.ts';

/** What one line says of the rest of the angle in each block, turns, and how much its noise lets that count, 1/turns². */
export interface Saying {
  readonly angle: Float64Array;
  readonly weight: number;
}

/** undefined for a line that does not keep its phase. */
export function sayingOf({ order, noise }: FollowedLine, phasors: Phasors, known: Float64Array, span: number): Saying | undefined {
  const { real, imaginary } = phasors;
  const turn = 2 * Math.PI * order;
  const [re, im] = meanPhasor(phasors, turn, known);
  const variance = noise / span;
  const square = re * re + im * im - (2 * variance) / known.length;
  if (!(square > (6 * variance) / known.length)) return undefined;
  const angle = known.map((value, block) => {
    const c = Math.cos(turn * value);
    const s = Math.sin(turn * value);
    return (re * (imaginary[block]! * c - real[block]! * s) - im * (real[block]! * c + imaginary[block]! * s)) / (turn * square);
  });
  return { angle, weight: (turn * turn * square) / variance };
}

export interface Agreement {
  readonly angle: Float64Array;
  readonly weight: number;
  /** What each line counts for in it. */
  readonly weights: readonly number[];
}

/** Rounds of weighing lines anew. */
const weighings = 3;
/** A line that makes nearly all of the agreement cannot be held against it. */
const alone = 0.9;

/** What all lines say together. A line that strays from the others by more than its noise counts for as much less. */
export function agreement(sayings: readonly Saying[], blocks: number): Agreement | undefined {
  let weights = sayings.map(({ weight }) => weight);
  for (let round = 0; ; round += 1) {
    const whole = weights.reduce((sum, each) => sum + each, 0);
    if (!(whole > 0)) return undefined;
    const angle = new Float64Array(blocks);
    for (const [index, saying] of sayings.entries()) for (let block = 0; block < blocks; block += 1) angle[block]! += (weights[index]! * saying.angle[block]!) / whole;
    if (round === weighings) return { angle, weight: whole, weights };
    weights = sayings.map((saying, index) => {
      const left = 1 - weights[index]! / whole;
      if (left < 1 - alone) return saying.weight;
      const stray = saying.angle.reduce((sum, value, block) => sum + (value - angle[block]!) ** 2, 0) / blocks;
      return saying.weight / Math.max(1, (saying.weight * stray) / left);
    });
  }
}

/** What the lines say apart is held together with what their noise foretells: that counts as much as so many lines that scatter as it says. */
const foretold = 8;

/**
 * Variance of the gained angle by what the lines say apart, turns²: each as a whole, however its straying hangs together in time.
 * Few lines know their own scatter badly: noise helps out, and the variance is raised so that 1.96 deviations hold as much as Student's law would.
 *
 * @source sandwich estimator of variance with one cluster a line, residuals over one minus their leverage (MacKinnon and White 1985); freedom after Satterthwaite; first term of the Cornish-Fisher expansion of Student's quantile, z + (z³ + z)/(4ν) (from memory)
 */
export function scatterOf(sayings: readonly Saying[], { weights, weight }: Agreement, { pull, scattered }: Wander, moves: Float64Array): number {
  const squares = sayings.length < 2 ? [] : sayings.map(({ angle }, index) => {
    let moved = 0;
    for (let block = 0; block < moves.length; block += 1) moved += pull[block + 1]! * (angle[block]! - moves[block]!);
    const share = weights[index]! / weight;
    // The agreement leans towards the line itself, the more the more it counts: without it, it would stray so much further.
    return ((share * moved) / Math.max(1 - alone, 1 - share)) ** 2;
  });
  const sum = squares.reduce((all, each) => all + each, 0);
  const freedom = sum > 0 ? sum ** 2 / squares.reduce((all, each) => all + each ** 2, 0) : 0;
  const student = 1 + (normal ** 2 + 1) / (4 * (foretold + freedom));
  return ((foretold * scattered + freedom * sum) / (foretold + freedom)) * student ** 2;
}

/** Sound that came by way of ground and walls is late by so much, s, where nothing says how much: a metre of detour (common practice, no source). */
const detour = 3e-3;

/** Speed in each block besides the even turning, Hz, from the places before and behind. */
export const speedsBeside = (angle: Float64Array, times: Float64Array, span: number): Float64Array =>
  Float64Array.from({ length: angle.length - 2 }, (_, block) => (angle[block + 2]! - angle[block]!) / ((times[block + 2]! - times[block]!) * span));

/**
 * How late the sound may be, s. What is late lags where the speed changes; each line has its own ways, and its own lag against
 * the others. As far as they differ, so far may all of them be late.
 */
export function lateOf(sayings: readonly Saying[], { weights, weight }: Agreement, moves: Float64Array, speeds: Float64Array): number {
  const blocks = moves.length;
  const mean = speeds.reduce((sum, each) => sum + each, 0) / blocks;
  const square = speeds.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  let [sum, count] = [detour ** 2, 1];
  for (const [index, { angle }] of sayings.entries()) {
    let lag = 0;
    for (let block = 0; block < blocks; block += 1) lag += (angle[block]! - moves[block]!) * (speeds[block]! - mean);
    const own = lag / square / Math.max(1 - alone, 1 - weights[index]! / weight);
    const noise = 1 / (weights[index]! * square);
    // A line counts as far as its lag is known: not at all where the speed hardly changes.
    const known = (detour ** 2 / (detour ** 2 + noise)) ** 2;
    if (!(known > 0)) continue;
    sum += known * (own ** 2 - noise);
    count += known;
  }
  return Math.sqrt(Math.max(0, sum / count));
}

/** Deviations of the normal law that hold 95 of 100. */
const normal = 1.96;
