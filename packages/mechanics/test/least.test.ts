import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../tests/number-in.ts';
import { findLeast } from '../src/index.ts';

describe('findLeast', () => {
  test('the bottom of a parabola is found wherever it lies (law)', () => {
    fc.assert(
      fc.property(numberIn(-0.9, 0.9), fc.double({ min: 0.1, max: 50, noNaN: true }), (bottom, steepness) => {
        expect(findLeast((x) => steepness * (x - bottom) ** 2, -1, 1, 8)).toBeCloseTo(bottom, 6);
      }),
    );
  });

  test('the lower of two valleys is chosen (by hand: cos 2x + 0.1x over two periods is least near −π/2)', () => {
    expect(findLeast((x) => Math.cos(2 * x) + 0.1 * x, -Math.PI, Math.PI, 16)).toBeCloseTo(-Math.PI / 2 - 0.025, 3);
  });

  test('a function that only rises or only falls has no place of its own', () => {
    expect(findLeast((x) => x, 0, 1, 8)).toBeUndefined();
    expect(findLeast((x) => 1 / x, 0, 1, 8)).toBeUndefined();
  });

  // law: the unit of the place and where its zero lies change nothing
  test('an end is told from a place of its own at any size and on either side of zero', () => {
    for (const size of [1e-6, 1, 1e6]) {
      for (const [low, high] of [[-1, 1], [0, 1], [3, 4], [-4, -3]] as const) {
        const at = (share: number): number => size * (low + share * (high - low));
        expect(findLeast((x) => x, at(0), at(1), 8)).toBeUndefined();
        expect(findLeast((x) => -x, at(0), at(1), 8)).toBeUndefined();
        for (const share of [0.001, 0.4, 0.999]) expect(findLeast((x) => ((x - at(share)) / size) ** 2, at(0), at(1), 8)! / size).toBeCloseTo(at(share) / size, 6);
      }
    }
  });

  test('a valley is no place of its own where an end lies lower (by hand)', () => {
    expect(findLeast((x) => Math.min((x - 0.3) ** 2, 5 - 6 * x), 0, 1, 10)).toBeUndefined();
    expect(findLeast((x) => Math.min((x - 0.7) ** 2, 6 * x - 1), 0, 1, 10)).toBeUndefined();
  });

  test('a narrow deep valley is not lost to a wide shallow one beside it (by hand)', () => {
    expect(findLeast((x) => Math.min((x - 0.3) ** 2, 400 * (x - 0.8) ** 2 - 1), 0, 1, 10)).toBeCloseTo(0.8, 6);
    expect(findLeast((x) => Math.min((x - 0.7) ** 2, 400 * (x - 0.2) ** 2 - 1), 0, 1, 10)).toBeCloseTo(0.2, 6);
  });

  // law: each step of the golden section leaves 0.618 of the interval, so 44 bring it to a thousandth of a millionth
  test.each([[-1, 1], [2, 5], [-5, -2]])('between %d and %d it asks the function no more often than that takes', (low, high) => {
    let calls = 0;
    findLeast((x) => {
      calls += 1;
      return (x - low - 0.4) ** 2;
    }, low, high, 8);
    expect(calls).toBeLessThanOrEqual(9 + 2 + 44);
  });

  test('two parts are enough for one valley', () => expect(findLeast((x) => (x - 0.3) ** 2, 0, 1, 2)).toBeCloseTo(0.3, 6));

  test('misuse is refused', () => {
    for (const [low, high] of [[1, 0], [1, 1], [Number.NaN, 1]] as const) expect(() => findLeast((x) => x, low, high, 8)).toThrow(new RangeError(`findLeast: low must lie below high, got ${low} and ${high}`));
    for (const samples of [1, 2.5, Number.NaN]) expect(() => findLeast((x) => x, 0, 1, samples)).toThrow(new RangeError(`findLeast: samples must be a whole number of at least 2, got ${samples}`));
  });
});
