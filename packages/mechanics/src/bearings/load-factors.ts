import { interpolate } from '../numeric/interpolate.ts';

/** How a bearing turns a radial and an axial load into one: P = X·F_r + Y·F_a where F_a/F_r is over e, else F_r. */
export interface LoadFactors {
  /** e; at or below it the axial load does not count. */
  readonly limit: number;
  /** X */
  readonly radial: number;
  /** Y */
  readonly axial: number;
}

/** One line of the table of a contact angle: f0·F_a/C_0 ascending, with e and Y for each. */
interface Angle {
  /** rad */
  readonly angle: number;
  readonly radial: number;
  readonly relativeLoads: readonly number[];
  readonly limits: readonly number[];
  readonly axial: readonly number[];
}

const degrees = (value: number): number => (value * Math.PI) / 180;
const constant = (angle: number, radial: number, axial: number, limit: number): Angle => ({ angle: degrees(angle), radial, relativeLoads: [0], limits: [limit], axial: [axial] });

/**
 * Single-row deep-groove bearing with normal clearance.
 *
 * @source ISO 281:2007, table 3 (from memory), as bearing catalogues print it
 */
const deepGroove: Angle = {
  angle: degrees(5),
  radial: 0.56,
  relativeLoads: [0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89],
  limits: [0.19, 0.22, 0.26, 0.28, 0.3, 0.34, 0.38, 0.42, 0.44],
  axial: [2.3, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1],
};

/**
 * Single-row angular-contact bearings, contact angle ascending. Only a small angle changes with the load.
 *
 * @source ISO 281:2007, table 3 (from memory)
 */
const angularContact: readonly Angle[] = [
  {
    angle: degrees(15),
    radial: 0.44,
    relativeLoads: [0.178, 0.357, 0.714, 1.07, 1.43, 2.14, 3.57, 5.35, 7.14],
    limits: [0.38, 0.4, 0.43, 0.46, 0.47, 0.5, 0.55, 0.56, 0.56],
    axial: [1.47, 1.4, 1.3, 1.23, 1.19, 1.12, 1.02, 1, 1],
  },
  constant(20, 0.43, 1, 0.57),
  constant(25, 0.41, 0.87, 0.68),
  constant(30, 0.39, 0.76, 0.8),
  constant(35, 0.37, 0.66, 0.95),
  constant(40, 0.35, 0.57, 1.14),
  constant(45, 0.33, 0.5, 1.34),
];

const at = ({ radial, relativeLoads, limits, axial }: Angle, relativeLoad: number): LoadFactors => ({
  radial,
  limit: interpolate(relativeLoads, limits, relativeLoad),
  axial: interpolate(relativeLoads, axial, relativeLoad),
});

/** Contact angles between which the table of angular-contact bearings can be read [rad]. */
export const angularContactRange = { least: angularContact[0]!.angle, most: angularContact.at(-1)!.angle } as const;

/** f0·F_a/C_0 between which the table of deep-groove bearings is printed. */
export const relativeLoadRange = { least: deepGroove.relativeLoads[0]!, most: deepGroove.relativeLoads.at(-1)! } as const;

/**
 * Load factors of a single-row deep-groove ball bearing with normal clearance.
 *
 * @param relativeLoad  f0·F_a/C_0, not negative; read along straight lines, held at the ends of the table
 * @throws RangeError when it is negative or no number
 * @source ISO 281:2007, table 3 (from memory); linear interpolation as a worked example of a bearing catalogue does it
 * @example deepGrooveFactors(1.38).axial // 1.45
 */
export function deepGrooveFactors(relativeLoad: number): LoadFactors {
  if (!(relativeLoad >= 0)) throw new RangeError(`deepGrooveFactors: relativeLoad must not be negative, got ${relativeLoad}`);
  return at(deepGroove, relativeLoad);
}

/**
 * Load factors of a single-row angular-contact ball bearing that takes its axial load on its own.
 *
 * @param contactAngle  rad, 15° to 45°; read along straight lines between the angles of the table
 * @param relativeLoad  f0·F_a/C_0, not negative
 * @throws RangeError outside these
 * @source ISO 281:2007, table 3 (from memory)
 * @example angularContactFactors(40 * Math.PI / 180, 1) // { limit: 1.14, radial: 0.35, axial: 0.57 }
 */
export function angularContactFactors(contactAngle: number, relativeLoad: number): LoadFactors {
  const { least, most } = angularContactRange;
  if (!(contactAngle >= least && contactAngle <= most)) throw new RangeError(`angularContactFactors: contactAngle must be ${least} to ${most} rad (15° to 45°), got ${contactAngle}`);
  if (!(relativeLoad >= 0)) throw new RangeError(`angularContactFactors: relativeLoad must not be negative, got ${relativeLoad}`);
  const angles = angularContact.map(({ angle }) => angle);
  const factors = angularContact.map((line) => at(line, relativeLoad));
  const read = (of: keyof LoadFactors): number => interpolate(angles, factors.map((each) => each[of]), contactAngle);
  return { limit: read('limit'), radial: read('radial'), axial: read('axial') };
}

/**
 * Load factors of a single-direction thrust ball bearing; P is an axial load.
 *
 * @param contactAngle  rad, over 45° up to 90°; at 90° it takes no radial load at all
 * @throws RangeError outside these
 * @source ISO 281:2007, table 6 (from memory): e = 1.25·tan α, X = 1.25·tan α·(1 − ⅔ sin α), Y = 1
 * @example thrustFactors(60 * Math.PI / 180).limit // 2.1650635
 */
export function thrustFactors(contactAngle: number): LoadFactors {
  if (!(contactAngle > degrees(45) && contactAngle < degrees(90))) throw new RangeError(`thrustFactors: contactAngle must be over 45° and below 90°, got ${contactAngle} rad`);
  const limit = 1.25 * Math.tan(contactAngle);
  return { limit, radial: limit * (1 - (2 / 3) * Math.sin(contactAngle)), axial: 1 };
}
