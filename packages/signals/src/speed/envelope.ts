import type { BearingOrders, FlawPlace, ReadyFamily } from './comb.ts';
import type { HeardFlaw, OrderSpectrum } from './hearing.ts';
import { orderSpectrum } from './lines.ts';
import { evidenceOfAll, mostPerLine, poolFrames, type Pooled } from './look.ts';
import { lower, mirrored, sinc } from './prepare.ts';

/** Where the high frequencies begin, as a part of the sampling rate, and taps of the filter to either side. */
const cut = 1 / 6;
const taps = 24;
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
  const filter = Float64Array.from({ length: 2 * taps + 1 }, (_, index) => {
    const at = index - taps;
    const place = (index / (2 * taps)) * 2 * Math.PI;
    return 2 * cut * sinc(2 * cut * at) * (0.42 - 0.5 * Math.cos(place) + 0.08 * Math.cos(2 * place));
  });
  const gain = filter.reduce((sum, tap) => sum + tap, 0);
  const even = filter.map((tap) => tap / gain);
  const loud = new Float64Array(whole.length);
  // The ends, where the filter finds no neighbours, stay silent.
  for (let index = taps; index + taps < whole.length; index += 1) loud[index] = Math.abs(whole[index]! - mirrored(even, whole, index - taps));
  const envelope = factor === 1 ? loud : lower(loud, factor);
  const mean = envelope.reduce((sum, value) => sum + value, 0) / envelope.length;
  return envelope.map((value) => value - mean);
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
  // The surest first; its multiples are then closed to the others, or one flaw would be found in every bearing that shares a few.
  for (;;) {
    const found = bearings.flatMap(({ id, strikes }) => (Object.entries(strikes) as [FlawPlace, number][]).flatMap(([place, order]) => {
      const best = strikesNear(order, pooled, speed, evidence, closed);
      return best === undefined ? [] : [{ ...best, bearing: id, place, expected: order }];
    }));
    if (found.length === 0) break;
    const { order, evidence: odds, multiples: heard } = found.reduce((best, each) => (each.evidence > best.evidence ? each : best));
    const candidates = found.filter((each) => Math.abs(each.order - order) < width).toSorted((a, b) => Math.abs(a.expected - order) - Math.abs(b.expected - order)).map(({ bearing, place, expected }) => ({ bearing, place, order: expected }));
    flaws.push({ order, frequency: order * speed, evidence: odds, multiples: heard, candidates });
    for (let multiple = 1; multiple <= 2 * multiples; multiple += 1) close(closed, pooled, order * multiple * speed);
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

/** The order near one that is expected at which strikes are likeliest; undefined when none are heard. */
function strikesNear(expected: number, { bins, binWidth, span }: Pooled, speed: number, evidence: Float32Array, closed: Uint8Array): { readonly order: number; readonly evidence: number; readonly multiples: readonly number[] } | undefined {
  const step = (0.4 * binWidth) / (expected * speed * multiples);
  let best: { readonly order: number; readonly evidence: number; readonly multiples: readonly number[] } | undefined;
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
  return net > toldFrom ? { ...best, evidence: net } : undefined;
}
