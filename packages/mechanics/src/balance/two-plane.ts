import { fullTurn, type Phasor } from './single-plane.ts';

/** What the two sensors read in one run. */
export type TwoReadings = readonly [sensor1: Phasor, sensor2: Phasor];

export interface TwoPlanes {
  /** Change at sensor i by 1 kg at angle 0 in plane k: `influence[i][k]`. */
  readonly influence: readonly [readonly [Phasor, Phasor], readonly [Phasor, Phasor]];
  /** Masses that take the vibration away at both sensors, kg; absent where the two planes cannot be told apart. */
  readonly correction?: readonly [plane1: Phasor, plane2: Phasor];
}

/** Least |determinant| beside the product of its rows at which the two planes can still be told apart. */
const LEAST_DETERMINANT = 1e-9;

/**
 * Balancing in two planes by one trial mass in each: α_ik = (V_ik − V_i0)/U_k, and α·U = −V_0.
 *
 * @param initial     V₁₀ and V₂₀, amplitudes in any one unit
 * @param trials      U₁ in plane 1 and U₂ in plane 2 [kg, rad]; each is taken off again before the next run
 * @param withTrial1  readings with the trial mass in plane 1
 * @param withTrial2  readings with the trial mass in plane 2
 * @throws RangeError when a trial has no mass
 * @neglects whatever does not answer in proportion to the unbalance
 * @source influence coefficients: Thomson, Theory of Vibration (from memory); checked against a published worked example
 */
export function balanceTwoPlanes(initial: TwoReadings, trials: readonly [Phasor, Phasor], withTrial1: TwoReadings, withTrial2: TwoReadings): TwoPlanes {
  for (const { size } of trials) if (!(size > 0)) throw new RangeError(`balanceTwoPlanes: each trial must have mass, got ${size} kg`);
  const coefficient = (sensor: 0 | 1, plane: 0 | 1): Complex => {
    const change = minus(complex((plane === 0 ? withTrial1 : withTrial2)[sensor]), complex(initial[sensor]));
    return over(change, complex(trials[plane]));
  };
  const [a, b, c, d] = [coefficient(0, 0), coefficient(0, 1), coefficient(1, 0), coefficient(1, 1)];
  const influence = [[phasor(a), phasor(b)], [phasor(c), phasor(d)]] as const;
  const determinant = minus(times(a, d), times(b, c));
  const scale = (size(a) + size(b)) * (size(c) + size(d));
  if (!(size(determinant) > LEAST_DETERMINANT * scale)) return { influence };
  const [v1, v2] = [complex(initial[0]), complex(initial[1])];
  const first = over(minus(times(b, v2), times(d, v1)), determinant);
  const second = over(minus(times(c, v1), times(a, v2)), determinant);
  return { influence, correction: [phasor(first), phasor(second)] };
}

type Complex = readonly [re: number, im: number];

const complex = ({ size: length, angle }: Phasor): Complex => [length * Math.cos(angle), length * Math.sin(angle)];
const size = ([re, im]: Complex): number => Math.sqrt(re * re + im * im);
const phasor = (value: Complex): Phasor => ({ size: size(value), angle: fullTurn(Math.atan2(value[1], value[0])) });
const minus = (a: Complex, b: Complex): Complex => [a[0] - b[0], a[1] - b[1]];
const times = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const over = (a: Complex, b: Complex): Complex => {
  const square = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square];
};
