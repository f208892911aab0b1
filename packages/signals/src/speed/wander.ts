import { bandCholesky, bandMatrix, bandSolve } from '@rotorwright/mechanics';

/** What is left of the angle after straightening, smoothed as far as the measurements ask for. */
export interface Wander {
  /** turns, one a block */
  readonly angle: Float64Array;
  /** From the first block to the last, turns, and its standard deviation. */
  readonly gain: number;
  readonly deviation: number;
}

/** Standard deviations that are tried for the change of speed from block to block, in turns a block. */
const tried: readonly number[] = Array.from({ length: 17 }, (_, index) => 1e-7 * 10 ** (index / 2.5));
/** The scatter is taken to be what the noise foretells with the weight of so many blocks. */
const trusted = 24;

/**
 * Fits an angle whose speed may wander: the size of wander and scatter that make the measurements likeliest.
 *
 * @param measured   turns, one a block, three or more
 * @param precision  one over the variance of each, 1/turns²; 0 where nothing was measured
 * @source smoothing spline as a Gaussian process, integrated random walk; restricted likelihood (Wahba 1978, from memory)
 */
export function wanderOf(measured: Float64Array, precision: Float64Array): Wander | undefined {
  const count = measured.length;
  let best: { readonly likely: number; readonly wander: Wander } | undefined;
  for (const size of tried) {
    const a = bandMatrix(count);
    for (let i = 0; i < count; i += 1) a[4 * i] = precision[i]!;
    const stiffness = 1 / size ** 2;
    for (let i = 0; i + 2 < count; i += 1) {
      a[4 * i]! += stiffness;
      a[4 * (i + 1)]! += 4 * stiffness;
      a[4 * (i + 2)]! += stiffness;
      a[4 * (i + 1) + 1]! -= 2 * stiffness;
      a[4 * (i + 2) + 1]! -= 2 * stiffness;
      a[4 * (i + 2) + 2]! += stiffness;
    }
    const factor = bandCholesky(a);
    if (factor === undefined) continue;
    const angle = Float64Array.from(measured, (value, i) => value * precision[i]!);
    bandSolve(factor, angle);
    let misfit = 0;
    for (let i = 0; i < count; i += 1) misfit += precision[i]! * measured[i]! * (measured[i]! - angle[i]!);
    const scatter = (misfit + trusted) / (count - 2 + trusted);
    let logDeterminant = 0;
    for (let i = 0; i < count; i += 1) logDeterminant -= 2 * Math.log(factor[4 * i]!);
    const likely = -0.5 * ((count - 2 + trusted) * Math.log(scatter) + logDeterminant - (count - 2) * Math.log(stiffness));
    if (best !== undefined && likely <= best.likely) continue;
    const ends = new Float64Array(count);
    ends[0] = -1;
    ends[count - 1] = 1;
    bandSolve(factor, ends);
    const gain = angle[count - 1]! - angle[0]!;
    best = { likely, wander: { angle, gain, deviation: Math.sqrt(scatter * Math.max(0, ends[count - 1]! - ends[0]!)) } };
  }
  return best?.wander;
}
