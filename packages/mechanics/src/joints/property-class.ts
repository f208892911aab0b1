/** Strength of a screw by its property class; Pa. */
export interface ScrewStrength {
  /** R_m, least tensile strength */
  readonly tensileStrength: number;
  /** R_p0.2, or the least yield strength */
  readonly yieldStrength: number;
  /** S_p, the stress that leaves no lasting stretch; the standard of stainless screws gives none */
  readonly proofStress?: number;
  /** Shear strength over tensile strength. */
  readonly shearRatio: number;
}

/** MPa: tensile strength, yield strength, proof stress; then the shear ratio. */
type Row = readonly [tensile: number, yields: number, proof: number | undefined, shearRatio: number];

const none = undefined;

/**
 * @source ISO 898-1:2013, tables 3 and 5; ISO 3506-1:2009, table 2 (proof loads of carbon steel agree with public tables);
 *         shear ratios VDI 2230-1:2003, table 6 (all from memory)
 */
const rows = {
  '4.6': [400, 240, 225, 0.7],
  '4.8': [420, 340, 310, 0.7],
  '5.6': [500, 300, 280, 0.7],
  '5.8': [520, 420, 380, 0.7],
  '6.8': [600, 480, 440, 0.7],
  '8.8': [800, 640, 580, 0.65],
  '9.8': [900, 720, 650, 0.65],
  '10.9': [1040, 940, 830, 0.62],
  '12.9': [1220, 1100, 970, 0.6],
  'A2-50': [500, 210, none, 0.72],
  'A2-70': [700, 450, none, 0.72],
  'A2-80': [800, 600, none, 0.68],
  'A4-50': [500, 210, none, 0.72],
  'A4-70': [700, 450, none, 0.72],
  'A4-80': [800, 600, none, 0.68],
} as const satisfies Readonly<Record<string, Row>>;

export type PropertyClass = keyof typeof rows;

/** Property classes of screws, steel first. */
export const propertyClasses = Object.keys(rows) as readonly PropertyClass[];

/** 8.8 over M16 is made of another steel. */
const heavy88: Row = [830, 660, 600, 0.65];

/**
 * Least strength of a screw of a property class.
 *
 * @param diameter  nominal, m; 8.8 over M16 is stronger
 * @source ISO 898-1:2013, ISO 3506-1:2009, VDI 2230-1:2003 (all from memory)
 * @example screwStrength('12.9', 0.004).yieldStrength // 1100000000
 */
export function screwStrength(propertyClass: PropertyClass, diameter: number): ScrewStrength {
  const [tensile, yields, proof, shearRatio]: Row = propertyClass === '8.8' && diameter > 0.016 ? heavy88 : rows[propertyClass];
  const megapascal = 1e6;
  return { tensileStrength: tensile * megapascal, yieldStrength: yields * megapascal, ...(proof === undefined ? {} : { proofStress: proof * megapascal }), shearRatio };
}
