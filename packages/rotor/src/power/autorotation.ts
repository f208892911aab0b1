import { findRoot } from '@rotorwright/mechanics';

/**
 * Rotor speed below which the blades would stall when they pull up as hard as it takes: Ω·√(b/(k·b_max))
 *
 * @param speed           Ω [rad/s]
 * @param bladeLoading    b = C_T/σ in hover
 * @param maximumLoading  b_max, at stall
 * @param reserve         k, share of it that is used
 * @returns               [rad/s]
 * @source thrust at a given blade loading goes with the square of the speed
 */
export function minimumRotorSpeed(speed: number, bladeLoading: number, maximumLoading: number, reserve: number): number {
  return speed * Math.sqrt(bladeLoading / (reserve * maximumLoading));
}

/**
 * Time until the rotor has slowed to a speed with the collective held: J·Ω²/P·(Ω/Ω_min − 1)
 *
 * Torque goes with Ω², so dΩ/dt = −(P/JΩ)·(Ω/Ω₀)², which integrates to this.
 *
 * @param inertia  J [kg·m²]
 * @param speed    Ω [rad/s]
 * @param power    P at Ω [W]
 * @param minimum  Ω_min [rad/s], below Ω
 * @returns        [s]
 * @source derived above
 */
export function rotorDecayTime(inertia: number, speed: number, power: number, minimum: number): number {
  return ((inertia * speed ** 2) / power) * (speed / minimum - 1);
}

/** Descent ratio at which the measured curve meets the windmill branch. */
const MEETING = 2;

/**
 * Rate of a vertical descent without engine, over the induced speed of hover: the root of x + ν(x) + P_0/(W·v_h) = 0
 * that is nearest to zero, x = −ratio. For −2 ≤ x ≤ 0, where momentum theory has no answer, ν is a measured curve;
 * below, it is that of the windmill brake state. Between the two branches ν steps by 0.026; a value in the step is 2.
 *
 * @param powerRatio     P_0/(W·v_h), all power but the induced, over weight times induced speed of hover; not negative
 * @param inducedFactor  κ, positive
 * @returns              descent rate over v_h
 * @throws RangeError when an argument is out of range
 * @source J. G. Leishman, Principles of Helicopter Aerodynamics, axial descent (from memory): ν = κ − 1.125x − 1.372x² − 1.718x³ − 0.655x⁴
 */
export function autorotationDescentRatio(powerRatio: number, inducedFactor: number): number {
  if (!(powerRatio >= 0) || !Number.isFinite(powerRatio)) throw new RangeError(`autorotationDescentRatio: powerRatio must not be negative, got ${powerRatio}`);
  if (!(inducedFactor > 0) || !Number.isFinite(inducedFactor)) throw new RangeError(`autorotationDescentRatio: inducedFactor must be positive, got ${inducedFactor}`);
  const measured = (ratio: number): number => powerRatio - ratio + inducedFactor + ratio * (1.125 + ratio * (-1.372 + ratio * (1.718 - 0.655 * ratio)));
  const windmill = (ratio: number): number => powerRatio - ratio + inducedFactor * (ratio / 2 - Math.sqrt(ratio ** 2 / 4 - 1));
  // The measured branch starts above zero and, past a shallow crest near 0.05, only falls: one root or none.
  if (measured(MEETING) <= 0) return findRoot(measured, 0, MEETING);
  // The windmill branch only falls, and is below zero where the induced speed could no longer make up the difference.
  if (windmill(MEETING) <= 0) return MEETING;
  return findRoot(windmill, MEETING, MEETING + powerRatio + 2 * inducedFactor);
}
