import { agreement, lateOf, sayingOf, scatterOf, speedsBeside } from './agreement.ts';
import { cleaned, demodulate, leaks, meanPhasor, steadyPart, type FollowedLine, type Leak, type Phasors } from './phasors.ts';
import { smearedRuns, straightThrough, worthOfBlocks } from './smeared.ts';
import { meanSpeed, type Turns } from './straighten.ts';
import { wanderOf, type Size } from './wander.ts';

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
/** Where the lines lose their phases for a while, an angle that runs straight through is tried for so many rounds; it must be worth this much more, nepers. */
const again = 3;
const worthTrying = 14;

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
  let before: { readonly found: Followed; readonly worth: number } | undefined;
  let worth = -Infinity;
  const better = (): Followed | undefined => (before !== undefined && worth < before.worth + worthTrying ? before.found : found);
  for (let round = 0; round < rounds + (before === undefined ? 0 : again); round += 1) {
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
      return better();
    }
    own = turnsThrough(places, fitted.whole, turns.length, rate);
    found = { turns: own, speed: meanSpeed(own, rate), deviation: Math.hypot(fitted.deviation, fitted.late * speedGained(own, 4 * size, rate)) / places.times[blocks + 1]! };
    const all = used.length === lines.length;
    if (all) {
      const each = worthOfBlocks(used, fitted.cleaned, fitted.angle, size / rate);
      worth = each.reduce((sum, value) => sum + value, 0);
      const runs = before === undefined ? smearedRuns(each) : [];
      if (runs.length > 0) {
        before = { found, worth };
        own = turnsThrough(places, straightThrough(places.times, fitted.whole, runs), turns.length, rate);
        continue;
      }
      if (largest(fitted.angle) < 2e-4) break;
    }
    if (largest(fitted.angle) * reachOrder < 0.1 || all) reachOrder *= growth;
  }
  return better();
}

/** How much faster the rotor turns at the end than at the start, Hz: with it, what is late is late by another angle. */
function speedGained(turns: Turns, samples: number, rate: number): number {
  const last = turns.length - 1;
  const within = Math.min(samples, last);
  return ((turns[last]! - turns[last - within]!) - (turns[within]! - turns[0]!)) * (rate / within);
}

/** From this pass on only those sizes of wander and shake are asked that told something the pass before. */
const settling = 2;

interface Fit {
  /** What the lines say besides the turns they were straightened by, and all of it besides an even turning. */
  readonly angle: Float64Array;
  readonly whole: Float64Array;
  readonly deviation: number;
  /** How late the sound may be, s, standard deviation. */
  readonly late: number;
  /** What the lines do without each other. */
  readonly cleaned: readonly Phasors[];
}

/** The angle that the lines agree on, each with its own steady amplitude and phase; what they let through of each other is taken off. */
function fit(lines: readonly FollowedLine[], phasors: readonly Phasors[], leaking: readonly (readonly Leak[])[], { beside, times }: Places, span: number): Fit | undefined {
  const blocks = beside.length - 2;
  const inBlocks = times.map((time) => time / span);
  let angle = new Float64Array(blocks);
  let last: Fit | undefined;
  let own = phasors;
  let sizes: readonly Size[] | undefined;
  for (let pass = 0; pass < 12; pass += 1) {
    const steady = lines.map(({ order }, index) => steadyPart(meanPhasor(own[index]!, 2 * Math.PI * order, angle), 2 * Math.PI * order, angle));
    own = phasors.map((phasor, index) => cleaned(phasor, leaking[index]!, steady));
    const sayings = lines.flatMap((line, index) => sayingOf(line, own[index]!, angle, span) ?? []);
    const agreed = agreement(sayings, blocks);
    if (agreed === undefined) return undefined;
    const measured = new Float64Array(blocks + 2);
    const precision = new Float64Array(blocks + 2);
    for (let block = 0; block < blocks; block += 1) {
      measured[block + 1] = beside[block + 1]! + angle[block]! + clamp(agreed.angle[block]!, 0.02);
      precision[block + 1] = agreed.weight;
    }
    const wander = wanderOf(inBlocks, measured, precision, pass < settling ? undefined : sizes);
    if (wander === undefined) return undefined;
    sizes = wander.sizes;
    const next = angle.map((_, block) => wander.angle[block + 1]! - beside[block + 1]!);
    const moves = next.map((value, block) => value - angle[block]!);
    const moved = Math.max(...moves.map(Math.abs));
    angle = next;
    last = { angle, cleaned: own, whole: wander.angle, deviation: Math.sqrt(wander.open + scatterOf(sayings, agreed, wander, moves)), late: lateOf(sayings, agreed, moves, speedsBeside(wander.angle, inBlocks, span)) };
    if (pass > 1 && moved < 1e-6) break;
  }
  return last;
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
