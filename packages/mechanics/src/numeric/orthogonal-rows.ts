/**
 * Turns the rows of a matrix among each other until they stand at right angles: their lengths are then its singular values, and their
 * directions its right singular vectors. Small singular values keep their digits beside large ones where the rows differ in scale only.
 *
 * @param rows  of equal length, not more than they have entries; left unchanged
 * @source one-sided Jacobi: Demmel, Applied Numerical Linear Algebra (1997), section 5.4.3 (from memory)
 */
export function orthogonalRows(rows: readonly Float64Array[]): readonly { readonly length: number; readonly direction: Float64Array }[] {
  const turned = rows.map((row) => row.slice());
  for (let sweep = 0; sweep < 60; sweep++) {
    let atRightAngles = true;
    for (let p = 0; p < turned.length; p++) {
      for (let q = p + 1; q < turned.length; q++) if (turn(turned[p]!, turned[q]!)) atRightAngles = false;
    }
    if (atRightAngles) break;
  }
  return turned.map((row) => {
    const length = Math.sqrt(dot(row, row));
    return { length, direction: row.map((part) => part / length) };
  });
}

/** Turns two rows in their plane until they stand at right angles; false when they did already. */
function turn(a: Float64Array, b: Float64Array): boolean {
  const [aa, bb, ab] = [dot(a, a), dot(b, b), dot(a, b)];
  if (!(Math.abs(ab) > 1e-15 * Math.sqrt(aa) * Math.sqrt(bb))) return false;
  const zeta = (bb - aa) / (2 * ab);
  const tangent = (zeta < 0 ? -1 : 1) / (Math.abs(zeta) + Math.sqrt(1 + zeta * zeta));
  const cosine = 1 / Math.sqrt(1 + tangent * tangent);
  const sine = cosine * tangent;
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i]!, b[i]!];
    a[i] = cosine * x - sine * y;
    b[i] = sine * x + cosine * y;
  }
  return true;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
