/**
 * Symmetric matrices with three diagonals on either side, as beam elements make them.
 * Layout: `a[4 * i + d]` holds A(i, i − d) for d = 0…3; entries that would lie left of column 0 are unused and zero.
 */
export type BandMatrix = Float64Array<ArrayBuffer>;

export const bandMatrix = (order: number): BandMatrix => new Float64Array(4 * order);

/** y = A · x */
export function bandMultiply(a: BandMatrix, x: Float64Array, y: Float64Array): void {
  const n = a.length >> 2;
  // What the last three rows still get from later ones, and the last three of x.
  let y1 = 0;
  let y2 = 0;
  let y3 = 0;
  let x1 = 0;
  let x2 = 0;
  let x3 = 0;
  for (let i = 0; i < n; i++) {
    const row = 4 * i;
    const x0 = x[i]!;
    const a1 = a[row + 1]!;
    const a2 = a[row + 2]!;
    const a3 = a[row + 3]!;
    if (i > 2) y[i - 3] = y3 + a3 * x0;
    y3 = y2 + a2 * x0;
    y2 = y1 + a1 * x0;
    y1 = a[row]! * x0 + a1 * x1 + (a2 * x2 + a3 * x3);
    x3 = x2;
    x2 = x1;
    x1 = x0;
  }
  if (n > 2) y[n - 3] = y3;
  if (n > 1) y[n - 2] = y2;
  if (n > 0) y[n - 1] = y1;
}

/**
 * Cholesky factor without roots, A = L·D·Lᵀ with ones on the diagonal of L, in the same layout; its diagonal holds 1/D(i, i).
 *
 * @returns the factor, or undefined when the matrix is not positive definite
 */
export function bandCholesky(a: BandMatrix): BandMatrix | undefined {
  const n = a.length >> 2;
  const l = a.slice();
  for (let i = 0; i < n; i++) {
    const row = 4 * i;
    // What L·D holds; over D it becomes L.
    const u3 = i > 2 ? l[row + 3]! : 0;
    const u2 = i > 1 ? l[row + 2]! - (i > 2 ? u3 * l[row - 7]! : 0) : 0;
    const u1 = i > 0 ? l[row + 1]! - (i > 1 ? u2 * l[row - 3]! : 0) - (i > 2 ? u3 * l[row - 2]! : 0) : 0;
    const l3 = i > 2 ? u3 * l[row - 12]! : 0;
    const l2 = i > 1 ? u2 * l[row - 8]! : 0;
    const l1 = i > 0 ? u1 * l[row - 4]! : 0;
    const pivot = l[row]! - u1 * l1 - u2 * l2 - u3 * l3;
    if (!(pivot > 0)) return undefined;
    l[row] = 1 / pivot;
    l[row + 1] = l1;
    l[row + 2] = l2;
    l[row + 3] = l3;
  }
  return l;
}

/**
 * Solves L · D · Lᵀ · x = b in place, with the factor of `bandCholesky`.
 * Each sum takes the newest value last, so that the chain from one row to the next is as short as it can be.
 */
export function bandSolve(l: BandMatrix, x: Float64Array): void {
  const n = l.length >> 2;
  let x1 = 0;
  let x2 = 0;
  let x3 = 0;
  for (let i = 0; i < n; i++) {
    const row = 4 * i;
    const value = x[i]! - l[row + 3]! * x3 - l[row + 2]! * x2 - l[row + 1]! * x1;
    x[i] = value * l[row]!;
    x3 = x2;
    x2 = x1;
    x1 = value;
  }
  x1 = x2 = x3 = 0;
  let l1 = 0;
  let l2 = 0;
  let l3 = 0;
  for (let i = n - 1; i >= 0; i--) {
    const row = 4 * i;
    const value = x[i]! - l3 * x3 - l2 * x2 - l1 * x1;
    x[i] = value;
    x3 = x2;
    x2 = x1;
    x1 = value;
    l1 = l[row + 1]!;
    l2 = i < n - 1 ? l[row + 6]! : 0;
    l3 = i < n - 2 ? l[row + 11]! : 0;
  }
}

/**
 * How many eigenvalues of the pencil K − λM lie below λ: the number of negative pivots of its factor (Sylvester's law of inertia).
 * Holds for positive definite K even where M is indefinite (then counting those between 0 and λ), and for positive definite M.
 *
 * @source Parlett, The Symmetric Eigenvalue Problem (1998), section 3.3 (from memory)
 */
export function countBelow(k: BandMatrix, m: BandMatrix, lambda: number): number {
  const n = k.length >> 2;
  let count = 0;
  // Pivots and multipliers of the last three rows: d1 belongs to row i − 1, and so on; m21 is L(i − 1, i − 2).
  let d1 = 1;
  let d2 = 1;
  let d3 = 1;
  let m21 = 0;
  let m31 = 0;
  let m32 = 0;
  for (let i = 0; i < n; i++) {
    const row = 4 * i;
    const u3 = k[row + 3]! - lambda * m[row + 3]!;
    const u2 = k[row + 2]! - lambda * m[row + 2]! - u3 * m32;
    const u1 = k[row + 1]! - lambda * m[row + 1]! - u2 * m21 - u3 * m31;
    const l3 = u3 / d3;
    const l2 = u2 / d2;
    const l1 = u1 / d1;
    let pivot = k[row]! - lambda * m[row]! - u1 * l1 - u2 * l2 - u3 * l3;
    if (pivot === 0) pivot = 1e-300;
    if (pivot < 0) count++;
    m32 = m21;
    m21 = l1;
    m31 = l2;
    d3 = d2;
    d2 = d1;
    d1 = pivot;
  }
  return count;
}
