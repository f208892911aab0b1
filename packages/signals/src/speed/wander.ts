import { bandCholesky, bandMatrix, bandSolve } from '@rotorwright/mechanics';

/** What is left of the angle after straightening, smoothed as far as the measurements ask for. */
export interface Wander {
  /** turns, one a place */
  readonly angle: Float64Array;
  /** Variance of the angle gained from the first place to the last, turns²: what the measurements leave open, and what their scatter does. */
  readonly open: number;
  readonly scattered: number;
  /** How far that gain moves with each measurement: turns a turn, one a place. */
  readonly pull: Float64Array;
  /** Sizes that told something. */
  readonly sizes: readonly Size[];
}

/** Places of a bend and a shake among those that are tried. */
export interface Size {
  readonly bend: number;
  readonly shake: number;
}

/** Standard deviations that are tried for the change of speed from block to block, and for the shake of the angle itself, in turns and blocks; the first of each is as good as none. */
const bends: readonly number[] = [1e-9, ...Array.from({ length: 13 }, (_, index) => 1e-7 * 10 ** (index / 2))];
const shakes: readonly number[] = [1e-8, ...Array.from({ length: 8 }, (_, index) => 3e-7 * 10 ** (index / 2))];
/** Before anything is measured, none is as likely as all the other sizes together. */
const before = (size: number, sizes: readonly number[]): number => (size === 0 ? 0 : -Math.log(sizes.length - 1));
/** The scatter is taken to be what the noise foretells with the weight of so many blocks. */
const trusted = 24;
/** Sizes less likely than the likeliest by this much tell nothing more, nepers. */
const unlikely = 12;

/** Steps of size around the likeliest that are all looked at. */
const around = 2;

interface Fit extends Size {
  readonly likely: number;
  readonly scatter: number;
  readonly factor: Float64Array<ArrayBuffer>;
  readonly angle: Float64Array;
}

/**
 * Fits an angle whose speed may wander and which may shake besides. Nobody knows whether, and how much: every size of both is
 * tried, and none, and counts for as much as it makes the measurements likely. What the sizes say apart is part of the deviation.
 *
 * @param times      of the places, in blocks, growing
 * @param measured   turns, one a place, three or more of them measured
 * @param precision  one over the variance of each, 1/turns²; 0 where nothing was measured, as at the ends of a recording
 * @param sizes      those that are tried alone, as a fit of almost the same measurements has left them; all by default
 * @source integrated random walk and random walk as a Gaussian process, restricted likelihood (Wahba 1978, from memory); sizes averaged by their likelihood
 */
export function wanderOf(times: Float64Array, measured: Float64Array, precision: Float64Array, sizes?: readonly Size[]): Wander | undefined {
  const freedom = precision.reduce((sum, each) => sum + (each > 0 ? 1 : 0), 0) - 2;
  if (freedom < 1) return undefined;
  const fits = fitsOf((size) => fitOf(times, measured, precision, freedom, size), sizes);
  const most = fits.reduce((best, { likely }) => Math.max(best, likely), -Infinity);
  const count = times.length;
  const angle = new Float64Array(count);
  const pull = new Float64Array(count);
  let [whole, gain, square, scattered, open] = [0, 0, 0, 0, 0];
  const telling = fits.filter(({ likely }) => likely > most - unlikely);
  for (const fit of telling) {
    const weight = Math.exp(fit.likely - most);
    whole += weight;
    const ends = new Float64Array(2 * count);
    ends[0] = -1;
    ends[2 * count - 2] = 1;
    bandSolve(fit.factor, ends);
    let variance = 0;
    for (let place = 0; place < count; place += 1) {
      angle[place]! += weight * fit.angle[2 * place]!;
      pull[place]! += weight * ends[2 * place]! * precision[place]!;
      variance += ends[2 * place]! ** 2 * precision[place]!;
    }
    const own = fit.angle[2 * count - 2]! - fit.angle[0]!;
    gain += weight * own;
    square += weight * own * own;
    scattered += weight * fit.scatter * variance;
    open += weight * fit.scatter * Math.max(0, ends[2 * count - 2]! - ends[0]! - variance);
  }
  if (!(whole > 0)) return undefined;
  // The scatter is itself measured: its variance is that of Student's law.
  const student = (freedom + trusted) / (freedom + trusted - 2);
  const between = Math.max(0, square / whole - (gain / whole) ** 2);
  const mean = (value: number): number => value / whole;
  return { angle: angle.map(mean), pull: pull.map(mean), open: student * mean(open) + between, scattered: student * mean(scattered), sizes: telling.map(({ bend, shake }) => ({ bend, shake })) };
}

