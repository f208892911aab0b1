/** Fourier transform of real frames of one size; holds its tables and its workspace, so that frames cost no memory. */
export interface RealTransform {
  /** Samples in a frame: a power of two, 4 or more. */
  readonly size: number;
  /** Number of frequencies from 0 up to half the sampling rate: size/2 + 1. */
  readonly bins: number;
  /**
   * Squared magnitude of the transform of windowed samples, for each frequency.
   *
   * @param samples  read from `from` on
   * @param window   factor for each sample of the frame
   * @param into     `bins` numbers, overwritten
   */
  power(samples: Float64Array, from: number, window: Float64Array, into: Float64Array): void;
  /**
   * As `power`, for a row of frames: adds the squares to a sum, and keeps the magnitudes.
   *
   * @param sum         `bins` numbers, added to
   * @param magnitudes  `bins` numbers from `at` on, overwritten
   */
  gather(samples: Float64Array, from: number, window: Float64Array, sum: Float64Array, magnitudes: Float64Array, at: number): void;
  /** The transform itself: real and imaginary parts, `bins` numbers each, overwritten. */
  transform(samples: Float64Array, from: number, window: Float64Array, real: Float64Array, imaginary: Float64Array): void;
}

interface Stage {
  readonly radix: 2 | 4 | 8;
  /** Transforms that are still to be joined, and how far apart their values lie. */
  readonly count: number;
  readonly stride: number;
  /** Where its twiddle factors begin. */
  readonly factors: number;
}

/** Workspaces are of this many numbers more: rows at powers of two apart would fight for the same lines of the cache. */
const shift = 24;

/**
 * @param size  a power of two, 4 to 2²²
 * @throws RangeError for any other size
 * @source Stockham's self-sorting transform, eight at a time, of half the size, then the real split (from memory)
 * @example realTransform(8).bins // 5
 */
export function realTransform(size: number): RealTransform {
  if (!Number.isInteger(size) || size < 4 || size > 2 ** 22 || (size & (size - 1)) !== 0) throw new RangeError(`realTransform: the size must be a power of two from 4 to 4194304; got ${size}`);
  const half = size / 2;
  const bins = half + 1;
  const { stages, factors } = stagesOf(half);
  const splitReal = new Float64Array(half);
  const splitImaginary = new Float64Array(half);
  for (let k = 0; k < half; k += 1) {
    splitReal[k] = Math.cos((2 * Math.PI * k) / size);
    splitImaginary[k] = -Math.sin((2 * Math.PI * k) / size);
  }
  const workspace = new Float64Array(4 * (half + shift));
  const piece = (index: number): Float64Array => workspace.subarray(index * (half + shift), index * (half + shift) + half);
  const [realA, imaginaryA, realB, imaginaryB] = [piece(0), piece(1), piece(2), piece(3)];

  /** Even samples as real parts, odd ones as imaginary; transformed. Returns true when the result lies in the second pair. */
  const packed = (samples: Float64Array, from: number, window: Float64Array): boolean => {
    const [first] = stages;
    let swapped = false;
    let done = 0;
    if (first?.radix === 8) {
      loadEight(samples, from, window, realB, imaginaryB, first.count, factors);
      swapped = true;
      done = 1;
    } else load(samples, from, window, realA, imaginaryA);
    for (let stage = done; stage < stages.length; stage += 1) {
      const { radix, count, stride, factors: at } = stages[stage]!;
      const [xr, xi, yr, yi] = swapped ? [realB, imaginaryB, realA, imaginaryA] : [realA, imaginaryA, realB, imaginaryB];
      if (radix === 2) joinTwo(xr, xi, yr, yi, stride);
      else if (radix === 8) joinEight(xr, xi, yr, yi, count, stride, factors, at);
      else joinFour(xr, xi, yr, yi, count, stride, factors, at);
      swapped = !swapped;
    }
    return swapped;
  };

  return {
    size, bins,
    power(samples, from, window, into) {
      const swapped = packed(samples, from, window);
      splitPower(swapped ? realB : realA, swapped ? imaginaryB : imaginaryA, splitReal, splitImaginary, into);
    },
    gather(samples, from, window, sum, magnitudes, at) {
      const swapped = packed(samples, from, window);
      splitInto(swapped ? realB : realA, swapped ? imaginaryB : imaginaryA, splitReal, splitImaginary, sum, magnitudes, at);
    },
    transform(samples, from, window, real, imaginary) {
      const swapped = packed(samples, from, window);
      split(swapped ? realB : realA, swapped ? imaginaryB : imaginaryA, splitReal, splitImaginary, real, imaginary);
    },
  };
}

