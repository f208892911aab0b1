import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findLeast } from '../src/index.ts';

describe('findLeast', () => {
  test('the bottom of a parabola is found wherever it lies (law)', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.9, max: 0.9, noNaN: true }), fc.double({ min: 0.1, max: 50, noNaN: true }), (bottom, steepness) => {
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

  test('misuse is refused', () => {
    expect(() => findLeast((x) => x, 1, 0, 8)).toThrow('low must lie below high');
    expect(() => findLeast((x) => x, 0, 1, 1)).toThrow('samples');
  });
});
