/**
 * The zero of a continuous function between two places where its signs differ.
 *
 * Halves the interval to the last bit, which no choice of function can slow down or lead astray.
 *
 * @param f     finite on [low, high]
 * @throws RangeError when the signs at the two ends do not differ
 * @source bisection
 * @example findRoot((x) => x * x - 2, 0, 2) // Math.SQRT2
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let left = low;
  let right = high;
  const atLeft = f(left);
  const atRight = f(right);
  if (atLeft === 0) return left;
  if (atRight === 0) return right;
  if (!(atLeft * Math.sign(atRight) < 0)) throw new RangeError(`findRoot: the signs at ${low} and ${high} must differ, got ${atLeft} and ${atRight}`);
  for (;;) {
    const middle = (left + right) / 2;
    if (middle <= left || middle >= right) return middle;
    const value = f(middle);
    if (value === 0) return middle;
    if (value < 0 === atLeft < 0) left = middle;
    else right = middle;
  }
}
