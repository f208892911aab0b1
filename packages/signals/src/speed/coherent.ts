import { wanderOf, type Wander } from './wander.ts';
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
    found = { turns: own, speed: meanSpeed(own, rate), deviation: Math.hypot(fitted.deviation, detour * speedGained(own, 4 * size, rate)) / places.times[blocks + 1]! };
    const all = used.length === lines.length;
    if (all && largest(fitted.angle) < 2e-4) break;
    if (largest(fitted.angle) * reachOrder < 0.1 || all) reachOrder *= growth;
  }
  return found;
}

/** Nobody knows how much of the sound came by way of ground and walls: what arrives is late by so much more or less, s. A metre of detour (common practice, no source). */
const detour = 3e-3;

/** How much faster the rotor turns at the end than at the start, Hz: with it, what is late is late by another angle. */
function speedGained(turns: Turns, samples: number, rate: number): number {
  const last = turns.length - 1;
  const within = Math.min(samples, last);
  return ((turns[last]! - turns[last - within]!) - (turns[within]! - turns[0]!)) * (rate / within);
}

/** Complex amplitude of one line in each block: all blocks are turned alike, then each by where it begins. */
function demodulate(samples: Float64Array, cycles: number, size: number, blocks: number): Phasors {
  const real = new Float64Array(blocks);
  const imaginary = new Float64Array(blocks);
  const cosines = Float64Array.from({ length: size }, (_, index) => Math.cos(2 * Math.PI * ((cycles * index) % 1)));
  const sines = Float64Array.from({ length: size }, (_, index) => Math.sin(2 * Math.PI * ((cycles * index) % 1)));
  for (let block = 0; block < blocks; block += 1) {
    const from = block * size;
    let re = 0;
    let im = 0;
    for (let index = 0; index < size; index += 1) {
      const value = samples[from + index]!;
      re += value * cosines[index]!;
      im -= value * sines[index]!;
    }
    const start = 2 * Math.PI * ((cycles * from) % 1);
    const c = Math.cos(start);
    const s = Math.sin(start);
    real[block] = (2 * (re * c + im * s)) / size;
    imaginary[block] = (2 * (im * c - re * s)) / size;
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
function fit(lines: readonly FollowedLine[], phasors: readonly Phasors[], leaking: readonly (readonly Leak[])[], { beside, times }: Places, span: number): Fit | undefined {
  const blocks = beside.length - 2;
  const inBlocks = times.map((time) => time / span);
  let angle = new Float64Array(blocks);
  let last: Fit | undefined;
  let own = phasors;
  for (let pass = 0; pass < 12; pass += 1) {
    const means = lines.map(({ order }, index) => meanPhasor(own[index]!, 2 * Math.PI * order, angle));
    own = phasors.map((phasor, index) => cleaned(phasor, leaking[index]!, means, lines, angle));
    const sayings = lines.flatMap((line, index) => sayingOf(line, own[index]!, angle, span) ?? []);
    const agreed = agreement(sayings, blocks);
    if (agreed === undefined) return undefined;
    const measured = new Float64Array(blocks + 2);
    const precision = new Float64Array(blocks + 2);
    for (let block = 0; block < blocks; block += 1) {
      measured[block + 1] = beside[block + 1]! + angle[block]! + clamp(agreed.angle[block]!, 0.02);
      precision[block + 1] = agreed.weight;
    }
    const wander = wanderOf(inBlocks, measured, precision);
    if (wander === undefined) return undefined;
    const next = angle.map((_, block) => wander.angle[block + 1]! - beside[block + 1]!);
    const moves = next.map((value, block) => value - angle[block]!);
    const moved = Math.max(...moves.map(Math.abs));
    angle = next;
    last = { angle, whole: wander.angle, deviation: Math.sqrt(wander.open + scatterOf(sayings, agreed, wander, moves)) };
    if (pass > 1 && moved < 1e-6) break;
  }
  return last;
}

/** What one line says of the rest of the angle in each block, turns, and how much its noise lets that count, 1/turns². */
interface Saying {
  readonly angle: Float64Array;
  readonly weight: number;
}

/** undefined for a line that does not keep its phase. */
function sayingOf({ order, noise }: FollowedLine, phasors: Phasors, known: Float64Array, span: number): Saying | undefined {
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

interface Agreement {
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
function agreement(sayings: readonly Saying[], blocks: number): Agreement | undefined {
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
function scatterOf(sayings: readonly Saying[], { weights, weight }: Agreement, { pull, scattered }: Wander, moves: Float64Array): number {
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

/** Deviations of the normal law that hold 95 of 100. */
const normal = 1.96;

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

const clamp = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
const largest = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, Math.abs(value - values[0]!)), 0);

/** Both ends of the recording and the middles of the blocks between: when they are, and how many turns the rotor has made till then besides an even turning. */
interface Places {
  readonly times: Float64Array;
  readonly beside: Float64Array;
  /** Turns in a second of the even turning, Hz. */
  readonly even: number;
}

function placesOf(turns: Turns, size: number, blocks: number, rate: number): Places {
  const even = meanSpeed(turns, rate);
  const last = turns.length - 1;
  const times = new Float64Array(blocks + 2);
  const beside = new Float64Array(blocks + 2);
  beside[0] = turns[0]!;
  for (let block = 0, at = 0; block < blocks; block += 1) {
    const wanted = turns[0]! + (((block + 0.5) * size - 0.5) * even) / rate;
    while (at < last - 1 && turns[at + 1]! <= wanted) at += 1;
    times[block + 1] = (at + (wanted - turns[at]!) / (turns[at + 1]! - turns[at]!)) / rate;
    beside[block + 1] = wanted - even * times[block + 1]!;
  }
  times[blocks + 1] = last / rate;
  beside[blocks + 1] = turns[last]! - (even * last) / rate;
  return { times, beside, even };
}

/** Turns at each sample through these places: cubic pieces with the slopes of their neighbours. */
function turnsThrough({ times, even }: Places, beside: Float64Array, samples: number, rate: number): Turns {
  const last = times.length - 1;
  const slopes = times.map((_, at) => {
    const before = Math.max(0, at - 1);
    const behind = Math.min(last, at + 1);
    return (beside[behind]! - beside[before]!) / (times[behind]! - times[before]!);
  });
  const turns = new Float64Array(samples);
  for (let index = 0, piece = 0; index < samples; index += 1) {
    const time = index / rate;
    while (piece < last - 1 && times[piece + 1]! <= time) piece += 1;
    const span = times[piece + 1]! - times[piece]!;
    const x = (time - times[piece]!) / span;
    turns[index] = even * time + beside[piece]! * (1 + 2 * x) * (1 - x) ** 2 + beside[piece + 1]! * x * x * (3 - 2 * x) + span * (slopes[piece]! * x * (1 - x) ** 2 - slopes[piece + 1]! * x * x * (1 - x));
  }
  return turns;
}
