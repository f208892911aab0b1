/** A value, and by how much it may be off to either side with the same confidence everywhere. */
export interface Estimate {
  readonly value: number;
  readonly half: number;
}

/**
 * What follows from two estimates that know nothing of each other: each counts by 1/half².
 *
 * @throws RangeError when a half width is not positive
 * @source combination of independent normal errors, least squares
 * @example combined({ value: 10, half: 3 }, { value: 20, half: 4 }).value // 13.6
 * @example combined({ value: 10, half: 3 }, { value: 20, half: 4 }).half // 2.4
 */
export function combined(one: Estimate, other: Estimate): Estimate {
  if (!(one.half > 0 && other.half > 0)) throw new RangeError(`combined: both half widths must be positive, got ${one.half} and ${other.half}`);
  const [first, second] = [one.half ** -2, other.half ** -2];
  return { value: (first * one.value + second * other.value) / (first + second), half: (first + second) ** -0.5 };
}
