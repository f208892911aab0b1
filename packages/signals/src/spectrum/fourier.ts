/** Fourier transform of windowed real frames of one size; holds its tables and its workspace, so that frames cost no memory. */
export interface RealTransform {
  /** Samples in a frame: a power of two, 4 or more. */
  readonly size: number;
  /** Number of frequencies from 0 up to half the sampling rate: size/2 + 1. */
  readonly bins: number;
  /**
   * Transforms one of a row of frames: adds the squared magnitude for each frequency to a sum, and keeps the magnitudes.
   *
   * @param samples     read from `from` on
   * @param sum         `bins` numbers, added to
   * @param magnitudes  `bins` numbers from `at` on, overwritten
   */
  gather(samples: Float64Array, from: number, sum: Float64Array, magnitudes: Float64Array, at: number): void;
  /** The transform itself: real and imaginary parts, `bins` numbers each, overwritten. */
  transform(samples: Float64Array, from: number, real: Float64Array, imaginary: Float64Array): void;
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
 * @param window  factor for each sample of a frame; its length is the size of the frames: a power of two, 4 to 2²²
 * @throws RangeError for any other size
 * @source Stockham's self-sorting transform, eight at a time, of half the size, then the last two and the real split in one (from memory)
 * @example realTransform(new Float64Array(8).fill(1)).bins // 5
 */
export function realTransform(window: Float64Array): RealTransform {
  const size = window.length;
  if (size < 4 || size > 2 ** 22 || (size & (size - 1)) !== 0) throw new RangeError(`realTransform: the size must be a power of two from 4 to 4194304; got ${size}`);
  const half = size / 2;
  const bins = half + 1;
  const { stages, factors } = stagesOf(half);
  const straight = stages[0]?.radix === 8;
  const firstFactors = straight ? withWindow(window, factors) : factors;
  const turns = new Float64Array(half);
  for (let k = 0; k < half / 2; k += 1) {
    turns[2 * k] = Math.cos((2 * Math.PI * k) / size);
    turns[2 * k + 1] = -Math.sin((2 * Math.PI * k) / size);
  }
  const workspace = new Float64Array(4 * (half + shift));
  const piece = (index: number): Float64Array => workspace.subarray(index * (half + shift), index * (half + shift) + half);
  const [realA, imaginaryA, realB, imaginaryB] = [piece(0), piece(1), piece(2), piece(3)];

  /** Even samples as real parts, odd ones as imaginary; transformed but for the last two halves. Returns true when the result lies in the second pair. */
  const packed = (samples: Float64Array, from: number): boolean => {
    if (straight) loadEight(samples, from, realB, imaginaryB, half / 8, firstFactors);
    else load(samples, from, window, realA, imaginaryA);
    let swapped = straight;
    for (let stage = straight ? 1 : 0; stage < stages.length; stage += 1) {
      const { radix, count, stride, factors: at } = stages[stage]!;
      const [xr, xi, yr, yi] = swapped ? [realB, imaginaryB, realA, imaginaryA] : [realA, imaginaryA, realB, imaginaryB];
      if (radix === 2) joinTwo(xr, xi, yr, yi, count, stride, factors, at);
      else if (radix === 8) joinEight(xr, xi, yr, yi, count, stride, factors, at);
      else joinFour(xr, xi, yr, yi, count, stride, factors, at);
      swapped = !swapped;
    }
    return swapped;
  };

  return {
    size, bins,
    gather(samples, from, sum, magnitudes, at) {
      const swapped = packed(samples, from);
      splitInto(swapped ? realB : realA, swapped ? imaginaryB : imaginaryA, turns, sum, magnitudes, at);
    },
    transform(samples, from, real, imaginary) {
      const swapped = packed(samples, from);
      split(swapped ? realB : realA, swapped ? imaginaryB : imaginaryA, turns, real, imaginary);
    },
  };
}

/** All stages but the last, which joins two. */
function stagesOf(length: number): { readonly stages: readonly Stage[]; readonly factors: Float64Array } {
  const stages: Stage[] = [];
  let factorCount = 0;
  for (let left = length, stride = 1; left > 2; ) {
    const radix = left % 16 === 0 ? 8 : left % 8 === 0 ? 4 : 2;
    const count = left / radix;
    stages.push({ radix, count, stride, factors: factorCount });
    factorCount += 2 * (radix - 1) * count;
    left = count;
    stride *= radix;
  }
  const factors = new Float64Array(factorCount);
  for (const { radix, count, factors: from } of stages) {
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

/** For each butterfly of the first stage its sixteen window factors, then its fourteen twiddle factors: read in a row, they do not fight for the lines of the cache. */
function withWindow(window: Float64Array, factors: Float64Array): Float64Array {
  const count = window.length / 16;
  const rows = new Float64Array(30 * count);
  for (let p = 0; p < count; p += 1) {
    for (let k = 0; k < 8; k += 1) rows.set(window.subarray(2 * (p + k * count), 2 * (p + k * count) + 2), 30 * p + 2 * k);
    rows.set(factors.subarray(14 * p, 14 * p + 14), 30 * p + 16);
  }
  return rows;
}

function load(samples: Float64Array, from: number, window: Float64Array, real: Float64Array, imaginary: Float64Array): void {
  for (let i = 0, at = from, w = 0; i < real.length; i += 1, at += 2, w += 2) {
    real[i] = samples[at]! * window[w]!;
    imaginary[i] = samples[at + 1]! * window[w + 1]!;
  }
}

/** Two at a time, where neither eight nor four divide what is left. */
function joinTwo(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, count: number, stride: number, factors: Float64Array, at: number): void {
  const apart = count * stride;
  for (let p = 0, t = at; p < count; p += 1, t += 2) {
    for (let x = stride * p, y = 2 * stride * p; x < stride * (p + 1); x += 1, y += 1) {
      const ar = xr[x]!, ai = xi[x]!, br = xr[x + apart]!, bi = xi[x + apart]!;
      yr[y] = ar + br;
      yi[y] = ai + bi;
      const re = ar - br, im = ai - bi;
      yr[y + stride] = re * factors[t]! - im * factors[t + 1]!;
      yi[y + stride] = re * factors[t + 1]! + im * factors[t]!;
    }
  }
}

const halfRoot = Math.SQRT1_2;

/** First stage, straight from the windowed samples: an even one and the odd one behind it make one complex value. */
function loadEight(samples: Float64Array, from: number, yr: Float64Array, yi: Float64Array, count: number, factors: Float64Array): void {
  const apart = 2 * count;
  for (let p = 0, t = 0, o = 0; p < count; p += 1, t += 30, o += 8) {
    const x = from + 2 * p;
    const ar = samples[x]! * factors[t]!, ai = samples[x + 1]! * factors[t + 1]!;
    const br = samples[x + apart]! * factors[t + 2]!, bi = samples[x + apart + 1]! * factors[t + 3]!;
    const cr = samples[x + 2 * apart]! * factors[t + 4]!, ci = samples[x + 2 * apart + 1]! * factors[t + 5]!;
    const dr = samples[x + 3 * apart]! * factors[t + 6]!, di = samples[x + 3 * apart + 1]! * factors[t + 7]!;
    const er = samples[x + 4 * apart]! * factors[t + 8]!, ei = samples[x + 4 * apart + 1]! * factors[t + 9]!;
    const fr = samples[x + 5 * apart]! * factors[t + 10]!, fi = samples[x + 5 * apart + 1]! * factors[t + 11]!;
    const gr = samples[x + 6 * apart]! * factors[t + 12]!, gi = samples[x + 6 * apart + 1]! * factors[t + 13]!;
    const hr = samples[x + 7 * apart]! * factors[t + 14]!, hi = samples[x + 7 * apart + 1]! * factors[t + 15]!;
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
    yr[o + 1] = re * factors[t + 16]! - im * factors[t + 17]!;
    yi[o + 1] = re * factors[t + 17]! + im * factors[t + 16]!;
    re = u2r + v2r;
    im = u2i + v2i;
    yr[o + 2] = re * factors[t + 18]! - im * factors[t + 19]!;
    yi[o + 2] = re * factors[t + 19]! + im * factors[t + 18]!;
    re = u3r + v3r;
    im = u3i + v3i;
    yr[o + 3] = re * factors[t + 20]! - im * factors[t + 21]!;
    yi[o + 3] = re * factors[t + 21]! + im * factors[t + 20]!;
    re = u0r - v0r;
    im = u0i - v0i;
    yr[o + 4] = re * factors[t + 22]! - im * factors[t + 23]!;
    yi[o + 4] = re * factors[t + 23]! + im * factors[t + 22]!;
    re = u1r - v1r;
    im = u1i - v1i;
    yr[o + 5] = re * factors[t + 24]! - im * factors[t + 25]!;
    yi[o + 5] = re * factors[t + 25]! + im * factors[t + 24]!;
    re = u2r - v2r;
    im = u2i - v2i;
    yr[o + 6] = re * factors[t + 26]! - im * factors[t + 27]!;
    yi[o + 6] = re * factors[t + 27]! + im * factors[t + 26]!;
    re = u3r - v3r;
    im = u3i - v3i;
    yr[o + 7] = re * factors[t + 28]! - im * factors[t + 29]!;
    yi[o + 7] = re * factors[t + 29]! + im * factors[t + 28]!;
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

/** Four at a time, where eight do not divide what is left. */
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

/**
 * Last stage and real split in one: from the two halves of the transform of the packed samples to that of the real frame. In turn for
 * bins k and half − k, and their neighbours across the quarter: join the halves, then E ± W·O of each pair of mirrored bins.
 * Adds the squares up and keeps their roots.
 */
function splitInto(xr: Float64Array, xi: Float64Array, turns: Float64Array, total: Float64Array, magnitudes: Float64Array, at: number): void {
  const half = xr.length;
  const quarter = half / 2;
  const r0 = xr[0]! + xr[quarter]!, i0 = xi[0]! + xi[quarter]!, rq = xr[0]! - xr[quarter]!, iq = xi[0]! - xi[quarter]!;
  const sum = r0 + i0, difference = r0 - i0, middle = rq * rq + iq * iq;
  total[0]! += sum * sum;
  total[quarter]! += middle;
  total[half]! += difference * difference;
  magnitudes[at] = Math.abs(sum);
  magnitudes[at + quarter] = Math.sqrt(middle);
  magnitudes[at + half] = Math.abs(difference);
  for (let k = 1, l = quarter - 1, m = quarter + 1, n = half - 1; k <= l; k += 1, l -= 1, m += 1, n -= 1) {
    const ar = xr[k]! + xr[m]!, ai = xi[k]! + xi[m]!, cr = xr[k]! - xr[m]!, ci = xi[k]! - xi[m]!;
    const br = xr[l]! + xr[n]!, bi = xi[l]! + xi[n]!, dr = xr[l]! - xr[n]!, di = xi[l]! - xi[n]!;
    const wr = turns[2 * k]!, wi = turns[2 * k + 1]!;
    let er = 0.5 * (ar + dr), ei = 0.5 * (ai - di), or = 0.5 * (ai + di), oi = 0.5 * (dr - ar);
    let tr = or * wr - oi * wi, ti = or * wi + oi * wr;
    const first = (er + tr) * (er + tr) + (ei + ti) * (ei + ti), last = (er - tr) * (er - tr) + (ei - ti) * (ei - ti);
    total[k]! += first;
    total[n]! += last;
    magnitudes[at + k] = Math.sqrt(first);
    magnitudes[at + n] = Math.sqrt(last);
    // Halfway to the quarter the neighbours are the same bins, which count once.
    if (k === l) break;
    er = 0.5 * (br + cr);
    ei = 0.5 * (bi - ci);
    or = 0.5 * (bi + ci);
    oi = 0.5 * (cr - br);
    // Their factor is −i times the conjugate.
    tr = oi * wr - or * wi;
    ti = -or * wr - oi * wi;
    const before = (er + tr) * (er + tr) + (ei + ti) * (ei + ti), behind = (er - tr) * (er - tr) + (ei - ti) * (ei - ti);
    total[l]! += before;
    total[m]! += behind;
    magnitudes[at + l] = Math.sqrt(before);
    magnitudes[at + m] = Math.sqrt(behind);
  }
}

/** As `splitInto`, a pair of mirrored bins at a time, for the transform itself. */
function split(xr: Float64Array, xi: Float64Array, turns: Float64Array, real: Float64Array, imaginary: Float64Array): void {
  const half = xr.length;
  const quarter = half / 2;
  const r0 = xr[0]! + xr[quarter]!, i0 = xi[0]! + xi[quarter]!;
  real[0] = r0 + i0;
  imaginary[0] = 0;
  real[half] = r0 - i0;
  imaginary[half] = 0;
  real[quarter] = xr[0]! - xr[quarter]!;
  imaginary[quarter] = xi[quarter]! - xi[0]!;
  for (let k = 1, l = quarter - 1; k < quarter; k += 1, l -= 1) {
    const ar = xr[k]! + xr[k + quarter]!, ai = xi[k]! + xi[k + quarter]!, dr = xr[l]! - xr[l + quarter]!, di = xi[l]! - xi[l + quarter]!;
    const er = 0.5 * (ar + dr), ei = 0.5 * (ai - di), or = 0.5 * (ai + di), oi = 0.5 * (dr - ar);
    const tr = or * turns[2 * k]! - oi * turns[2 * k + 1]!, ti = or * turns[2 * k + 1]! + oi * turns[2 * k]!;
    real[k] = er + tr;
    imaginary[k] = ei + ti;
    real[half - k] = er - tr;
    imaginary[half - k] = ti - ei;
  }
}