function stagesOf(length: number): { readonly stages: readonly Stage[]; readonly factors: Float64Array } {
  const stages: Stage[] = [];
  let factorCount = 0;
  for (let left = length, stride = 1; left > 1; ) {
    const radix = left % 8 === 0 ? 8 : left % 4 === 0 ? 4 : 2;
    const count = left / radix;
    stages.push({ radix, count, stride, factors: factorCount });
    if (radix > 2) factorCount += 2 * (radix - 1) * count;
    left = count;
    stride *= radix;
  }
  const factors = new Float64Array(factorCount);
  for (const { radix, count, factors: from } of stages) {
    if (radix === 2) continue;
    for (let p = 0, at = from; p < count; p += 1) {
      for (let k = 1; k < radix; k += 1, at += 2) {
        const angle = (2 * Math.PI * p * k) / (count * radix);
        factors[at] = Math.cos(angle);
        factors[at + 1] = -Math.sin(angle);
      }
    }
  }
  return { stages, factors };
}

function load(samples: Float64Array, from: number, window: Float64Array, real: Float64Array, imaginary: Float64Array): void {
  for (let i = 0, at = from, w = 0; i < real.length; i += 1, at += 2, w += 2) {
    real[i] = samples[at]! * window[w]!;
    imaginary[i] = samples[at + 1]! * window[w + 1]!;
  }
}

function joinTwo(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, stride: number): void {
  for (let q = 0; q < stride; q += 1) {
    const ar = xr[q]!, ai = xi[q]!, br = xr[q + stride]!, bi = xi[q + stride]!;
    yr[q] = ar + br;
    yi[q] = ai + bi;
    yr[q + stride] = ar - br;
    yi[q + stride] = ai - bi;
  }
}

const halfRoot = Math.SQRT1_2;

