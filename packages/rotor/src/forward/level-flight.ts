import type { TrimSolution } from './model.ts';
import type { TrimSolver } from './trim.ts';

export interface SteadyFlight {
  /** Ω [rad/s] and tip speed [m/s] */
  readonly speed: number;
  readonly tipSpeed: number;
  /** Of the machine [N] */
  readonly weight: number;
  /** D of the fuselage, against the airspeed [N] */
  readonly drag: number;
  /** Along the ground, and up [m/s] */
  readonly airspeed: number;
  readonly climbRate: number;
}

export interface FlightTrim extends TrimSolution {
  /** T [N] */
  readonly thrust: number;
  /** α of the shaft, forward [rad] */
  readonly discTilt: number;
  /** μ */
  readonly advanceRatio: number;
}

/** Tilts closer than this are one [rad]. */
const SAME_TILT = 3e-8;
const MOST_TILTS = 30;
/** In fast flight three fifths of a change come back through the tilt; a secant that goes farther than this many times what was missed is noise. */
const FARTHEST_SECANT = 5;

/**
 * Trim of a machine in steady flight: the shaft leans forward until thrust and the rotor’s own drag along the disc, H, balance
 * weight and drag: T = W cos α + D sin α, H = W sin α − D cos α.
 *
 * @param near  drag of the rotor along the disc from which to look, N: that of a neighbour, where there is one
 * @returns undefined when there is no trim, or the flow along the disc would come from behind or pass half the tip speed
 * @source balance of forces along and across the shaft
 */
export function trimLevelFlight(solver: TrimSolver, { speed, tipSpeed, weight, drag, airspeed, climbRate }: SteadyFlight, near = 0): FlightTrim | undefined {
  const total = Math.sqrt(weight ** 2 + drag ** 2);
  let backward = near;
  // Of the round before: the drag along the disc that was taken, and by how much it was missed.
  let [taken, missed] = [Number.NaN, Number.NaN];
  for (let round = 0; round < MOST_TILTS; round++) {
    if (!(Math.abs(backward) < total)) return undefined;
    const discTilt = Math.atan2(drag, weight) + Math.asin(backward / total);
    const thrust = Math.sqrt(total ** 2 - backward ** 2);
    const advanceRatio = (airspeed * Math.cos(discTilt) - climbRate * Math.sin(discTilt)) / tipSpeed;
    if (!(advanceRatio >= 0 && advanceRatio <= 0.5)) return undefined;
    const found = solver.solve({ speed, thrust, advanceRatio, throughRatio: (airspeed * Math.sin(discTilt) + climbRate * Math.cos(discTilt)) / tipSpeed });
    if (found === undefined) return undefined;
    if (Math.abs(found.backwardForce - backward) < SAME_TILT * total) return { ...found, thrust, discTilt, advanceRatio };
    const miss = found.backwardForce - backward;
    const secant = (miss * (backward - taken)) / (missed - miss);
    [taken, missed] = [backward, miss];
    backward += Math.abs(secant) < FARTHEST_SECANT * Math.abs(miss) ? secant : miss;
  }
  return undefined;
}
