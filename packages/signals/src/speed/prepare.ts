import type { Recording } from '../recording/index.ts';

/** Sampling rates are brought down to this or a little more, Hz: all lines that help lie below 4 kHz. */
const wantedRate = 8_000;
/** Taps of the filter on either side, in samples of the lower rate. */
const reach = 8;

export interface Prepared {
  /** The same stretch as it was recorded, and how many of its samples make one of the others. */
  readonly whole: Float64Array;
  readonly factor: number;
  readonly samples: Float64Array;
  /** Hz */
  readonly rate: number;
  /** s, and where in the whole recording they begin, s. */
  readonly seconds: number;
  readonly from: number;
}

/** A recording is listened to as a whole up to this length, s; of a longer one the loudest stretch is taken, s. */
export const wholeUpTo = 30;
export const stretchSeconds = 15;
/** Where such a stretch may begin, s. */
const startStep = 5;

/** The channel that is loudest somewhere, and where. */
export function loudestChannel({ rate, channels }: Recording): { readonly samples: Float64Array; readonly from: number } {
  const loudest = channels.map((samples) => ({ samples, ...loudestStretch(samples, rate) })).toSorted((a, b) => b.power - a.power)[0];
  return loudest ?? { samples: new Float64Array(0), from: 0 };
}

/** The channel with the most power, its mean taken out, at the lowest whole part of its rate that keeps 4 kHz. */
export function prepare(recording: Recording): Prepared {
  const { rate } = recording;
  const { samples: all, from } = loudestChannel(recording);
  const whole = all.subarray(from, from + stretchOf(all.length, rate));
  const factor = Math.max(1, Math.floor(rate / wantedRate));
  const lowered = factor === 1 ? whole.slice() : lower(whole, factor);
  let mean = 0;
  for (const value of lowered) mean += value;
  mean /= lowered.length;
  for (let index = 0; index < lowered.length; index += 1) lowered[index]! -= mean;
  return { whole, factor, samples: lowered, rate: rate / factor, seconds: whole.length / rate, from: from / rate };
}

/** How many samples of so many are listened to at once. */
const stretchOf = (samples: number, rate: number): number => (samples <= wholeUpTo * rate ? samples : Math.round(stretchSeconds * rate));

interface Stretch {
  /** Sample at which it begins. */
  readonly from: number;
  /** Mean square about its mean. */
  readonly power: number;
}

/** The loudest stretch that is as long as may be; the whole where that is no longer. */
function loudestStretch(samples: Float64Array, rate: number): Stretch {
  const step = Math.round(startStep * rate);
  const pieces = Math.ceil(stretchOf(samples.length, rate) / step);
  const sums = sumsOf(samples, step);
  let best: Stretch = { from: 0, power: -1 };
  for (let first = 0; first === 0 || first + pieces <= Math.floor(samples.length / step); first += 1) {
    const own = sums.slice(first, first + pieces);
    const count = own.reduce((all, each) => all + each.count, 0);
    const power = own.reduce((all, each) => all + each.square, 0) / count - (own.reduce((all, each) => all + each.sum, 0) / count) ** 2;
    if (power > best.power) best = { from: first * step, power };
  }
  return best;
}

/** Sums of samples and of their squares, piece by piece. */
function sumsOf(samples: Float64Array, step: number): readonly { readonly count: number; readonly sum: number; readonly square: number }[] {
  return Array.from({ length: Math.ceil(samples.length / step) }, (_, piece) => {
    const until = Math.min(samples.length, (piece + 1) * step);
    let sum = 0;
    let square = 0;
    for (let index = piece * step; index < until; index += 1) {
      const value = samples[index]!;
      sum += value;
      square += value * value;
    }
    return { count: until - piece * step, sum, square };
  });
}

/** Every `factor`-th sample behind a low pass: sinc under a Blackman window, cut off at 0.46 of the lower rate. */
export function lower(samples: Float64Array, factor: number): Float64Array {
  const half = reach * factor;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, index) => {
    const at = (index - half) / factor;
    const place = (index / (2 * half)) * 2 * Math.PI;
    return sinc(0.92 * at) * (0.42 - 0.5 * Math.cos(place) + 0.08 * Math.cos(2 * place));
  });
  const whole = taps.reduce((sum, tap) => sum + tap, 0);
  const even = taps.map((tap) => tap / whole);
  const out = new Float64Array(Math.floor(samples.length / factor));
  for (let index = 0; index < out.length; index += 1) {
    const from = index * factor - half;
    out[index] = from >= 0 && from + even.length <= samples.length ? mirrored(even, samples, from) : weighedAtEnd(even, 0, even.length, samples, from);
  }
  return out;
}

/** Sum of samples, each by its tap, for taps that are the same from either end, an even number to each side; two sums side by side, so that none waits for the one before. */
export function mirrored(taps: Float64Array, samples: Float64Array, from: number): number {
  const last = taps.length - 1;
  const half = last >> 1;
  let a = taps[half]! * samples[from + half]!;
  let b = 0;
  for (let tap = 0; tap < half; tap += 2) {
    a += taps[tap]! * (samples[from + tap]! + samples[from + last - tap]!);
    b += taps[tap + 1]! * (samples[from + tap + 1]! + samples[from + last - tap - 1]!);
  }
  return a + b;
}

/** Sum of samples, each by its tap, near the ends of a recording, beyond which there is nothing. */
export function weighedAtEnd(taps: Float64Array, row: number, count: number, samples: Float64Array, from: number): number {
  let sum = 0;
  for (let tap = Math.max(0, -from); tap < count && from + tap < samples.length; tap += 1) sum += taps[row + tap]! * samples[from + tap]!;
  return sum;
}

export const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