/** First stage, straight from the windowed samples: an even one and the odd one behind it make one complex value. */
function loadEight(samples: Float64Array, from: number, window: Float64Array, yr: Float64Array, yi: Float64Array, count: number, factors: Float64Array): void {
  const apart = 2 * count;
  for (let p = 0, t = 0, o = 0; p < count; p += 1, t += 14, o += 8) {
    const w = 2 * p, x = from + w;
    const ar = samples[x]! * window[w]!, ai = samples[x + 1]! * window[w + 1]!;
    const br = samples[x + apart]! * window[w + apart]!, bi = samples[x + apart + 1]! * window[w + apart + 1]!;
    const cr = samples[x + 2 * apart]! * window[w + 2 * apart]!, ci = samples[x + 2 * apart + 1]! * window[w + 2 * apart + 1]!;
    const dr = samples[x + 3 * apart]! * window[w + 3 * apart]!, di = samples[x + 3 * apart + 1]! * window[w + 3 * apart + 1]!;
    const er = samples[x + 4 * apart]! * window[w + 4 * apart]!, ei = samples[x + 4 * apart + 1]! * window[w + 4 * apart + 1]!;
    const fr = samples[x + 5 * apart]! * window[w + 5 * apart]!, fi = samples[x + 5 * apart + 1]! * window[w + 5 * apart + 1]!;
    const gr = samples[x + 6 * apart]! * window[w + 6 * apart]!, gi = samples[x + 6 * apart + 1]! * window[w + 6 * apart + 1]!;
    const hr = samples[x + 7 * apart]! * window[w + 7 * apart]!, hi = samples[x + 7 * apart + 1]! * window[w + 7 * apart + 1]!;
    // Evens and odds, four each.
    const s0r = ar + er, s0i = ai + ei, s1r = ar - er, s1i = ai - ei, s2r = cr + gr, s2i = ci + gi, s3r = cr - gr, s3i = ci - gi;
    const t0r = br + fr, t0i = bi + fi, t1r = br - fr, t1i = bi - fi, t2r = dr + hr, t2i = di + hi, t3r = dr - hr, t3i = di - hi;
    const u0r = s0r + s2r, u0i = s0i + s2i, u2r = s0r - s2r, u2i = s0i - s2i, u1r = s1r + s3i, u1i = s1i - s3r, u3r = s1r - s3i, u3i = s1i + s3r;
    const v0r = t0r + t2r, v0i = t0i + t2i, v2r = t0i - t2i, v2i = t2r - t0r;
    const p1r = t1r + t3i, p1i = t1i - t3r, p3r = t1r - t3i, p3i = t1i + t3r;
    const v1r = (p1r + p1i) * halfRoot, v1i = (p1i - p1r) * halfRoot, v3r = (p3i - p3r) * halfRoot, v3i = -(p3r + p3i) * halfRoot;
    yr[o] = u0r + v0r;
    yi[o] = u0i + v0i;
    let re = u1r + v1r, im = u1i + v1i;
    yr[o + 1] = re * factors[t]! - im * factors[t + 1]!;
    yi[o + 1] = re * factors[t + 1]! + im * factors[t]!;
    re = u2r + v2r;
    im = u2i + v2i;
    yr[o + 2] = re * factors[t + 2]! - im * factors[t + 3]!;
    yi[o + 2] = re * factors[t + 3]! + im * factors[t + 2]!;
    re = u3r + v3r;
    im = u3i + v3i;
    yr[o + 3] = re * factors[t + 4]! - im * factors[t + 5]!;
    yi[o + 3] = re * factors[t + 5]! + im * factors[t + 4]!;
    re = u0r - v0r;
    im = u0i - v0i;
    yr[o + 4] = re * factors[t + 6]! - im * factors[t + 7]!;
    yi[o + 4] = re * factors[t + 7]! + im * factors[t + 6]!;
    re = u1r - v1r;
    im = u1i - v1i;
    yr[o + 5] = re * factors[t + 8]! - im * factors[t + 9]!;
    yi[o + 5] = re * factors[t + 9]! + im * factors[t + 8]!;
    re = u2r - v2r;
    im = u2i - v2i;
    yr[o + 6] = re * factors[t + 10]! - im * factors[t + 11]!;
    yi[o + 6] = re * factors[t + 11]! + im * factors[t + 10]!;
    re = u3r - v3r;
    im = u3i - v3i;
    yr[o + 7] = re * factors[t + 12]! - im * factors[t + 13]!;
    yi[o + 7] = re * factors[t + 13]! + im * factors[t + 12]!;
  }
}

function joinEight(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, count: number, stride: number, factors: Float64Array, at: number): void {
  for (let p = 0; p < count; p += 1) joinRow(xr, xi, yr, yi, stride * p, count * stride, 8 * stride * p, stride, factors, at + 14 * p);
}

