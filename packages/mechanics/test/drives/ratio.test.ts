import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareRatios, divideRatios, greatestCommonDivisor, invertRatio, multiplyRatios, ratio, ratioText, ratioToNumber, sameRatio } from '../../src/index.ts';

const whole = fc.integer({ min: -10_000, max: 10_000 });
const nonZero = whole.filter((value) => value !== 0);
const rationals = fc.tuple(whole, nonZero).map(([above, below]) => ratio(above, below));
const nonZeroRationals = fc.tuple(nonZero, nonZero).map(([above, below]) => ratio(above, below));

describe('exact ratios', () => {
  test('a ratio stands in lowest terms with its sign above (law)', () => {
    fc.assert(
      fc.property(whole, nonZero, (above, below) => {
        const value = ratio(above, below);
        expect(value.denominator > 0n).toBe(true);
        expect(greatestCommonDivisor(Number(value.numerator), Number(value.denominator))).toBe(1);
        expect(value.numerator * BigInt(below)).toBe(value.denominator * BigInt(above));
      }),
    );
  });

  test('dividing undoes multiplying, exactly (law)', () => {
    fc.assert(
      fc.property(rationals, nonZeroRationals, (a, b) => {
        expect(sameRatio(divideRatios(multiplyRatios(a, b), b), a)).toBe(true);
      }),
    );
  });

  test('the reciprocal of the reciprocal is the number itself (law)', () => {
    fc.assert(
      fc.property(nonZeroRationals, (a) => {
        expect(sameRatio(invertRatio(invertRatio(a)), a)).toBe(true);
      }),
    );
  });

  test('a product stays exact where floating point has long lost its digits (by hand: (3/2)^200 · (2/3)^200 = 1)', () => {
    let value = ratio(1);
    for (let step = 0; step < 200; step += 1) value = multiplyRatios(value, ratio(3, 2));
    expect(ratioToNumber(value)).toBeCloseTo(1.5 ** 200, -22);
    for (let step = 0; step < 200; step += 1) value = multiplyRatios(value, ratio(2, 3));
    expect(ratioText(value)).toBe('1');
  });

  test('order is exact: 1/3 lies above every decimal cut of it (by hand)', () => {
    expect(compareRatios(ratio(1, 3), ratio(333_333_333_333, 1_000_000_000_000))).toBe(1);
    expect(compareRatios(ratio(-1, 3), ratio(1, 3))).toBe(-1);
    expect(compareRatios(ratio(2, 6), ratio(1, 3))).toBe(0);
  });

  test('a quotient of two numbers beyond floating point is still a number (by hand: 10^400/(2·10^400) = 1/2)', () => {
    expect(ratioToNumber(ratio(10n ** 400n + 1n, 2n * 10n ** 400n))).toBe(0.5);
    expect(ratioToNumber(ratio(3n * 10n ** 30n + 1n, 10n ** 3n))).toBeCloseTo(3e27, -12);
  });

  test('misuse says what was wanted and what came', () => {
    expect(() => ratio(1, 0)).toThrow('the denominator must not be 0');
    expect(() => ratio(1.5, 2)).toThrow('got 1.5');
    expect(() => invertRatio(ratio(0))).toThrow('no reciprocal');
    expect(() => greatestCommonDivisor(Number.NaN, 2)).toThrow('whole numbers wanted');
  });
});
