/** One Reynolds number of a section: angle of attack [°], cl, cd, in ascending angle. */
export interface MeasuredRow {
  readonly reynolds: number;
  readonly points: readonly (readonly [degrees: number, lift: number, drag: number])[];
}