const coarse = (sizes: readonly number[]): readonly number[] => [...sizes.keys()].filter((size) => size === 0 || size % 2 === 1);

/** Fits of some sizes, or of all that count: none and every second of each first, then those around the likeliest. */
function fitsOf(fit: (size: Size) => Fit | undefined, sizes?: readonly Size[]): readonly Fit[] {
  const tried = new Map<string, Fit | undefined>();
  const tryOne = (bend: number, shake: number): Fit | undefined => {
    const key = `${bend} ${shake}`;
    if (!tried.has(key)) tried.set(key, fit({ bend, shake }));
    return tried.get(key);
  };
  const found = (): readonly Fit[] => [...tried.values()].filter((each) => each !== undefined);
  if (sizes !== undefined) {
    for (const { bend, shake } of sizes) tryOne(bend, shake);
    return found();
  }
  let best = { bend: 0, shake: 0, likely: -Infinity };
  for (const bend of coarse(bends)) {
    for (const shake of coarse(shakes)) {
      const likely = tryOne(bend, shake)?.likely ?? -Infinity;
      if (likely > best.likely) best = { bend, shake, likely };
    }
  }
  for (let bend = Math.max(0, best.bend - around); bend <= Math.min(bends.length - 1, best.bend + around); bend += 1) {
    for (let shake = Math.max(0, best.shake - around); shake <= Math.min(shakes.length - 1, best.shake + around); shake += 1) tryOne(bend, shake);
  }
  return found();
}

/** The likeliest angle and speed of each place, one after the other, for one size of bend and shake. */
function fitOf(times: Float64Array, measured: Float64Array, precision: Float64Array, freedom: number, size: Size): Fit | undefined {
  const bend = bends[size.bend]!;
  const shake = shakes[size.shake]!;
  const count = times.length;
  const a = bandMatrix(2 * count);
  let logDeterminant = 0;
  for (let place = 0; place < count; place += 1) a[8 * place]! += precision[place]!;
  for (let place = 0; place + 1 < count; place += 1) {
    const step = times[place + 1]! - times[place]!;
    // What angle and speed may do from one place to the next: covariance, turned over.
    const q11 = (bend * bend * step ** 3) / 3 + shake * shake * step;
    const q12 = (bend * bend * step * step) / 2;
    const q22 = bend * bend * step;
    const determinant = q11 * q22 - q12 * q12;
    logDeterminant += Math.log(determinant);
    const p11 = q22 / determinant;
    const p12 = -q12 / determinant;
    const p22 = q11 / determinant;
    // Rows angle and speed of this place, then of the next; the next angle is expected at angle + step · speed.
    const row = 8 * place;
    a[row]! += p11;
    a[row + 5]! += step * p11 + p12;
    a[row + 4]! += step * step * p11 + 2 * step * p12 + p22;
    a[row + 10]! -= p11;
    a[row + 9]! -= step * p11 + p12;
    a[row + 8]! += p11;
    a[row + 15]! -= p12;
    a[row + 14]! -= step * p12 + p22;
    a[row + 13]! += p12;
    a[row + 12]! += p22;
  }
  const factor = bandCholesky(a);
  if (factor === undefined) return undefined;
  const angle = new Float64Array(2 * count);
  for (let place = 0; place < count; place += 1) angle[2 * place] = measured[place]! * precision[place]!;
  bandSolve(factor, angle);
  let misfit = 0;
  for (let place = 0; place < count; place += 1) misfit += precision[place]! * measured[place]! * (measured[place]! - angle[2 * place]!);
  // The diagonal of the factor holds one over what the determinant is the product of.
  for (let row = 0; row < 2 * count; row += 1) logDeterminant -= Math.log(factor[4 * row]!);
  const scatter = (Math.max(0, misfit) + trusted) / (freedom + trusted);
  const likely = -0.5 * ((freedom + trusted) * Math.log(scatter) + logDeterminant) + before(size.bend, bends) + before(size.shake, shakes);
  return { ...size, likely, scatter, factor, angle };
}
