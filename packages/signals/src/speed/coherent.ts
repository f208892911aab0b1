import { wanderOf } from './wander.ts';
import { sinc } from './prepare.ts';
import { meanSpeed, type Turns } from './straighten.ts';

/** A line that is followed by its phase. */
export interface FollowedLine {
  readonly order: number;
  /** One-sided noise density around it, unit²/Hz. */
  readonly noise: number;
}

export interface Followed {
  readonly turns: Turns;
  /** Mean speed over all of the recording and its standard deviation, Hz. */
  readonly speed: number;
  readonly deviation: number;
}

/** Length of the blocks whose phases are compared, s. */
const blockSpan = 0.125;
/** Orders followed first, and how far more are taken in from round to round. */
const firstOrder = 14;
const growth = 3;

interface Phasors {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/**
 * Follows the phases of all lines at once through a recording that has been straightened: low orders first, because high ones
 * turn over sooner. What they agree on is the rest of the rotor's angle.
 *
 * @param straighten  samples of the recording, even in the angle of these turns
 * @param lines       as many as were heard
 * @returns           undefined when no line keeps its phase
 * @source information on speed of lines in white noise: J = Σ π²A²o²T³/(3N)
 */
export function follow(turns: Turns, straighten: (turns: Turns) => Float64Array, rate: number, lines: readonly FollowedLine[], rounds = 8): Followed | undefined {
  const blocks = Math.round(turns.length / rate / blockSpan);
  if (blocks < 4) return undefined;
  const size = Math.floor(turns.length / blocks);
  const lowest = Math.min(...lines.map(({ order }) => order));
  let reachOrder = Math.max(firstOrder, 2 * lowest);
  let own = turns;
  let found: Followed | undefined;
  for (let round = 0; round < rounds; round += 1) {
    const straight = straighten(own);
    const speed = meanSpeed(own, rate);
    const used = lines.filter(({ order }) => order <= reachOrder);
    const phasors = used.map(({ order }) => demodulate(straight, (order * speed) / rate, size, blocks));
    const places = placesOf(own, size, blocks, rate);
    const fitted = fit(used, phasors, leaks(used, speed, size / rate), places, size / rate);
    if (fitted === undefined) {
      // Nothing holds its phase among the low ones: higher ones may.
      if (found === undefined && used.length < lines.length) {
        reachOrder *= growth;
        continue;
      }
      return found;
    }
    own = turnsThrough(places, fitted.whole, turns.length, rate);
    found = { turns: own, speed: meanSpeed(own, rate), deviation: Math.hypot(fitted.deviation, endDeviation(own, size)) / (places.times[blocks - 1]! - places.times[0]!) };
    const all = used.length === lines.length;
    if (all && largest(fitted.angle) < 2e-4) break;
    if (largest(fitted.angle) * reachOrder < 0.1 || all) reachOrder *= growth;
  }
  return found;
}

/** Complex amplitude of one line in each block. */
function demodulate(samples: Float64Array, cycles: number, size: number, blocks: number): Phasors {
  const real = new Float64Array(blocks);
  const imaginary = new Float64Array(blocks);
  const turnRe = Math.cos(2 * Math.PI * cycles);
  const turnIm = Math.sin(2 * Math.PI * cycles);
  for (let block = 0; block < blocks; block += 1) {
    const from = block * size;
    const start = 2 * Math.PI * ((cycles * from) % 1);
    let c = Math.cos(start);
    let s = Math.sin(start);
    let re = 0;
    let im = 0;
    for (let index = from; index < from + size; index += 1) {
      const value = samples[index]!;
      re += value * c;
      im -= value * s;
      const next = c * turnRe - s * turnIm;
      s = s * turnRe + c * turnIm;
      c = next;
    }
    real[block] = (2 * re) / size;
    imaginary[block] = (2 * im) / size;
  }
  return { real, imaginary };
}

/** What a line lets through of another that is near, in each block: the mean of the turning between the two. */
interface Leak {
  readonly other: number;
  /** Turns of the other against this one in a block, and its mean over a block. */
  readonly cycles: number;
  readonly mean: number;
}

/** Lines further apart than this do not mind each other, blocks. */
const farthest = 24;

function leaks(lines: readonly FollowedLine[], speed: number, span: number): readonly (readonly Leak[])[] {
  return lines.map(({ order }, own) =>
    lines.flatMap(({ order: otherOrder }, other) => {
      const cycles = (otherOrder - order) * speed * span;
      return other === own || Math.abs(cycles) > farthest ? [] : [{ other, cycles, mean: sinc(cycles) }];
    }),
  );
}

interface Fit {
  /** What the lines say besides the turns they were straightened by, and all of it besides an even turning. */
  readonly angle: Float64Array;
  readonly whole: Float64Array;
  readonly deviation: number;
}

/** The angle that the lines agree on, each with its own steady amplitude and phase; what they let through of each other is taken off. */
function fit(lines: readonly FollowedLine[], phasors: readonly Phasors[], leaking: readonly (readonly Leak[])[], { beside }: Places, span: number): Fit | undefined {
  const blocks = beside.length;
  let angle = new Float64Array(blocks);
  let last: Fit | undefined;
  let own = phasors;
  for (let pass = 0; pass < 12; pass += 1) {
    const slope = new Float64Array(blocks);
    const weight = new Float64Array(blocks);
    const means = lines.map(({ order }, index) => meanPhasor(own[index]!, 2 * Math.PI * order, angle));
    own = phasors.map((phasor, index) => cleaned(phasor, leaking[index]!, means, lines, angle));
    for (const [index, { order, noise }] of lines.entries()) {
      const { real, imaginary } = own[index]!;
      const turn = 2 * Math.PI * order;
      const [re, im] = meanPhasor(own[index]!, turn, angle);
      const variance = noise / span;
      const square = re * re + im * im - (2 * variance) / blocks;
      if (!(square > (6 * variance) / blocks)) continue;
      for (let block = 0; block < blocks; block += 1) {
        const c = Math.cos(turn * angle[block]!);
        const s = Math.sin(turn * angle[block]!);
        const zr = real[block]! * c + imaginary[block]! * s;
        const zi = imaginary[block]! * c - real[block]! * s;
        slope[block]! += (turn * (re * zi - im * zr)) / variance;
        weight[block]! += (turn * turn * square) / variance;
      }
    }
    if (weight.every((value) => value === 0)) return undefined;
    const measured = Float64Array.from(angle, (value, block) => beside[block]! + value + clamp(slope[block]! / weight[block]!, 0.02));
    const wander = wanderOf(measured, weight);
    if (wander === undefined) return undefined;
    const next = wander.angle.map((value, block) => value - beside[block]!);
    const moved = Math.max(...next.map((value, block) => Math.abs(value - angle[block]!)));
    angle = next;
    last = { angle, whole: wander.angle, deviation: wander.deviation };
    if (pass > 1 && moved < 1e-6) break;
  }
  return last;
}

/** Steady part of a line, the angle taken out. */
function meanPhasor({ real, imaginary }: Phasors, turn: number, angle: Float64Array): readonly [number, number] {
  let re = 0;
  let im = 0;
  for (let block = 0; block < angle.length; block += 1) {
    const c = Math.cos(turn * angle[block]!);
    const s = Math.sin(turn * angle[block]!);
    re += real[block]! * c + imaginary[block]! * s;
    im += imaginary[block]! * c - real[block]! * s;
  }
  return [re / angle.length, im / angle.length];
}

function cleaned({ real, imaginary }: Phasors, leaking: readonly Leak[], means: readonly (readonly [number, number])[], lines: readonly FollowedLine[], angle: Float64Array): Phasors {
  const re = real.slice();
  const im = imaginary.slice();
  for (const { other, cycles, mean } of leaking) {
    const [a, b] = means[other]!;
    const turn = 2 * Math.PI * lines[other]!.order;
    for (let block = 0; block < re.length; block += 1) {
      const phase = 2 * Math.PI * cycles * (block + 0.5) + turn * angle[block]!;
      const c = mean * Math.cos(phase);
      const s = mean * Math.sin(phase);
      re[block]! -= a * c - b * s;
      im[block]! -= a * s + b * c;
    }
  }
  return { real: re, imaginary: im };
}

/** Part of the usual bend from block to block by which both ends together may be out; set by the made-up recordings of the benchmark. */
const beyond = 1.8;

/** How far the angle may be out at both ends, turns: half a block beyond the last middle, where the speed may have changed as it does elsewhere. */
function endDeviation(turns: Turns, size: number): number {
  let square = 0;
  let count = 0;
  for (let at = 2 * size; at < turns.length; at += size, count += 1) square += (turns[at]! - 2 * turns[at - size]! + turns[at - 2 * size]!) ** 2;
  return count === 0 ? 0 : beyond * Math.sqrt(square / count);
}

const clamp = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
const largest = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, Math.abs(value - values[0]!)), 0);

