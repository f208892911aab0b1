import { hannWindow, realTransform } from '../spectrum/index.ts';

/** Frames of a recording: power of each bin over the noise around it, whose mean is 1 where there is noise alone. */
export interface WhiteFrames {
  readonly count: number;
  readonly bins: number;
  /** Hz from bin to bin: a third of a Hann line's width. */
  readonly binWidth: number;
  /** s between frames, and from the start to the middle of the first. */
  readonly step: number;
  readonly first: number;
  /** Seconds of a frame. */
  readonly span: number;
  readonly power: Float32Array;
  /** Noise density of each bin, as the mean of all frames: mean square of a bin of the transform. */
  readonly floor: Float64Array;
}

/** Half widths of the stretches in which the noise is taken as even: a near one, widths of a line, and a broad one, Hz. The louder counts: a smeared line is no line. */
const near = 8;
export const broad = 70;
/** Noise is never taken as less than this part of its mean over the whole: a coder's holes would ring. */
const leastFloor = 1e-6;

/**
 * Cuts a recording into Hann frames and weighs each against its own noise: the median of the bins around.
 *
 * @param span  wanted length of a frame, s; at most the whole
 * @param hop   part of a frame from one to the next
 */
export function whiteFrames(samples: Float64Array, rate: number, span: number, hop: number): WhiteFrames {
  const length = Math.min(samples.length, Math.round(span * rate));
  // Half as many bins again as samples, or more, so that no line falls between two.
  const size = 2 ** Math.ceil(Math.log2(Math.max(64, 1.45 * length)));
  const window = new Float64Array(size);
  window.set(hannWindow(length));
  const transform = realTransform(window);
  const stride = Math.max(1, Math.round(hop * length));
  const count = Math.max(1, Math.floor((samples.length - length) / stride) + 1);
  const { bins } = transform;
  const binWidth = rate / size;
  const padded = new Float64Array((count - 1) * stride + size);
  padded.set(samples.subarray(0, Math.min(samples.length, padded.length)));
  const real = new Float64Array(bins);
  const imaginary = new Float64Array(bins);
  const power = new Float32Array(count * bins);
  const floor = new Float64Array(bins);
  const own = new Float64Array(bins);
  const padding = size / length;
  // Bins of a Hann frame that lie two of its own widths apart hardly know of each other: those between them tell nothing more.
  const skip = Math.floor(2 * padding);
  const nearNoise = floorFinder(bins, Math.round(near * padding), skip, exponential);
  const broadNoise = floorFinder(bins, Math.max(Math.round(2 * near * padding), Math.round(broad / binWidth)), skip, exponential);
  for (let frame = 0; frame < count; frame += 1) {
    transform.transform(padded, frame * stride, real, imaginary);
    for (let bin = 0; bin < bins; bin += 1) own[bin] = real[bin]! * real[bin]! + imaginary[bin]! * imaginary[bin]!;
    weighFrame(own, nearNoise(own), broadNoise(own), power.subarray(frame * bins, (frame + 1) * bins), floor);
  }
  for (let bin = 0; bin < bins; bin += 1) floor[bin]! /= count;
  return { count, bins, binWidth, step: stride / rate, first: length / 2 / rate, span: length / rate, power, floor };
}

/** Each bin over the louder of its noises; the broad one is added up besides. */
function weighFrame(own: Float64Array, near: Float64Array, broad: Float64Array, into: Float32Array, sum: Float64Array): void {
  for (let bin = 0; bin < into.length; bin += 1) {
    const around = broad[bin]!;
    const found = Math.max(near[bin]!, around);
    into[bin] = found > 0 ? own[bin]! / found : 0;
    sum[bin]! += around;
  }
}

/** The middle one of the first values, which are put in another order: what is on the wrong side of a guess changes places, until only the middle is left. @source Hoare, Algorithm 65: Find, Communications of the ACM 4 (1961) (from memory) */
function middle(values: Float64Array, count: number): number {
  const wanted = count >> 1;
  for (let from = 0, until = count - 1; from < until; ) {
    const guess = values[wanted]!;
    let left = from;
    let right = until;
    while (left <= right) {
      while (values[left]! < guess) left += 1;
      while (guess < values[right]!) right -= 1;
      if (left > right) break;
      const value = values[left]!;
      values[left] = values[right]!;
      values[right] = value;
      left += 1;
      right -= 1;
    }
    if (right < wanted) from = left;
    if (wanted < left) until = right;
  }
  return values[wanted]!;
}

/** The median of an exponential law over its mean: that of the power of noise in a single frame. */
const exponential = Math.LN2;

/**
 * Medians of stretches of bins that overlap by half, joined by straight lines; its workspace is its own.
 *
 * @param half   half of a stretch, bins
 * @param skip   bins from one that is looked at to the next
 * @param median of the law that the power of noise follows, over its mean
 */
export function floorFinder(bins: number, half: number, skip: number, median: number): (power: Float64Array) => Float64Array {
  const centres = Array.from({ length: Math.ceil((bins - 1) / half) + 1 }, (_, index) => Math.min(bins - 1, index * half));
  const stretch = new Float64Array(2 * half + 1);
  const medians = new Float64Array(centres.length);
  const found = new Float64Array(bins);
  return (power) => {
    let mean = 0;
    for (let index = 0; index < centres.length; index += 1) {
      const centre = centres[index]!;
      const until = Math.min(bins, centre + half + 1);
      let count = 0;
      for (let bin = Math.max(0, centre - half); bin < until; bin += skip) stretch[count++] = power[bin]!;
      medians[index] = middle(stretch, count) / median;
      mean += medians[index]! / centres.length;
    }
    const lowest = leastFloor * mean;
    for (let index = 0; index + 1 < centres.length; index += 1) {
      const from = centres[index]!;
      const until = centres[index + 1]!;
      const a = Math.max(lowest, medians[index]!);
      const slope = until > from ? (Math.max(lowest, medians[index + 1]!) - a) / (until - from) : 0;
      for (let bin = from; bin <= until; bin += 1) found[bin] = a + slope * (bin - from);
    }
    return found;
  };
}

/** One-sided density of the noise around a bin, unit²/Hz: a windowed frame's bin has half the rate times the sum of the squared window for a density of 1. */
export const densityOf = ({ floor, span }: { readonly floor: Float64Array; readonly span: number }, bin: number, rate: number): number => floor[bin]! / ((rate / 2) * (3 / 8) * span * rate);