/** A function of its own, so that its loop is compiled by itself; it reads its factors, for numbers handed over would be boxed. */
function joinRow(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, from: number, apart: number, into: number, stride: number, factors: Float64Array, t: number): void {
  const w1r = factors[t + 0]!, w1i = factors[t + 1]!;
  const w2r = factors[t + 2]!, w2i = factors[t + 3]!;
  const w3r = factors[t + 4]!, w3i = factors[t + 5]!;
  const w4r = factors[t + 6]!, w4i = factors[t + 7]!;
  const w5r = factors[t + 8]!, w5i = factors[t + 9]!;
  const w6r = factors[t + 10]!, w6i = factors[t + 11]!;
  const w7r = factors[t + 12]!, w7i = factors[t + 13]!;
  for (let x = from, y = into; x < from + stride; x += 1, y += 1) {
    const ar = xr[x]!, ai = xi[x]!;
    const br = xr[x + apart]!, bi = xi[x + apart]!;
    const cr = xr[x + 2 * apart]!, ci = xi[x + 2 * apart]!;
    const dr = xr[x + 3 * apart]!, di = xi[x + 3 * apart]!;
    const er = xr[x + 4 * apart]!, ei = xi[x + 4 * apart]!;
    const fr = xr[x + 5 * apart]!, fi = xi[x + 5 * apart]!;
    const gr = xr[x + 6 * apart]!, gi = xi[x + 6 * apart]!;
    const hr = xr[x + 7 * apart]!, hi = xi[x + 7 * apart]!;
    // Evens and odds, four each.
    const s0r = ar + er, s0i = ai + ei, s1r = ar - er, s1i = ai - ei, s2r = cr + gr, s2i = ci + gi, s3r = cr - gr, s3i = ci - gi;
    const t0r = br + fr, t0i = bi + fi, t1r = br - fr, t1i = bi - fi, t2r = dr + hr, t2i = di + hi, t3r = dr - hr, t3i = di - hi;
    const u0r = s0r + s2r, u0i = s0i + s2i, u2r = s0r - s2r, u2i = s0i - s2i, u1r = s1r + s3i, u1i = s1i - s3r, u3r = s1r - s3i, u3i = s1i + s3r;
    const v0r = t0r + t2r, v0i = t0i + t2i, v2r = t0i - t2i, v2i = t2r - t0r;
    const p1r = t1r + t3i, p1i = t1i - t3r, p3r = t1r - t3i, p3i = t1i + t3r;
    const v1r = (p1r + p1i) * halfRoot, v1i = (p1i - p1r) * halfRoot, v3r = (p3i - p3r) * halfRoot, v3i = -(p3r + p3i) * halfRoot;
    yr[y] = u0r + v0r;
    yi[y] = u0i + v0i;
    let re = u1r + v1r, im = u1i + v1i;
    yr[y + stride] = re * w1r - im * w1i;
    yi[y + stride] = re * w1i + im * w1r;
    re = u2r + v2r;
    im = u2i + v2i;
    yr[y + 2 * stride] = re * w2r - im * w2i;
    yi[y + 2 * stride] = re * w2i + im * w2r;
    re = u3r + v3r;
    im = u3i + v3i;
    yr[y + 3 * stride] = re * w3r - im * w3i;
    yi[y + 3 * stride] = re * w3i + im * w3r;
    re = u0r - v0r;
    im = u0i - v0i;
    yr[y + 4 * stride] = re * w4r - im * w4i;
    yi[y + 4 * stride] = re * w4i + im * w4r;
    re = u1r - v1r;
    im = u1i - v1i;
    yr[y + 5 * stride] = re * w5r - im * w5i;
    yi[y + 5 * stride] = re * w5i + im * w5r;
    re = u2r - v2r;
    im = u2i - v2i;
    yr[y + 6 * stride] = re * w6r - im * w6i;
    yi[y + 6 * stride] = re * w6i + im * w6r;
    re = u3r - v3r;
    im = u3i - v3i;
    yr[y + 7 * stride] = re * w7r - im * w7i;
    yi[y + 7 * stride] = re * w7i + im * w7r;
  }
}

/** Four at a time, where eight do not divide what is left; it is the last stage or the one before. */
function joinFour(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, count: number, stride: number, factors: Float64Array, at: number): void {
  const apart = count * stride;
  for (let p = 0, t = at; p < count; p += 1, t += 6) {
    for (let x = stride * p, y = 4 * stride * p; x < stride * (p + 1); x += 1, y += 1) {
      const ar = xr[x]!, ai = xi[x]!, br = xr[x + apart]!, bi = xi[x + apart]!;
      const cr = xr[x + 2 * apart]!, ci = xi[x + 2 * apart]!, dr = xr[x + 3 * apart]!, di = xi[x + 3 * apart]!;
      const s0r = ar + cr, s0i = ai + ci, s1r = ar - cr, s1i = ai - ci, s2r = br + dr, s2i = bi + di, s3r = bi - di, s3i = dr - br;
      yr[y] = s0r + s2r;
      yi[y] = s0i + s2i;
      let re = s1r + s3r, im = s1i + s3i;
      yr[y + stride] = re * factors[t]! - im * factors[t + 1]!;
      yi[y + stride] = re * factors[t + 1]! + im * factors[t]!;
      re = s0r - s2r;
      im = s0i - s2i;
      yr[y + 2 * stride] = re * factors[t + 2]! - im * factors[t + 3]!;
      yi[y + 2 * stride] = re * factors[t + 3]! + im * factors[t + 2]!;
      re = s1r - s3r;
      im = s1i - s3i;
      yr[y + 3 * stride] = re * factors[t + 4]! - im * factors[t + 5]!;
      yi[y + 3 * stride] = re * factors[t + 5]! + im * factors[t + 4]!;
    }
  }
}

