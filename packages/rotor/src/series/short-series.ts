/**
 * Angles that recur a million times in a sweep: short series where they hold, the library’s functions elsewhere.
 *
 * Coefficients stand as products: a division costs as much as ten multiplications, and one in a series waits for the next.
 */

const ONE_3 = 1 / 3;
const ONE_5 = 1 / 5;
const ONE_7 = 1 / 7;
const ONE_9 = 1 / 9;
const ONE_11 = 1 / 11;
const ONE_13 = 1 / 13;
const ONE_15 = 1 / 15;
const ONE_17 = 1 / 17;
const ONE_19 = 1 / 19;

/**
 * atan2(through, across), by its series where the flow comes from ahead and is not steep: most elements of a disc most of the time.
 *
 * @source series of the arc tangent; its remainder is below 10⁻¹² where |through/across| < 0.3
 */
export function inflowAngle(through: number, across: number): number {
  const z = through / across;
  if (!(across > 0 && z < 0.3 && z > -0.3)) return Math.atan2(through, across);
  const y = z * z;
  if (y < 0.01) return z * (1 - y * (ONE_3 - y * (ONE_5 - y * (ONE_7 - y * (ONE_9 - y * ONE_11)))));
  return z * (1 - y * (ONE_3 - y * (ONE_5 - y * (ONE_7 - y * (ONE_9 - y * (ONE_11 - y * (ONE_13 - y * (ONE_15 - y * (ONE_17 - y * ONE_19)))))))));
}

const SINE_3 = 1 / 6;
const SINE_5 = 1 / 120;
const SINE_7 = 1 / 5040;
const SINE_9 = 1 / 362880;
const SINE_11 = 1 / 39916800;

/** sin φ, by its series where it is short: the remainder is below 10⁻¹³. */
export function sineOf(phi: number): number {
  if (!(phi < 0.4 && phi > -0.4)) return Math.sin(phi);
  const y = phi * phi;
  return phi * (1 - y * (SINE_3 - y * (SINE_5 - y * (SINE_7 - y * (SINE_9 - y * SINE_11)))));
}

/**
 * arccos e for e from 0 to 1: by its series where it is short, by a quotient of polynomials up to ½, and past ½ by that of the
 * half angle, for arccos e = 2·arcsin √((1 − e)/2); right to 10⁻¹⁵.
 *
 * @source quotient (arcsin x − x)/x³: fdlibm 5.3 (1995), e_acos.c (from memory; the tests hold it to the library’s function)
 */
export function arcCosine(e: number): number {
  if (e < 0.02) {
    const y = e * e;
    return Math.PI / 2 - e * (1 + y * (1 / 6 + y * (3 / 40 + y * (15 / 336))));
  }
  if (e < 0.5) return Math.PI / 2 - e * (1 + arcSineRest(e * e));
  const y = 0.5 * (1 - e);
  return 2 * Math.sqrt(y) * (1 + arcSineRest(y));
}

/** 1/cos φ of e = sin φ from 0 to 1: 1/√(1 − e²), by its series where it is short: the remainder is below 10⁻¹³. */
export function perCosine(e: number): number {
  const y = e * e;
  return e < 0.02 ? 1 + y * (1 / 2 + y * (3 / 8 + y * (5 / 16))) : 1 / Math.sqrt(1 - y);
}

/** arcsin x/x − 1 of y = x², up to ¼. */
function arcSineRest(y: number): number {
  const above = y * (1.66666666666666657415e-1 + y * (-3.25565818622400915405e-1 + y * (2.01212532134862925881e-1 + y * (-4.00555345006794114027e-2 + y * (7.91534994289814532176e-4 + y * 3.47933107596021167570e-5)))));
  const below = 1 + y * (-2.40339491173441421878 + y * (2.02094576023350569471 + y * (-6.88283971605453293030e-1 + y * 7.70381505559019352791e-2)));
  return above / below;
}

/** e⁻ˣ at every eighth from 0 to 30. */
const EIGHTHS = Float64Array.from({ length: 241 }, (_, k) => Math.exp(-k / 8));
const ONE_720 = 1 / 720;

/** e⁻ˣ for x from 0 to 30: the nearest eighth from a table, the rest by its series; right to 10⁻¹². */
export function decay(x: number): number {
  const k = (8 * x + 0.5) | 0;
  const r = 0.125 * k - x;
  return EIGHTHS[k]! * (1 + r * (1 + r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r * ONE_720))))));
}
