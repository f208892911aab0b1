/** A place of a curve, in the units that are shown. */
export type Place = readonly [x: number, y: number];

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** From zero, or the least value below it, to somewhat above the greatest. */
export function spanOf(values: readonly number[]): Span {
  const known = values.filter((value) => Number.isFinite(value));
  if (known.length === 0) return { from: 0, to: 1 };
  const [low, high] = [Math.min(0, ...known), Math.max(0, ...known)];
  return high > low ? { from: low + 0.06 * Math.min(0, low), to: high + 0.08 * (high - low) } : { from: 0, to: 1 };
}

export interface Paper {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Places on paper for places of the axes. */
export function scaleOf(paper: Paper, x: Span, y: Span): { readonly atX: (value: number) => number; readonly atY: (value: number) => number } {
  return {
    atX: (value) => paper.left + ((value - x.from) / (x.to - x.from)) * (paper.right - paper.left),
    atY: (value) => paper.bottom - ((value - y.from) / (y.to - y.from)) * (paper.bottom - paper.top),
  };
}

/** Path through places. */
export const pathOf = (places: readonly Place[]): string => places.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/**
 * Heights of labels, in their order, moved apart so that none covers another, and kept on the paper.
 *
 * @param wanted  where each would stand
 * @param gap     least distance of two
 */
export function spread(wanted: readonly number[], gap: number, { top, bottom }: Pick<Paper, 'top' | 'bottom'>): readonly number[] {
  const order = wanted.map((_, index) => index).toSorted((a, b) => wanted[a]! - wanted[b]!);
  const placed = [...wanted];
  let last = -Infinity;
  for (const index of order) {
    placed[index] = Math.max(wanted[index]!, last + gap, top);
    last = placed[index]!;
  }
  let next = Infinity;
  for (const index of order.toReversed()) {
    placed[index] = Math.min(placed[index]!, next - gap, bottom);
    next = placed[index]!;
  }
  return placed;
}

/** The value of a curve at a place, straight between its places; undefined beyond its ends. */
export function valueAt(places: readonly Place[], x: number): number | undefined {
  const after = places.findIndex(([each]) => each >= x);
  if (after < 0 || places.length === 0) return undefined;
  const [x1, y1] = places[after]!;
  if (after === 0) return x1 === x ? y1 : undefined;
  const [x0, y0] = places[after - 1]!;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