/** The middles of the blocks: when they are, and how many turns the rotor has made till then besides an even turning. */
interface Places {
  readonly times: Float64Array;
  readonly beside: Float64Array;
  /** Turns in a second of the even turning, Hz. */
  readonly even: number;
}

function placesOf(turns: Turns, size: number, blocks: number, rate: number): Places {
  const even = meanSpeed(turns, rate);
  const times = new Float64Array(blocks);
  const beside = new Float64Array(blocks);
  for (let block = 0, at = 0; block < blocks; block += 1) {
    const wanted = turns[0]! + (((block + 0.5) * size - 0.5) * even) / rate;
    while (at < turns.length - 2 && turns[at + 1]! <= wanted) at += 1;
    times[block] = (at + (wanted - turns[at]!) / (turns[at + 1]! - turns[at]!)) / rate;
    beside[block] = wanted - even * times[block]!;
  }
  return { times, beside, even };
}

/** Turns at each sample through the middles of the blocks: cubic pieces with the slopes of their neighbours, straight on beyond the ends. */
function turnsThrough({ times, even }: Places, beside: Float64Array, samples: number, rate: number): Turns {
  const last = times.length - 1;
  const slopes = times.map((_, at) => {
    const before = Math.max(0, at - 1);
    const behind = Math.min(last, at + 1);
    return (beside[behind]! - beside[before]!) / (times[behind]! - times[before]!);
  });
  // At the ends the slope goes on as it bends inside.
  slopes[0] = 2 * slopes[0]! - slopes[1]!;
  slopes[last] = 2 * slopes[last]! - slopes[last - 1]!;
  const turns = new Float64Array(samples);
  for (let index = 0, piece = 0; index < samples; index += 1) {
    const time = index / rate;
    while (piece < last - 1 && times[piece + 1]! <= time) piece += 1;
    const span = times[piece + 1]! - times[piece]!;
    const x = (time - times[piece]!) / span;
    const extra = x < 0 ? beside[0]! + slopes[0]! * (time - times[0]!) : x > 1 ? beside[last]! + slopes[last]! * (time - times[last]!)
      : beside[piece]! * (1 + 2 * x) * (1 - x) ** 2 + beside[piece + 1]! * x * x * (3 - 2 * x) + span * (slopes[piece]! * x * (1 - x) ** 2 - slopes[piece + 1]! * x * x * (1 - x));
    turns[index] = even * time + extra;
  }
  return turns;
}
