/**
 * Angles at which A·cos x + B·sin x = C: where two circles, or a circle and a sphere, meet.
 *
 * @param a  A
 * @param b  B, in the unit of A
 * @param c  C, in the unit of A
 * @param noise  what rounding may have put on C, in its unit: crossings nearer to a touch than that are one
 * @returns  two angles in (−π, π], ascending; one where they only touch; none where they miss each other, or where
 *           the two do not depend on the angle at all
 * @source   trigonometry: A·cos x + B·sin x = √(A² + B²)·cos(x − atan2(B, A))
 */
export function crossingAngles(a: number, b: number, c: number, noise = 0): readonly number[] {
  const size = Math.sqrt(a * a + b * b);
  if (!(size > noise)) return [];
  const cosine = c / size;
  const middle = Math.atan2(b, a);
  // A touch that rounding makes a miss, or two crossings, still is a touch.
  if (Math.abs(Math.abs(cosine) - 1) <= touch + noise / size) return [wrapped(cosine > 0 ? middle : middle + Math.PI)];
  if (!(Math.abs(cosine) < 1)) return [];
  const half = Math.acos(cosine);
  return [wrapped(middle - half), wrapped(middle + half)].sort((first, second) => first - second);
}

/**
 * The smaller in magnitude of the crossing angles; NaN where there is none. For loops that run a hundred thousand times.
 *
 * @source the same, by its cosine and sine: of two angles the smaller has the larger cosine
 */
export function nearestCrossing(a: number, b: number, c: number): number {
  const square = a * a + b * b;
  const left = square - c * c;
  if (!(left >= -2 * touch * square) || square === 0) return Number.NaN;
  const side = (b < 0 ? -1 : 1) * Math.sqrt(Math.max(0, left));
  return Math.atan2(b * c - a * side, a * c + b * side);
}

/** Share by which rounding may make a touch a miss. */
export const touch = 4e-16;
const turn = 2 * Math.PI;

/** The same angle in (−π, π]. */
function wrapped(angle: number): number {
  return angle > Math.PI ? angle - turn : angle <= -Math.PI ? angle + turn : angle;
}
