type Row = readonly [number, number, number];
/** Symmetric, kg·m². */
export type Tensor = readonly [Row, Row, Row];

/**
 * Principal moments of a symmetric tensor, ascending, by Jacobi rotations.
 *
 * @source Golub and Van Loan, Matrix Computations (1996), section 8.4 (from memory)
 * @example principalMoments([[2, 1, 0], [1, 2, 0], [0, 0, 5]]) // [1, 3, 5]
 */
export function principalMoments(tensor: Tensor): Row {
  const a = tensor.map((row) => [...row]);
  for (let sweep = 0; sweep < 30; sweep++) {
    let turned = false;
    for (const [p, q] of [[0, 1], [0, 2], [1, 2]] as const) turned = turn(a, p, q) || turned;
    if (!turned) break;
  }
  const [x, y, z] = [a[0]![0]!, a[1]![1]!, a[2]![2]!].sort((one, other) => one - other);
  return [x!, y!, z!];
}

/** Makes one product vanish; false when it is nothing beside the moments already. */
function turn(a: number[][], p: number, q: number): boolean {
  const off = a[p]![q]!;
  if (!(Math.abs(off) > 1e-17 * (Math.abs(a[p]![p]!) + Math.abs(a[q]![q]!)))) return false;
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * off);
  const tangent = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(1 + theta * theta));
  const cosine = 1 / Math.sqrt(1 + tangent * tangent);
  const sine = cosine * tangent;
  const r = 3 - p - q;
  const [rp, rq] = [a[r]![p]!, a[r]![q]!];
  a[p]![p]! -= tangent * off;
  a[q]![q]! += tangent * off;
  a[p]![q] = a[q]![p] = 0;
  a[r]![p] = a[p]![r] = cosine * rp - sine * rq;
  a[r]![q] = a[q]![r] = sine * rp + cosine * rq;
  return true;
}
