import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inverseInvolute, involute } from '../../src/index.ts';

const angle = fc.double({ min: 1e-9, max: 1.5, noNaN: true });

describe('involute', () => {
  test('going back and forth returns the angle (law)', () => {
    fc.assert(
      fc.property(angle, (alpha) => {
        expect(inverseInvolute(involute(alpha)) / alpha).toBeCloseTo(1, 12);
      }),
    );
  });

  test('its slope is tan² α (law: derivative of tan α − α)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 1.4, noNaN: true }), (alpha) => {
        const step = 1e-5 * alpha;
        const slope = (involute(alpha + step) - involute(alpha - step)) / (2 * step);
        expect(slope / Math.tan(alpha) ** 2).toBeCloseTo(1, 5);
      }),
    );
  });

  test('series and closed form meet without a step (independent route: both at the same angle)', () => {
    expect(involute(0.1) / (Math.tan(0.1) - 0.1)).toBeCloseTo(1, 12);
    expect(involute(0.1 + 1e-12) - involute(0.1)).toBeCloseTo(0, 13);
  });

  test('both are odd (law)', () => {
    fc.assert(
      fc.property(angle, (alpha) => {
        expect(involute(-alpha)).toBe(-involute(alpha));
        expect(inverseInvolute(-involute(alpha))).toBe(-inverseInvolute(involute(alpha)));
      }),
    );
  });

  test('extremes stay numbers: 0, the smallest, the largest', () => {
    expect(inverseInvolute(0)).toBe(0);
    expect(inverseInvolute(Number.MIN_VALUE)).toBeGreaterThan(0);
    expect(inverseInvolute(1e300)).toBeLessThanOrEqual(Math.PI / 2);
  });

  test('misuse is refused', () => {
    expect(() => involute(Math.PI / 2)).toThrow('between −π/2 and π/2');
    expect(() => involute(Number.NaN)).toThrow('got NaN');
    expect(() => inverseInvolute(Infinity)).toThrow('finite');
  });
});
