/** Kinds that ISO 281 tells apart when it takes lubrication and dirt into account. */
export type BearingFamily = 'radial-ball' | 'radial-roller' | 'thrust-ball' | 'thrust-roller';

/** a_ISO = 0.1·[1 − (a − b/κ^c)^d·(f·e_C·C_u/P)^g]^h, with b and c by κ. */
interface Family {
  readonly a: number;
  /** For κ below 0.4, then from there on. */
  readonly b: readonly [number, number];
  readonly d: number;
  readonly f: number;
  readonly g: number;
  readonly h: number;
}

const ball = { a: 2.5671, b: [2.2649, 1.9987], d: 0.83, g: 1 / 3, h: -9.3 } as const;
const roller = { a: 1.5859, b: [1.3993, 1.2348], d: 1, g: 0.4, h: -9.185 } as const;

const families: Readonly<Record<BearingFamily, Family>> = {
  'radial-ball': { ...ball, f: 1 },
  'radial-roller': { ...roller, f: 1 },
  'thrust-ball': { ...ball, f: 1 / 3 },
  'thrust-roller': { ...roller, f: 1 / 2.5 },
};

/** Viscosity ratios between which the formulas stand; a ratio above counts as the highest. */
export const viscosityRatioRange = { least: 0.1, most: 4 } as const;

/** No bearing is reckoned to last longer than this multiple of its basic life. */
const mostModification = 50;

/**
 * Life modification factor a_ISO for lubrication and dirt, at most 50.
 *
 * @param viscosityRatio  κ = ν/ν₁, at least 0.1; over 4 it counts as 4
 * @param contamination   e_C·C_u/P: dirt factor times fatigue load limit over equivalent load, not negative
 * @throws RangeError outside these
 * @source ISO 281:2007, 9.3.3, equations 31 to 42 (from memory); those for radial ball bearings stand in public sources too
 * @example lifeModification(1, 0.1, 'radial-ball') // 2.4305177780348117
 */
export function lifeModification(viscosityRatio: number, contamination: number, family: BearingFamily): number {
  const { least, most } = viscosityRatioRange;
  if (!(viscosityRatio >= least)) throw new RangeError(`lifeModification: viscosityRatio must be at least ${least}, got ${viscosityRatio}`);
  if (!(contamination >= 0)) throw new RangeError(`lifeModification: contamination must not be negative, got ${contamination}`);
  const { a, b, d, f, g, h } = families[family];
  const kappa = Math.min(viscosityRatio, most);
  const film = kappa < 0.4 ? b[0] / kappa ** 0.054381 : b[1] / kappa ** (kappa < 1 ? 0.19087 : 0.071739);
  const left = 1 - (a - film) ** d * (f * contamination) ** g;
  // Where so little is left to fail, the formula has run past its upper end.
  return left <= 0 ? mostModification : Math.min(mostModification, 0.1 * left ** h);
}

/**
 * Reference viscosity ν₁: what the lubricant needs at running temperature for κ = 1.
 *
 * @param speed          rad/s, not zero
 * @param pitchDiameter  of the elements, m; (d + D)/2 does
 * @returns              m²/s; in mm²/s, n in rpm and D in mm: 45000·n^−0.83·D^−½ below 1000 rpm, 4500·n^−½·D^−½ from there
 * @throws RangeError unless the speed is not zero and the diameter positive
 * @source ISO 281:2007, 9.3.3.2 (from memory)
 * @example referenceViscosity(3000 * Math.PI / 30, 0.0725) // 9.649013e-6
 */
export function referenceViscosity(speed: number, pitchDiameter: number): number {
  if (!(Math.abs(speed) > 0 && pitchDiameter > 0)) throw new RangeError(`referenceViscosity: a speed other than zero and a positive diameter are needed, got ${speed} rad/s and ${pitchDiameter} m`);
  const rpm = (Math.abs(speed) * 30) / Math.PI;
  return (1e-6 * (rpm < 1000 ? 45_000 * rpm ** -0.83 : 4500 / Math.sqrt(rpm))) / Math.sqrt(pitchDiameter * 1000);
}
