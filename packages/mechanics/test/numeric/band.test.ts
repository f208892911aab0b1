import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { bandCholesky, bandMatrix, bandMultiply, bandSolve, countBelow, type BandMatrix } from '../../src/numeric/band.ts';

const part = numberIn(-1, 1);
/** Entries of the lower band, by rows; those left of column 0 stay zero, as the layout asks. */
const bands = (least: number) =>
  fc.integer({ min: least, max: 9 }).chain((order) =>
    fc.array(part, { minLength: 4 * order, maxLength: 4 * order }).map((entries) => {
      const a = bandMatrix(order);
      entries.forEach((value, at) => {
        if (at % 4 <= at >> 2) a[at] = value;
      });
      return a;
    }),
  );
/** A diagonal that outweighs its row makes it positive definite (Gershgorin). */
const definite = (a: BandMatrix): BandMatrix => a.map((value, at) => (at % 4 === 0 ? 6.5 + value : value));

function dense(a: BandMatrix): number[][] {
  const n = a.length / 4;
  return Array.from({ length: n }, (_row, i) => Array.from({ length: n }, (_column, j) => (Math.abs(i - j) > 3 ? 0 : a[4 * Math.max(i, j) + Math.abs(i - j)]!)));
}
const times = (a: number[][], x: readonly number[]): number[] => a.map((row) => row.reduce((sum, value, j) => sum + value * x[j]!, 0));

describe('a band matrix', () => {
  test('multiplies like the full one (independent route: dense rows)', () => {
    fc.assert(
      fc.property(bands(1), fc.array(part, { minLength: 9, maxLength: 9 }), (a, all) => {
        const x = all.slice(0, a.length / 4);
        const y = new Float64Array(x.length).fill(7);
        bandMultiply(a, Float64Array.from(x), y);
        times(dense(a), x).forEach((value, i) => expect(y[i]).toBeCloseTo(value, 12));
      }),
    );
  });

  test('solved, gives back what it was multiplied by (law)', () => {
    fc.assert(
      fc.property(bands(1), fc.array(part, { minLength: 9, maxLength: 9 }), (given, all) => {
        const a = definite(given);
        const x = all.slice(0, a.length / 4);
        const right = Float64Array.from(times(dense(a), x));
        bandSolve(bandCholesky(a)!, right);
        x.forEach((value, i) => expect(right[i]).toBeCloseTo(value, 12));
      }),
    );
  });

  test('its factor, the pivots and the transpose multiply to the matrix; the diagonal holds the inverse pivots (law)', () => {
    fc.assert(
      fc.property(bands(4), (given) => {
        const a = definite(given);
        const l = bandCholesky(a)!;
        const n = a.length / 4;
        const lower = Array.from({ length: n }, (_row, i) => Array.from({ length: n }, (_column, j) => (i === j ? 1 : i > j && i - j < 4 ? l[4 * i + i - j]! : 0)));
        const full = dense(a);
        for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) expect(lower[i]!.reduce((sum, value, k) => sum + (value * lower[j]![k]!) / l[4 * k]!, 0)).toBeCloseTo(full[i]![j]!, 12);
      }),
    );
  });

  test('that is not positive definite has no factor', () => {
    const singular = bandMatrix(2);
    singular.set([1, 0, 0, 0, 1, 1, 0, 0]);
    expect(bandCholesky(singular)).toBeUndefined();
    const negative = bandMatrix(1);
    negative[0] = -1;
    expect(bandCholesky(negative)).toBeUndefined();
  });
});

describe('eigenvalues below a value', () => {
  // by hand: a chain of n masses between walls has λ = 2 − 2·cos(kπ/(n + 1))
  test('of a chain of masses between two walls are counted as the closed form has them', () => {
    const n = 7;
    const k = bandMatrix(n);
    const m = bandMatrix(n);
    for (let i = 0; i < n; i++) {
      k[4 * i] = 2;
      if (i > 0) k[4 * i + 1] = -1;
      m[4 * i] = 1;
    }
    for (let place = 1; place <= n; place++) {
      const value = 2 - 2 * Math.cos((place * Math.PI) / (n + 1));
      expect(countBelow(k, m, value - 1e-9)).toBe(place - 1);
      expect(countBelow(k, m, value + 1e-9)).toBe(place);
    }
  });

  test('are as many as the dense pencil has negative squares (independent route: elimination of the full matrix)', () => {
    fc.assert(
      fc.property(bands(1), bands(1), numberIn(-20, 20), (k, m, lambda) => {
        const n = Math.min(k.length, m.length) / 4;
        const [kn, mn] = [k.slice(0, 4 * n), definite(m.slice(0, 4 * n))];
        const [fullK, fullM] = [dense(kn), dense(mn)];
        const a = fullK.map((row, i) => row.map((value, j) => value - lambda * fullM[i]![j]!));
        let negative = 0;
        for (let p = 0; p < n; p++) {
          fc.pre(Math.abs(a[p]![p]!) > 1e-6);
          if (a[p]![p]! < 0) negative++;
          for (let i = p + 1; i < n; i++) {
            const share = a[i]![p]! / a[p]![p]!;
            for (let j = p; j < n; j++) a[i]![j]! -= share * a[p]![j]!;
          }
        }
        expect(countBelow(kn, mn, lambda)).toBe(negative);
      }),
    );
  });

  test('a pivot that vanishes is no division by zero', () => {
    const k = bandMatrix(2);
    k.set([1, 0, 0, 0, 1, 0, 0, 0]);
    const m = k.slice();
    expect(countBelow(k, m, 1)).toBe(0);
    expect(countBelow(k, m, 1.5)).toBe(2);
  });
});
