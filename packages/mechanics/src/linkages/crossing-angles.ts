/**
 * Angles at which A·cos x + B·sin x = C: where two circles, or a circle and a sphere, meet.
 *
 * @param a  A
 * @param b  B, in the unit of A
 * @param c  C, in the unit of A
 * @returns  two angles in (−π, π], ascending; one where they only touch; none where they miss each other, or where
 *           the two do not depend on the angle at all
 * @source   trigonometry: A·cos x + B·sin x = √(A² + B²)·cos(x − atan2(B, A))
 */
export function crossingAngles(a: number, b: number, c: number): readonly number[] {
  const size = Math.sqrt(a * a + b * b);
  const cosine = c / size;
  // A touch that rounding makes a miss by the last digits still is a touch.
  if (!(Math.abs(cosine) <= 1 + touch)) return [];
  const middle = Math.atan2(b, a);
  const half = Math.acos(Math.min(1, Math.max(-1, cosine)));
  if (half === 0 || half === Math.PI) return [wrapped(middle + half)];
  return [wrapped(middle - half), wrapped(middle + half)].sort((first, second) => first - second);
}

/**
 * The smaller in magnitude of the crossing angles; NaN where there is none. For loops that run a hundred thousand times.
 */
export function nearestCrossing(a: number, b: number, c: number): number {
  const cosine = c / Math.sqrt(a * a + b * b);
  if (!(Math.abs(cosine) <= 1 + touch)) return Number.NaN;
  const middle = Math.atan2(b, a);
  const half = Math.acos(Math.min(1, Math.max(-1, cosine)));
  const first = wrapped(middle - half);
  const second = wrapped(middle + half);
  return Math.abs(first) <= Math.abs(second) ? first : second;
}

const touch = 4e-16;
const turn = 2 * Math.PI;

/** The same angle in (−π, π]. */
function wrapped(angle: number): number {
  return angle > Math.PI ? angle - turn : angle <= -Math.PI ? angle + turn : angle;
}
