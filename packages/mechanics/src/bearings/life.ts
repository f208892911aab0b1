import { interpolate } from '../numeric/interpolate.ts';

/** Editions of ISO 281 whose reliability factors differ. */
export type LifeEdition = '2007' | '1990';

/** Chance of surviving, with the factor that the edition of 2007 prints for it. */
const printed = [
  [0.9, 1], [0.95, 0.64], [0.96, 0.55], [0.97, 0.47], [0.98, 0.37], [0.99, 0.25], [0.992, 0.22], [0.994, 0.19], [0.996, 0.16], [0.998, 0.12],
  [0.999, 0.093], [0.9992, 0.087], [0.9994, 0.08], [0.9995, 0.077],
] as const;

/** Chance of surviving, with the factor that the edition of 1990 prints for it. */
const printed1990 = [[0.9, 1], [0.95, 0.62], [0.96, 0.53], [0.97, 0.44], [0.98, 0.33], [0.99, 0.21]] as const;

const tables = { 2007: printed, 1990: printed1990 } as const;

/** Highest reliability for which each edition prints a factor. */
export const highestReliability = { 2007: printed.at(-1)![0], 1990: printed1990.at(-1)![0] } as const;

/**
 * Life modification factor for reliability a1: the share of the life L10 that more than nine bearings in ten reach.
 *
 * Both editions follow lives that scatter with a Weibull slope of 1.5. That of 1990 lets a bearing fail from the first
 * turn, that of 2007 holds that none fails within 5 % of L10: a1 = 0.05 + 0.95·(ln S/ln 0.9)^(2/3), rounded in print.
 *
 * @param reliability  S, 0.9 up to the highest of the table; between its lines along straight lines
 * @throws RangeError outside these
 * @source ISO 281:2007, table 12, and ISO 281:1990 (both from memory)
 * @example reliabilityFactor(0.95, '2007') // 0.64
 */
export function reliabilityFactor(reliability: number, edition: LifeEdition): number {
  const table = tables[edition];
  const highest = highestReliability[edition];
  if (!(reliability >= 0.9 && reliability <= highest)) throw new RangeError(`reliabilityFactor: reliability must be 0.9 to ${highest}, got ${reliability}`);
  return interpolate(table.map(([chance]) => chance), table.map(([, factor]) => factor), reliability);
}

/** Exponents p of the life of ball and of roller bearings. */
export const lifeExponent = { ball: 3, roller: 10 / 3 } as const;

/**
 * Basic rating life, which nine bearings in ten reach: L10 = 10⁶·(C/P)^p
 *
 * @param dynamicRating  C [N], positive
 * @param load           P [N], positive
 * @param exponent       p: 3 for balls, 10/3 for rollers
 * @returns              revolutions
 * @throws RangeError unless both are positive and finite
 * @neglects lubrication, dirt, misfit, heat; see `lifeModification`
 * @source ISO 281:2007, 5.3 and 7.3 (from memory)
 * @example basicLife(55300, 10000, 3) // 169112377
 */
export function basicLife(dynamicRating: number, load: number, exponent: number): number {
  if (!(dynamicRating > 0 && load > 0 && Number.isFinite(dynamicRating + load))) throw new RangeError(`basicLife: rating and load must be positive and finite, got ${dynamicRating} and ${load} N`);
  return 1e6 * (dynamicRating / load) ** exponent;
}

/**
 * Speed factor of bearing catalogues, 1 at 33⅓ rpm: f_n = (33⅓ rpm/n)^(1/p)
 *
 * @param speed     n [rad/s], not zero
 * @param exponent  p: 3 for balls, 10/3 for rollers
 * @throws RangeError when the speed is zero or no number
 * @source bearing catalogues; from a rating for 10⁶ turns, which are 500 h at 33⅓ rpm
 * @example speedFactor(900 * Math.PI / 30, 3) // 0.33333333
 */
export function speedFactor(speed: number, exponent: number): number {
  if (!(Math.abs(speed) > 0)) throw new RangeError(`speedFactor: speed must not be zero, got ${speed} rad/s`);
  return ((100 * Math.PI) / 90 / Math.abs(speed)) ** (1 / exponent);
}
