import { fullTurn, type Phasor } from './single-plane.ts';

export interface FourRuns {
  /** Amplitude that the trial mass alone makes, in the unit of the readings; absent where the runs contradict each other. */
  readonly trialEffect?: number;
  /** kg and rad from the first place of the trial mass, in the sense in which the places follow; absent where there is none. */
  readonly correction?: Phasor;
  /** How well the four runs agree: length of the unit vector that they give, 1 in perfect readings. */
  readonly closure?: number;
}

/**
 * Balancing without phase: one run as it is, and one each with the trial mass at three places 120° apart.
 *
 * Each reading is |V₀ + T·e^{i(x + k·120°)}|, so their mean square gives T and their differences the angle x between V₀ and T.
 *
 * @param initial     V₀, in any unit
 * @param trialMass   [kg]
 * @param amplitudes  A, B, C at 0°, 120°, 240°, in the same unit
 * @throws RangeError when the trial has no mass or a reading is negative
 * @neglects whatever does not answer in proportion to the unbalance
 * @source law of cosines on three triangles with the corner V₀
 * @example balanceFourRuns(1, 1, [3, Math.sqrt(3), Math.sqrt(3)]).trialEffect // 2
 */
export function balanceFourRuns(initial: number, trialMass: number, [a, b, c]: readonly [number, number, number]): FourRuns {
  if (!(trialMass > 0)) throw new RangeError(`balanceFourRuns: the trial must have mass, got ${trialMass} kg`);
  if (![initial, a, b, c].every((value) => value >= 0 && Number.isFinite(value))) throw new RangeError(`balanceFourRuns: readings must be 0 or more, got ${[initial, a, b, c].join(', ')}`);
  const square = (a * a + b * b + c * c) / 3 - initial * initial;
  const largest = Math.max(initial, a, b, c) ** 2;
  if (!(square > 1e-12 * largest)) return {};
  const effect = Math.sqrt(square);
  if (initial === 0) return { trialEffect: effect, correction: { size: 0, angle: 0 } };
  const cosine = (a * a - initial * initial - square) / (2 * initial * effect);
  const sine = (c * c - b * b) / (2 * Math.sqrt(3) * initial * effect);
  const closure = Math.sqrt(cosine * cosine + sine * sine);
  // The trial leads the unbalance by x; the correction stands opposite to the unbalance.
  return { trialEffect: effect, correction: { size: (trialMass * initial) / effect, angle: fullTurn(Math.PI - Math.atan2(sine, cosine)) }, closure };
}
