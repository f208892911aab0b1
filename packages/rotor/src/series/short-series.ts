/** Angles that recur a million times in a sweep: short series where they hold, the library’s functions elsewhere. */

/**
 * atan2(through, across), by its series where the flow comes from ahead and is not steep: most elements of a disc most of the time.
 *
 * @source series of the arc tangent; its remainder is below 10⁻¹² where |through/across| < 0.3
 */
export function inflowAngle(through: number, across: number): number {
  const z = through / across;
  if (!(across > 0 && z < 0.3 && z > -0.3)) return Math.atan2(through, across);
  const y = z * z;
  return z * (1 - y * (1 / 3 - y * (1 / 5 - y * (1 / 7 - y * (1 / 9 - y * (1 / 11 - y * (1 / 13 - y * (1 / 15 - y * (1 / 17 - y / 19)))))))));
}

/** sin φ, by its series where it is short: the remainder is below 10⁻¹³. */
export function sineOf(phi: number): number {
  if (!(phi < 0.4 && phi > -0.4)) return Math.sin(phi);
  const y = phi * phi;
  return phi * (1 - (y / 6) * (1 - (y / 20) * (1 - (y / 42) * (1 - (y / 72) * (1 - y / 110)))));
}

/** arccos e for e from 0 to 1, by its series where it is short: the remainder is below 10⁻¹⁵. */
export function arcCosine(e: number): number {
  if (e > 0.02) return Math.acos(e);
  const y = e * e;
  return Math.PI / 2 - e * (1 + y * (1 / 6 + y * (3 / 40 + y * (15 / 336))));
}

/** e⁻ˣ at every eighth from 0 to 30. */
const EIGHTHS = Float64Array.from({ length: 241 }, (_, k) => Math.exp(-k / 8));

/** e⁻ˣ for x from 0 to 30: the nearest eighth from a table, the rest by its series; right to 10⁻¹². */
export function decay(x: number): number {
  const k = (8 * x + 0.5) | 0;
  const r = k / 8 - x;
  return EIGHTHS[k]! * (1 + r * (1 + r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r / 720))))));
}
