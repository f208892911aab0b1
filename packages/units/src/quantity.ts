/** Exponents of metre, kilogram, second, ampere, kelvin and radian. Angle is a base of its own, so that rpm is never taken for Hz, nor N·m/rad for N·m. */
export type Dimension = readonly [m: number, kg: number, s: number, A: number, K: number, rad: number];

/** A quantity as read: value in SI (radian for angles, kelvin for temperatures), and how it was written. */
export interface Quantity {
  readonly value: number;
  readonly dimension: Dimension;
  /** Unit as written, spelling normalised: `N·m` for Nm, N*m. */
  readonly unit: string;
}

/** A window as read, in SI. Both sides are alike for a single quantity; an open side (`at least 3 mm`) is left out. */
export interface QuantityWindow {
  readonly min?: number;
  readonly max?: number;
  readonly dimension: Dimension;
  readonly unit: string;
}

/** A size as read, in SI: what it should be, and the limits between which it lies. Without a window the three are alike. */
export interface QuantitySize {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
  readonly dimension: Dimension;
  readonly unit: string;
}

/** Why a text is no unit. `nearest` is the nearest known unit. */
export type UnitProblem =
  | { readonly problem: 'unit-unknown'; readonly text: string; readonly unit: string; readonly nearest: string }
  | { readonly problem: 'unit-misplaced'; readonly text: string; readonly unit: string; readonly reason: string };

/** Why a text is no quantity. `reason` is a sentence that says what would be right. */
export type QuantityProblem =
  | { readonly problem: 'number'; readonly text: string; readonly reason: string }
  | { readonly problem: 'unit-missing'; readonly text: string }
  | UnitProblem
  | { readonly problem: 'window'; readonly text: string; readonly reason: string };