/** From the transform of the packed halves to that of the real frame: E ± W·O of each pair of mirrored bins. */
function splitPower(xr: Float64Array, xi: Float64Array, ur: Float64Array, ui: Float64Array, into: Float64Array): void {
  const half = xr.length;
  const sum = xr[0]! + xi[0]!, difference = xr[0]! - xi[0]!;
  into[0] = sum * sum;
  into[half] = difference * difference;
  for (let k = 1, j = half - 1; k <= j; k += 1, j -= 1) {
    const er = 0.5 * (xr[k]! + xr[j]!), ei = 0.5 * (xi[k]! - xi[j]!), or = 0.5 * (xi[k]! + xi[j]!), oi = 0.5 * (xr[j]! - xr[k]!);
    const tr = or * ur[k]! - oi * ui[k]!, ti = or * ui[k]! + oi * ur[k]!;
    const pr = er + tr, pi = ei + ti, mr = er - tr, mi = ei - ti;
    into[k] = pr * pr + pi * pi;
    into[j] = mr * mr + mi * mi;
  }
}

/** As `splitPower`, adding the squares up and keeping their roots. */
function splitInto(xr: Float64Array, xi: Float64Array, ur: Float64Array, ui: Float64Array, total: Float64Array, magnitudes: Float64Array, at: number): void {
  const half = xr.length;
  const sum = xr[0]! + xi[0]!, difference = xr[0]! - xi[0]!;
  total[0]! += sum * sum;
  magnitudes[at] = Math.abs(sum);
  total[half]! += difference * difference;
  magnitudes[at + half] = Math.abs(difference);
  for (let k = 1, j = half - 1; k <= j; k += 1, j -= 1) {
    const er = 0.5 * (xr[k]! + xr[j]!), ei = 0.5 * (xi[k]! - xi[j]!), or = 0.5 * (xi[k]! + xi[j]!), oi = 0.5 * (xr[j]! - xr[k]!);
    const tr = or * ur[k]! - oi * ui[k]!, ti = or * ui[k]! + oi * ur[k]!;
    const pr = er + tr, pi = ei + ti, mr = er - tr, mi = ei - ti;
    const plus = pr * pr + pi * pi, minus = mr * mr + mi * mi;
    // In the middle both are the same bin, which counts once.
    if (k < j) total[k]! += plus;
    total[j]! += minus;
    magnitudes[at + k] = Math.sqrt(plus);
    magnitudes[at + j] = Math.sqrt(minus);
  }
}

function split(xr: Float64Array, xi: Float64Array, ur: Float64Array, ui: Float64Array, real: Float64Array, imaginary: Float64Array): void {
  const half = xr.length;
  real[0] = xr[0]! + xi[0]!;
  imaginary[0] = 0;
  real[half] = xr[0]! - xi[0]!;
  imaginary[half] = 0;
  for (let k = 1, j = half - 1; k <= j; k += 1, j -= 1) {
    const er = 0.5 * (xr[k]! + xr[j]!), ei = 0.5 * (xi[k]! - xi[j]!), or = 0.5 * (xi[k]! + xi[j]!), oi = 0.5 * (xr[j]! - xr[k]!);
    const tr = or * ur[k]! - oi * ui[k]!, ti = or * ui[k]! + oi * ur[k]!;
    real[k] = er + tr;
    imaginary[k] = ei + ti;
    real[j] = er - tr;
    imaginary[j] = ti - ei;
  }
}
