/**
 * Straight line between the points on either side; held at the value of the first or last point beyond them.
 *
 * @param xs  at least one, ascending
 * @param ys  one for each of them
 */
export function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  const after = xs.findIndex((each) => each >= x);
  if (after === -1) return ys.at(-1)!;
  if (after === 0) return ys[0]!;
  const share = (x - xs[after - 1]!) / (xs[after]! - xs[after - 1]!);
  return ys[after - 1]! + share * (ys[after]! - ys[after - 1]!);
}
