type Row = readonly [number, number, number];

/**
 * Solves three linear equations by Cramer's rule.
 *
 * @param a  first row of the matrix
 * @param b  second
 * @param c  third
 * @param right  right-hand side
 * @returns the unknowns; undefined where the rows do not settle them
 */
export function solveThree(a: Row, b: Row, c: Row, right: Row): readonly [number, number, number] | undefined {
  const minorA = b[1] * c[2] - b[2] * c[1];
  const minorB = b[2] * c[0] - b[0] * c[2];
  const minorC = b[0] * c[1] - b[1] * c[0];
  const determinant = a[0] * minorA + a[1] * minorB + a[2] * minorC;
  const size = Math.abs(a[0] * minorA) + Math.abs(a[1] * minorB) + Math.abs(a[2] * minorC);
  if (!(Math.abs(determinant) > 1e-14 * size)) return undefined;
  const x = right[0] * minorA + a[1] * (b[2] * right[2] - right[1] * c[2]) + a[2] * (right[1] * c[1] - b[1] * right[2]);
  const y = a[0] * (right[1] * c[2] - b[2] * right[2]) + right[0] * minorB + a[2] * (b[0] * right[2] - right[1] * c[0]);
  const z = a[0] * (b[1] * right[2] - right[1] * c[1]) + a[1] * (right[1] * c[0] - b[0] * right[2]) + right[0] * minorC;
  return [x / determinant, y / determinant, z / determinant];
}
