import { findRoot } from '../numeric/roots.ts';

/** Below this angle tan α − α loses digits, and its series needs few terms. */
const SMALL = 0.1;

/**
 * The involute function: inv α = tan α − α
 *
 * @param angle  α [rad], between −π/2 and π/2
 * @throws RangeError when the angle is out of range
 * @source ISO 21771:2007, section 4 (from memory); definition
 * @example involute(0) // 0
 */
export function involute(angle: number): number {
  if (!(Math.abs(angle) < Math.PI / 2)) throw new RangeError(`involute: angle [rad] must lie between −π/2 and π/2, got ${angle}`);
  if (Math.abs(angle) > SMALL) return Math.tan(angle) - angle;
  const square = angle * angle;
  // Taylor series of tan α − α; the first term left out is below 10⁻¹⁵ of the first one kept.
  return angle * square * (1 / 3 + square * (2 / 15 + square * (17 / 315 + square * (62 / 2835 + square * (1382 / 155_925 + (square * 21_844) / 6_081_075)))));
}

/**
 * The angle whose involute is given.
 *
 * @param value  inv α, any finite number
 * @returns      α [rad], between −π/2 and π/2
 * @throws RangeError when the value is not finite
 * @source Newton's method on t − arctan t, t = tan α, which is convex: it cannot overshoot from above
 * @example inverseInvolute(involute(0.3)) // 0.3
 */
export function inverseInvolute(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`inverseInvolute: a finite value wanted, got ${value}`);
  if (value < 0) return -inverseInvolute(-value);
  if (value < involute(SMALL)) return smallInverse(value);
  let tangent = value + Math.PI / 2;
  for (;;) {
    const next = tangent - ((tangent - Math.atan(tangent) - value) * (1 + tangent * tangent)) / (tangent * tangent);
    if (!(next < tangent)) return Math.atan(tangent);
    tangent = next;
  }
}

/** inv α ≥ α³/3 bounds the angle from above. */
function smallInverse(value: number): number {
  if (value === 0) return 0;
  const upper = Math.cbrt(3 * value);
  return findRoot((angle) => involute(angle) - value, upper * 0.99, upper * (1 + 1e-12));
}
