import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { interpolate } from '../../src/numeric/interpolate.ts';

describe('a straight line between points', () => {
  const xs = [0, 1, 3];
  const ys = [0, 10, -10];

  // by hand
  test.each([[0, 0], [0.25, 2.5], [1, 10], [2, 0], [2.5, -5], [3, -10]])('at %d is %d', (x, y) => expect(interpolate(xs, ys, x)).toBeCloseTo(y, 12));
  test.each([[-1, 0], [-1e9, 0], [3.1, -10], [1e9, -10]])('is held beyond the ends: at %d is %d', (x, y) => expect(interpolate(xs, ys, x)).toBe(y));
  test('of one point is that point everywhere', () => expect([-1, 0, 1].map((x) => interpolate([0], [7], x))).toEqual([7, 7, 7]));

  // law: between two points it stays between their values
  test('never leaves the range of its values', () => {
    fc.assert(
      fc.property(numberIn(-5, 8), (x) => {
        const y = interpolate(xs, ys, x);
        expect(y).toBeGreaterThanOrEqual(-10);
        expect(y).toBeLessThanOrEqual(10);
      }),
    );
  });
});
