import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcCosine, decay, inflowAngle, perCosine, sineOf } from '../src/series/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

test('short series are the functions that they stand for (law)', () => {
  fc.assert(
    fc.property(between(-2, 2), between(-2, 2), between(0, 1), (a, b, share) => {
      expect(inflowAngle(a, b)).toBeCloseTo(Math.atan2(a, b), 11);
      expect(decay(30 * share) / Math.exp(-30 * share)).toBeCloseTo(1, 11);
      expect(sineOf(a)).toBeCloseTo(Math.sin(a), 12);
      expect(arcCosine(share)).toBeCloseTo(Math.acos(share), 14);
      expect(perCosine(0.99 * share)).toBeCloseTo(1 / Math.cos(Math.asin(0.99 * share)), 10);
      expect(perCosine(share / 50)).toBeCloseTo(1 / Math.cos(Math.asin(share / 50)), 12);
      expect(arcCosine(share / 50)).toBeCloseTo(Math.acos(share / 50), 14);
    }),
  );
});
