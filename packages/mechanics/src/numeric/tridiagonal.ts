/**
 * Eigenvalues and vectors of a symmetric tridiagonal matrix, by implicit QL with Wilkinson's shift.
 *
 * @param diagonal     n numbers
 * @param offDiagonal  at least n − 1 numbers; later ones are ignored
 * @returns            values ascending; vectors as rows of unit length: component k of vector j at [j·n + k]
 * @source Golub and Van Loan, Matrix Computations (1996), section 8.3 (from memory)
 */
export function tridiagonalEigen(diagonal: readonly number[], offDiagonal: readonly number[]): { values: Float64Array; vectors: Float64Array } {
  const n = diagonal.length;
  const d = Float64Array.from(diagonal);
  const e = new Float64Array(n);
  for (let i = 0; i < n - 1; i++) e[i] = offDiagonal[i]!;
  const z = new Float64Array(n * n);
  for (let i = 0; i < n; i++) z[i * n + i] = 1;

  for (let l = 0; l < n; l++) {
    for (;;) {
      let m = l;
      while (m < n - 1 && Math.abs(e[m]!) > 2.3e-16 * (Math.abs(d[m]!) + Math.abs(d[m + 1]!))) m++;
      if (m === l) break;
      let g = (d[l + 1]! - d[l]!) / (2 * e[l]!);
      let r = Math.sqrt(g * g + 1);
      g = d[m]! - d[l]! + e[l]! / (g + (g >= 0 ? r : -r));
      let s = 1;
      let c = 1;
      let p = 0;
      let i = m - 1;
      for (; i >= l; i--) {
        const f = s * e[i]!;
        const b = c * e[i]!;
        r = Math.sqrt(f * f + g * g);
        e[i + 1] = r;
        if (r === 0) {
          d[i + 1]! -= p;
          e[m] = 0;
          break;
        }
        s = f / r;
        c = g / r;
        g = d[i + 1]! - p;
        r = (d[i]! - g) * s + 2 * c * b;
        p = s * r;
        d[i + 1] = g + p;
        g = c * r - b;
        const lower = i * n;
        const upper = lower + n;
        for (let k = 0; k < n; k++) {
          const t = z[upper + k]!;
          z[upper + k] = s * z[lower + k]! + c * t;
          z[lower + k] = c * z[lower + k]! - s * t;
        }
      }
      if (r === 0 && i >= l) continue;
      d[l]! -= p;
      e[l] = g;
      e[m] = 0;
    }
  }

  const order = Array.from(d.keys()).sort((a, b) => d[a]! - d[b]!);
  const values = new Float64Array(n);
  const vectors = new Float64Array(n * n);
  order.forEach((from, to) => {
    values[to] = d[from]!;
    vectors.set(z.subarray(from * n, (from + 1) * n), to * n);
  });
  return { values, vectors };
}
