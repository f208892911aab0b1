/** Values and, as rows of unit length, their vectors: component k of vector j at [j·n + k]. */
export interface Eigen {
  readonly values: Float64Array;
  readonly vectors: Float64Array;
  /** Indices of the values, the largest first. */
  readonly descending: Int32Array;
}

const NOTHING = 1e-100;

/**
 * Eigenvalues and vectors of a symmetric tridiagonal matrix, by implicit QL with Wilkinson's shift.
 *
 * @param diagonal     n numbers
 * @param offDiagonal  at least n − 1 numbers; later ones are ignored. All finite
 * @source Golub and Van Loan, Matrix Computations (1996), section 8.3 (from memory)
 */
export function tridiagonalEigen(diagonal: readonly number[], offDiagonal: readonly number[]): Eigen {
  const n = diagonal.length;
  const d = new Float64Array(n);
  const e = new Float64Array(n);
  const z = new Float64Array(n * n);
  // Over its largest entry, so that no square under- or overflows; what is smaller than `NOTHING` then is nothing.
  let size = 0;
  for (let i = 0; i < n; i++) size = Math.max(size, Math.abs(diagonal[i]!), i < n - 1 ? Math.abs(offDiagonal[i]!) : 0);
  if (!(size > 0)) size = 1;
  for (let i = 0; i < n; i++) {
    d[i] = diagonal[i]! / size;
    if (i < n - 1) e[i] = offDiagonal[i]! / size;
    z[i * n + i] = 1;
  }

  for (let l = 0; l < n; l++) {
    for (;;) {
      let m = l;
      while (m < n - 1 && Math.abs(e[m]!) > 2.3e-16 * (Math.abs(d[m]!) + Math.abs(d[m + 1]!)) + NOTHING) m++;
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

  for (let i = 0; i < n; i++) d[i]! *= size;
  const descending = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    let place = i;
    for (; place > 0 && d[descending[place - 1]!]! < d[i]!; place--) descending[place] = descending[place - 1]!;
    descending[place] = i;
  }
  return { values: d, vectors: z, descending };
}
