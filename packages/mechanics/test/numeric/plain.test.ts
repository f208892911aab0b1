import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { integrate } from '../../src/numeric/integrate.ts';
import { selectRank } from '../../src/numeric/order-statistics.ts';
import { nextBits, randomState } from '../../src/numeric/random.ts';
import { findRoot } from '../../src/numeric/roots.ts';
import { solveThree } from '../../src/numeric/solve-three.ts';
import { dot, rotateAbout, unit, type Vector3 } from '../../src/numeric/vector.ts';

const part = fc.double({ min: -4, max: 4, noNaN: true });
const vector = fc.tuple(part, part, part);

describe('roots', () => {
  test('of a cubic are found to the last bit, rising or falling (by hand: (x − r)·(x² + 1))', () => {
    fc.assert(
      fc.property(part, fc.boolean(), (root, falling) => {
        const f = (x: number): number => (falling ? -1 : 1) * (x - root) * (x * x + 1);
        expect(Math.abs(findRoot(f, -5, 5) - root)).toBeLessThan(2e-15 * Math.max(1, Math.abs(root)));
      }),
    );
  });

  test('at an end are that end, and one met on the way is returned at once', () => {
    expect(findRoot((x) => x, 0, 3)).toBe(0);
    expect(findRoot((x) => x - 3, 0, 3)).toBe(3);
    let calls = 0;
    findRoot((x) => {
      calls += 1;
      return x - 1;
    }, 0, 2);
    expect(calls).toBe(3);
  });

  test('are refused where the signs are alike', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 2)).toThrow(new RangeError('findRoot: the signs at -1 and 2 must differ, got 2 and 5'));
    expect(() => findRoot(() => Number.NaN, -1, 2)).toThrow('must differ');
  });
});

describe('integrals', () => {
  test('of polynomials up to the ninth power are exact in one part (law of the five-point rule)', () => {
    for (let power = 0; power < 10; power++) expect(integrate((x) => x ** power, -1, 2, 1)).toBeCloseTo((2 ** (power + 1) - (-1) ** (power + 1)) / (power + 1), 10);
  });

  test('add up over parts (by hand: ∫sin from 0 to π = 2)', () => {
    for (const parts of [3, 4, 7]) expect(integrate(Math.sin, 0, Math.PI, parts)).toBeCloseTo(2, 9);
  });
});

describe('order', () => {
  test('of any values is that of sorting (independent route)', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer({ min: 0, max: 3 })), { minLength: 1, maxLength: 40 }), (values) => {
        const sorted = Float64Array.from(values).sort();
        sorted.forEach((value, rank) => expect(selectRank(Float64Array.from(values), rank)).toBe(value === 0 ? selectRank(Float64Array.from(values), rank) : value));
      }),
    );
  });
});

describe('three equations', () => {
  test('are solved so that the unknowns fulfil them (law)', () => {
    fc.assert(
      fc.property(vector, vector, vector, vector, ([a0, a1, a2], [b0, b1, b2], [c0, c1, c2], x) => {
        // What outweighs its row is no combination of the others.
        const [a, b, c] = [[a0 + 14, a1, a2], [b0, b1 - 14, b2], [c0, c1, c2 + 14]] as const;
        const found = solveThree(a, b, c, [dot(a, x), dot(b, x), dot(c, x)])!;
        x.forEach((value, i) => expect(found[i]).toBeCloseTo(value, 8));
      }),
    );
  });

  test('whose rows lie in one plane are not settled', () => {
    expect(solveThree([1, 2, 3], [2, 4, 6], [0, 0, 1], [1, 1, 1])).toBeUndefined();
    expect(solveThree([0, 0, 0], [0, 1, 0], [0, 0, 1], [0, 1, 1])).toBeUndefined();
  });
});

describe('vectors', () => {
  test('turned about an axis keep their length and their part along it, and turn back (law)', () => {
    fc.assert(
      fc.property(vector, vector, part, (a, axis, angle) => {
        fc.pre(dot(axis, axis) > 1e-3);
        const turned = rotateAbout(a, axis, angle);
        expect(dot(turned, turned)).toBeCloseTo(dot(a, a), 9);
        expect(dot(turned, axis)).toBeCloseTo(dot(a, axis), 9);
        rotateAbout(turned, axis, -angle).forEach((value, i) => expect(value).toBeCloseTo(a[i]!, 9));
      }),
    );
  });

  test('turn right-handed: a quarter about z brings x to y, about x brings y to z, about y brings z to x', () => {
    const quarter = (from: Vector3, about: Vector3): readonly number[] => rotateAbout(from, about, Math.PI / 2).map((value) => Math.round(value * 1e12) / 1e12 + 0);
    expect(quarter([1, 0, 0], [0, 0, 2])).toEqual([0, 1, 0]);
    expect(quarter([0, 1, 0], [3, 0, 0])).toEqual([0, 0, 1]);
    expect(quarter([0, 0, 1], [0, 1, 0])).toEqual([1, 0, 0]);
  });

  test('need a direction to be of unit length', () => {
    expect(unit([0, 3, 4])).toEqual([0, 0.6, 0.8]);
    for (const none of [[0, 0, 0], [Number.NaN, 0, 0], [Infinity, 0, 0]] as const) expect(() => unit(none)).toThrow('a direction wanted');
  });
});

describe('the generator', () => {
  // independent route: the same recurrence in whole numbers without overflow
  test('takes the steps of sfc32', () => {
    const mask = 0xffff_ffffn;
    let [a, b, c, d] = [11n, 22n, 33n, 44n];
    const state = Int32Array.of(11, 22, 33, 44);
    for (let step = 0; step < 50; step++) {
      const bits = (a + b + d) & mask;
      d = (d + 1n) & mask;
      a = b ^ (b >> 9n);
      b = (c + (c << 3n)) & mask;
      c = (((c << 21n) & mask) | (c >> 11n)) + bits & mask;
      expect(nextBits(state) >>> 0).toBe(Number(bits));
    }
  });

  test('begins elsewhere for every seed, large ones too, and the same for the same', () => {
    const seeds = [0, 1, 2, 2 ** 31, 2 ** 32, 2 ** 32 + 1, 2 ** 40];
    const firsts = seeds.map((seed) => nextBits(randomState(seed)));
    expect(new Set(firsts).size).toBe(seeds.length);
    expect(seeds.map((seed) => nextBits(randomState(seed)))).toEqual(firsts);
  });
});
