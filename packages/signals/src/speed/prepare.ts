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

/** Of a longer recording the loudest stretch of this length is taken, s. */
export const mostSeconds = 30;
/** Where such a stretch may begin, s. */
const startStep = 5;

/** The channel with the most power, its mean taken out, at the lowest whole part of its rate that keeps 4 kHz. */
export function prepare({ rate, channels }: Recording): Prepared {
  const loudest = channels.reduce<{ readonly samples: Float64Array; readonly power: number } | undefined>((best, samples) => {
    const power = powerOf(samples);
    return best === undefined || power > best.power ? { samples, power } : best;
  }, undefined);
  const whole = loudest?.samples ?? new Float64Array(0);
  const from = loudestStart(whole, rate);
  const samples = whole.subarray(from, from + Math.round(mostSeconds * rate));
  const factor = Math.max(1, Math.floor(rate / wantedRate));
  const lowered = factor === 1 ? samples.slice() : lower(samples, factor);
  let mean = 0;
  for (const value of lowered) mean += value;
  mean /= lowered.length;
  for (let index = 0; index < lowered.length; index += 1) lowered[index]! -= mean;
  return { whole: samples, factor, samples: lowered, rate: rate / factor, seconds: samples.length / rate, from: from / rate };
}

/** Sample at which the loudest stretch begins; the first where all of it is taken. */
function loudestStart(samples: Float64Array, rate: number): number {
  const length = Math.round(mostSeconds * rate);
  let best = { from: 0, power: -1 };
  for (let from = 0; from + length <= samples.length; from += Math.round(startStep * rate)) {
    const power = powerOf(samples.subarray(from, from + length));
    if (power > best.power) best = { from, power };
  }
  return best.from;
}

function powerOf(samples: Float64Array): number {
  let sum = 0;
  let square = 0;
  for (const value of samples) {
    sum += value;
    square += value * value;
  }
  return square / samples.length - (sum / samples.length) ** 2;
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
  const out = new Float64Array(Math.floor(samples.length / factor));
  for (let index = 0; index < out.length; index += 1) {
    const from = index * factor - half;
    let sum = 0;
    if (from >= 0 && from + taps.length <= samples.length) for (let tap = 0; tap < taps.length; tap += 1) sum += taps[tap]! * samples[from + tap]!;
    else for (let tap = Math.max(0, -from); tap < taps.length && from + tap < samples.length; tap += 1) sum += taps[tap]! * samples[from + tap]!;
    out[index] = sum / whole;
  }
  return out;
}

export const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
