import type { BearingOrders, FlawPlace, ReadyFamily } from './comb.ts';
import type { HeardFlaw, OrderSpectrum } from './hearing.ts';
import { orderSpectrum } from './lines.ts';
import { evidenceOfAll, meanPower, mostPerLine, poolFrames, type Pooled } from './look.ts';
import { lower, mirrored, sinc } from './prepare.ts';

/** Where the high frequencies begin, Hz: above the machine's own lines; in slow recordings at this part of the sampling rate. */
const cut = 5000;
const slowCut = 1 / 6;
/** What lies far above is noise: the rate is brought down to this or a little more first, Hz, where it divides. */
const enoughRate = 22_000;
/** How long the filter reaches to either side, s. */
const reach = 1e-3;
/** Recordings slower than this have no high frequencies in which a bearing rings, Hz (common practice, no source). */
const leastRate = 6000;

/** How far the strikes may lie from those that the file's sizes say: slip, and balls of another size. */
const window = 0.03;
const multiples = 6;
const likely = 0.55;
/** Odds from which a flaw is told, what was searched through taken off, nepers; and how many of its multiples must stand out. */
const toldFrom = 10;
const leastMultiples = 2;
/** A multiple stands out from this evidence on, nepers. */
const standsFrom = 3;
/** Multiples of shafts that are closed: what is out of balance makes these louder and softer by itself. */
const shaftMultiples = 12;
/** Orders nearer than this, in widths of a line, are one. */
const widths = 1.5;

/** How loud the high frequencies are over time, at the lower rate; undefined when there are none. */
export function envelopeOf(whole: Float64Array, rate: number, factor: number): Float64Array | undefined {
  if (rate < leastRate) return undefined;
  const first = Array.from({ length: factor }, (_, index) => factor - index).find((each) => factor % each === 0 && rate / each >= enoughRate) ?? 1;
  const loud = loudness(first === 1 ? whole : lower(whole, first), rate / first);
  const envelope = factor === first ? loud : lower(loud, factor / first);
  const mean = envelope.reduce((sum, value) => sum + value, 0) / envelope.length;
  return envelope.map((value) => value - mean);
}

/** Size of what is left of each sample when a low pass, a sinc under a Blackman window, is taken off. */
function loudness(samples: Float64Array, rate: number): Float64Array {
  const part = Math.min(slowCut, cut / rate);
  const taps = 2 * Math.ceil((reach * rate) / 2);
  const filter = Float64Array.from({ length: 2 * taps + 1 }, (_, index) => {
    const place = (index / (2 * taps)) * 2 * Math.PI;
    return sinc(2 * part * (index - taps)) * (0.42 - 0.5 * Math.cos(place) + 0.08 * Math.cos(2 * place));
  });
  const gain = filter.reduce((sum, tap) => sum + tap, 0);
  const even = filter.map((tap) => tap / gain);
  const loud = new Float64Array(samples.length);
  // The ends, where the filter finds no neighbours, stay silent.
  for (let index = taps; index + taps < samples.length; index += 1) loud[index] = Math.abs(samples[index]! - mirrored(even, samples, index - taps));
  return loud;
}

export interface Envelope {
  readonly flaws: readonly HeardFlaw[];
  readonly spectrum: OrderSpectrum;
}

/**
 * Looks for the strikes of bearing flaws in the loudness of the high frequencies, straightened along the rotor's angle.
 *
 * @param straight  the envelope, even in the rotor's angle
 * @param speed     turns of the main rotor in a second, Hz
 */
export function flawsIn(straight: Float64Array, rate: number, speed: number, bearings: readonly BearingOrders[], families: readonly ReadyFamily[], shafts: readonly number[]): Envelope {
  const pooled = poolFrames(straight, rate);
  const closed = closedBins(pooled, speed, families, shafts);
  const evidence = evidenceOfAll(pooled, mostPerLine).row(0, likely);
  const flaws: HeardFlaw[] = [];
  const width = widths / pooled.span / speed;
  // What explains most first; all its multiples are then closed to the others, or one flaw would be found in every bearing that shares a few.
  for (;;) {
    const found = bearings.flatMap(({ id, strikes }) => (Object.entries(strikes) as [FlawPlace, number][]).flatMap(([place, order]) => {
      const best = strikesNear(order, pooled, speed, evidence, closed);
      return best === undefined ? [] : [{ ...best, bearing: id, place, expected: order }];
    }));
    if (found.length === 0) break;
    const { order, evidence: odds, multiples: heard } = found.reduce((best, each) => (each.explained > best.explained ? each : best));
    const candidates = found.filter((each) => Math.abs(each.order - order) < width).toSorted((a, b) => Math.abs(a.expected - order) - Math.abs(b.expected - order)).map(({ bearing, place, expected }) => ({ bearing, place, order: expected }));
    flaws.push({ order, frequency: order * speed, evidence: odds, multiples: heard, candidates });
    for (let multiple = 1; order * multiple * speed < pooled.bins * pooled.binWidth; multiple += 1) close(closed, pooled, order * multiple * speed);
  }
  return { flaws, spectrum: orderSpectrum(pooled, speed) };
}

