import { arcCosine, decay, perCosine } from '../series/index.ts';

/** Exponent of Prandtl’s factor past which it is 1. */
const NO_LOSS = 30;

/**
 * Multiplies by Prandtl’s factor of one end of the blade: F = (2/π)·arccos e⁻ˣ, x = distance/|sin φ|.
 *
 * @param losses  factors so far, and their slopes with |sin φ|; both written
 */
export function loseAtEnd(distances: Float64Array, sines: Float64Array, losses: Float64Array, slopes: Float64Array): void {
  for (let i = 0; i < distances.length; i++) {
    const perSize = 1 / Math.abs(sines[i]!);
    const exponent = distances[i]! * perSize;
    // Where it is past 30 the factor is 1 to the last digit.
    if (exponent >= NO_LOSS) continue;
    const e = decay(exponent);
    const factor = (2 / Math.PI) * arcCosine(e);
    const slope = (-2 / Math.PI) * e * exponent * perSize * perCosine(e);
    slopes[i] = slopes[i]! * factor + losses[i]! * slope;
    losses[i]! *= factor;
  }
}
