/** Share of an interval that golden-section search keeps. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function is least between two places: the lowest of evenly spaced samples, then golden-section search between
 * its neighbours.
 *
 * @param f        finite or +∞ on [low, high]; one valley between neighbouring samples
 * @param samples  number of even parts, at least 2
 * @returns        the place, to about 10⁻⁸ of the interval; undefined when the function is least at an end
 * @throws RangeError when low is not below high, or samples is no whole number of at least 2
 * @source J. Kiefer, Proceedings of the American Mathematical Society 4 (1953), golden-section search (from memory)
 * @example findLeast((x) => (x - 0.25) ** 2, 0, 1, 8) // 0.25
 */
export function findLeast(f: (x: number) => number, low: number, high: number, samples: number): number | undefined {
  if (!(low < high)) throw new RangeError(`findLeast: low must lie below high, got ${low} and ${high}`);
  if (!Number.isInteger(samples) || samples < 2) throw new RangeError(`findLeast: samples must be a whole number of at least 2, got ${samples}`);
  const part = (high - low) / samples;
  let best = 0;
  let least = f(low);
  for (let index = 1; index <= samples; index++) {
    const value = f(low + index * part);
    if (value < least) [best, least] = [index, value];
  }
  let left = low + Math.max(0, best - 1) * part;
  let right = low + Math.min(samples, best + 1) * part;
  const [start, end] = [left, right];
  let inner = right - GOLDEN * (right - left);
  let outer = left + GOLDEN * (right - left);
  let [atInner, atOuter] = [f(inner), f(outer)];
  while (right - left > 1e-9 * (end - start) && inner < outer) {
    if (atInner < atOuter) {
      [right, outer, atOuter] = [outer, inner, atInner];
      inner = right - GOLDEN * (right - left);
      atInner = f(inner);
    } else {
      [left, inner, atInner] = [inner, outer, atOuter];
      outer = left + GOLDEN * (right - left);
      atOuter = f(outer);
    }
  }
  const place = (left + right) / 2;
  const margin = 1e-6 * (end - start);
  return place - low < margin || high - place < margin ? undefined : place;
}