/** Bins that something of the machine has that is no bearing. */
function closedBins(pooled: Pooled, speed: number, families: readonly ReadyFamily[], shafts: readonly number[]): Uint8Array {
  const closed = new Uint8Array(pooled.bins);
  close(closed, pooled, 0);
  for (const { family } of families) {
    for (let multiple = 1; multiple <= 2 * family.harmonics; multiple += 1) close(closed, pooled, family.order * multiple * speed);
    for (const order of family.faint ?? []) close(closed, pooled, order * speed);
  }
  for (const order of shafts) for (let multiple = 1; multiple <= shaftMultiples; multiple += 1) close(closed, pooled, order * multiple * speed);
  return closed;
}

/** Closes what a line at this frequency fills, Hz. */
function close(closed: Uint8Array, { bins, binWidth, span }: Pooled, frequency: number): void {
  const reach = Math.ceil(widths / span / binWidth);
  const bin = Math.round(frequency / binWidth);
  closed.fill(1, Math.max(0, bin - reach), Math.min(bins, bin + reach + 1));
}

interface Strikes {
  readonly order: number;
  readonly evidence: number;
  readonly multiples: readonly number[];
  /** Evidence of its multiples up to the one at which that is most, nepers. */
  readonly explained: number;
}

/** The order near one that is expected at which strikes are likeliest; undefined when none are heard. */
function strikesNear(expected: number, pooled: Pooled, speed: number, evidence: Float32Array, closed: Uint8Array): Strikes | undefined {
  const { bins, binWidth, span } = pooled;
  const step = (0.4 * binWidth) / (expected * speed * multiples);
  let best: Pick<Strikes, 'order' | 'evidence' | 'multiples'> | undefined;
  for (let away = -window; away <= window; away += step) {
    const order = expected * (1 + away);
    const standing: number[] = [];
    let [sum, highest, upTo] = [0, 0, 0];
    for (let multiple = 1; multiple <= multiples; multiple += 1) {
      const bin = Math.round((order * multiple * speed) / binWidth);
      if (bin >= bins - 1) break;
      if (closed[bin] === 1) continue;
      sum += evidence[bin]!;
      if (evidence[bin]! > standsFrom) standing.push(multiple);
      if (sum > highest) [highest, upTo] = [sum, multiple];
    }
    const heard = standing.filter((multiple) => multiple <= upTo);
    if (heard.length >= leastMultiples && (best === undefined || highest > best.evidence)) best = { order, evidence: highest, multiples: heard };
  }
  if (best === undefined) return undefined;
  // As many places as the highest of its multiples could tell apart.
  const tries = 2 * window * expected * speed * best.multiples.at(-1)! * span;
  const net = best.evidence - Math.log(Math.max(1, tries));
  if (!(net > toldFrom)) return undefined;
  const order = sharpened(best.order, pooled, speed);
  let [sum, explained] = [0, 0];
  for (let multiple = 1; ; multiple += 1) {
    const bin = Math.round((order * multiple * speed) / binWidth);
    if (bin >= bins - 1) break;
    // Those that are missing count against it: half the order explains the same lines, and every second is not there.
    if (closed[bin] === 0) sum += evidence[bin]!;
    explained = Math.max(explained, sum);
  }
  return { ...best, order, evidence: net, explained };
}

/** Multiples that sharpen an order, and how far it may move and in which steps, as parts of the width of a line at the highest that was searched. */
const sharpMultiples = 2 * multiples;
const sharpReach = 0.75;
const sharpStep = 0.02;

/** The order at which all multiples together stand highest. Logarithms: none outvotes the others. */
function sharpened(order: number, pooled: Pooled, speed: number): number {
  const line = widths / pooled.span / speed / multiples;
  let best = { order, sum: -Infinity };
  for (let away = -sharpReach; away <= sharpReach; away += sharpStep) {
    const own = order + away * line;
    let sum = 0;
    for (let multiple = 1; multiple <= sharpMultiples; multiple += 1) {
      const at = (own * multiple * speed) / pooled.binWidth;
      const bin = Math.floor(at);
      if (bin + 1 >= pooled.bins) break;
      const here = meanPower(pooled, bin);
      sum += Math.log1p(here + (at - bin) * (meanPower(pooled, bin + 1) - here));
    }
    if (sum > best.sum) best = { order: own, sum };
  }
  return best.order;
}
