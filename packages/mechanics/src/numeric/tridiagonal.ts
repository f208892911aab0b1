/** Values of a symmetric tridiagonal matrix, and what is needed to form their vectors. */
export interface Eigen {
  readonly values: Float64Array;
  /** Last component of the vector of each, of unit length. */
  readonly lastComponents: Float64Array;
  /** Indices of the values, the largest first. */
  readonly descending: Int32Array;
  /** Plane rotations in the order in which they were made: row, cosine, sine; so many of them. */
  readonly rotations: Float64Array;
  readonly turns: number;
}

const NOTHING = 1e-100;

/**
 * Eigenvalues of a symmetric tridiagonal matrix, by implicit QL with Wilkinson's shift.
 *
 * @param diagonal     n numbers
 * @param offDiagonal  at least n − 1 numbers; later ones are ignored. All finite
 * @source Golub and Van Loan, Matrix Computations (1996), section 8.3 (from memory)
 */
export function tridiagonalEigen(diagonal: readonly number[], offDiagonal: readonly number[]): Eigen {
  const n = diagonal.length;
  const d = new Float64Array(n);
  const e = new Float64Array(n);
  const z = new Float64Array(n);
  z[n - 1] = 1;
  // Two sweeps and a half a value, each over half the rows, are most often enough.
  let rotations = new Float64Array(4 * n * n);
  let turns = 0;
  // Over its largest entry, so that no square under- or overflows; what is smaller than `NOTHING` then is nothing.
  let size = 0;
  for (let i = 0; i < n; i++) size = Math.max(size, Math.abs(diagonal[i]!), i < n - 1 ? Math.abs(offDiagonal[i]!) : 0);
  if (!(size > 0)) size = 1;
  for (let i = 0; i < n; i++) {
    d[i] = diagonal[i]! / size;
    if (i < n - 1) e[i] = offDiagonal[i]! / size;
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
        if (rotations.length < 3 * turns + 3) rotations = twice(rotations);
        rotations[3 * turns] = i;
        rotations[3 * turns + 1] = c;
        rotations[3 * turns + 2] = s;
        turns++;
        const t = z[i + 1]!;
        z[i + 1] = s * z[i]! + c * t;
        z[i] = c * z[i]! - s * t;
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
  return { values: d, lastComponents: z, descending, rotations, turns };
}

function twice(numbers: Float64Array): Float64Array<ArrayBuffer> {
  const longer = new Float64Array(2 * numbers.length);
  longer.set(numbers);
  return longer;
}

/**
 * Vectors of unit length of some of the values: the rotations undone, last first, on the unit vectors. Costs a share of the time that
 * turning all of them along with the matrix would.
 *
 * @param indices  of the values
 * @returns        component k of the j-th of them at [k·m + j], m as many as there are
 */
export function tridiagonalVectors({ values, rotations, turns }: Eigen, indices: Int32Array): Float64Array {
  const m = indices.length;
  const x = new Float64Array(values.length * m);
  for (let j = 0; j < m; j++) x[indices[j]! * m + j] = 1;
  for (let at = 3 * (turns - 1); at >= 0; at -= 3) {
    const lower = rotations[at]! * m;
    const upper = lower + m;
    const c = rotations[at + 1]!;
    const s = rotations[at + 2]!;
    for (let j = 0; j < m; j++) {
      const t = x[lower + j]!;
      x[lower + j] = c * t + s * x[upper + j]!;
      x[upper + j] = c * x[upper + j]! - s * t;
    }
  }
  return x;
}
