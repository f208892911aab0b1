import { massIntegrals } from './blade-mass.ts';

export interface LinearBlade {
  /** Mass per length at the root and at the tip [kg/m]. */
  readonly rootMassPerLength: number;
  readonly tipMassPerLength: number;
  /** ∫r dm [kg·m] and ∫r² dm [kg·m²] about the rotor axis. */
  readonly staticMoment: number;
  readonly inertia: number;
}

/**
 * Blade whose mass per length goes linearly from root to tip so that its mass and its centre of mass are met:
 * with L = R − r₀ and x = (r_m − r₀)/L, root (m/L)(4 − 6x) and tip (m/L)(6x − 2).
 *
 * @param mass          m [kg], not negative
 * @param rootRadius    r₀ [m]
 * @param radius        R [m], beyond r₀
 * @param centreOfMass  r_m from the rotor axis [m]; between a third and two thirds of the way from root to tip, else
 *                      no linear spread has it
 * @throws RangeError when an argument is out of range
 * @neglects tip weights, root fittings: they need the true distribution
 * @source integrals of a straight line, derived above
 * @example linearBlade(0.2, 0.1, 0.7, 0.4).tipMassPerLength // 0.2 / 0.6
 */
export function linearBlade(mass: number, rootRadius: number, radius: number, centreOfMass: number): LinearBlade {
  for (const [name, value] of Object.entries({ mass, rootRadius })) {
    if (!(value >= 0) || !Number.isFinite(value)) throw new RangeError(`linearBlade: ${name} must not be negative, got ${value}`);
  }
  if (!(radius > rootRadius) || !Number.isFinite(radius)) throw new RangeError(`linearBlade: radius [m] must lie beyond the root at ${rootRadius}, got ${radius}`);
  const length = radius - rootRadius;
  const share = (centreOfMass - rootRadius) / length;
  // A hair of rounding at the two ends is no reason to refuse.
  if (!(share >= 1 / 3 - 1e-12 && share <= 2 / 3 + 1e-12)) {
    throw new RangeError(`linearBlade: centreOfMass [m] must lie between ${rootRadius + length / 3} and ${rootRadius + (2 * length) / 3}, got ${centreOfMass}`);
  }
  const rootMassPerLength = Math.max(0, (mass / length) * (4 - 6 * share));
  const tipMassPerLength = Math.max(0, (mass / length) * (6 * share - 2));
  const station = (r: number, massPerLength: number) => ({ r, massPerLength, chordwise: 0, height: 0, chordwiseGyration: 0, heightGyration: 0 });
  const { staticMoment, inertia } = massIntegrals([station(rootRadius, rootMassPerLength), station(radius, tipMassPerLength)], []);
  return { rootMassPerLength, tipMassPerLength, staticMoment, inertia };
}
