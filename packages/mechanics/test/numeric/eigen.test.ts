import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { orthogonalRows } from '../../src/numeric/orthogonal-rows.ts';
import { tridiagonalEigen, tridiagonalVectors } from '../../src/numeric/tridiagonal.ts';

const part = numberIn(-3, 3);

function expectVectors(diagonal: readonly number[], off: readonly number[]): void {
  const n = diagonal.length;
  const eigen = tridiagonalEigen(diagonal, off);
  const { values, lastComponents, descending } = eigen;
  const vector = (j: number): number[] => Array.from(tridiagonalVectors(eigen, Int32Array.of(j)));
  for (let j = 0; j < n; j++) {
    const v = vector(j);
    expect(lastComponents[j]).toBeCloseTo(v[n - 1]!, 12);
    v.forEach((own, i) => {
      const image = diagonal[i]! * own + (i > 0 ? off[i - 1]! * v[i - 1]! : 0) + (i < n - 1 ? off[i]! * v[i + 1]! : 0);
      expect(image).toBeCloseTo(values[j]! * own, 10);
    });
    for (let other = 0; other <= j; other++) expect(vector(other).reduce((sum, own, i) => sum + own * v[i]!, 0)).toBeCloseTo(other === j ? 1 : 0, 10);
  }
  const together = tridiagonalVectors(eigen, descending);
  descending.forEach((index, place) => expect(vector(index)).toEqual(Array.from({ length: n }, (_, i) => together[i * n + place]!)));
  expect([...descending].toSorted((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
  const ordered = Array.from(descending, (index) => values[index]!);
  expect(ordered).toEqual(ordered.toSorted((a, b) => b - a));
}

describe('a tridiagonal matrix', () => {
  test('times each vector is the vector times its value; the vectors are of unit length, square to one another, and told in descending order (law)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }).chain((n) => fc.tuple(fc.array(part, { minLength: n, maxLength: n }), fc.array(fc.oneof(part, fc.constant(0)), { minLength: n, maxLength: n }))), ([diagonal, off]) => {
        expectVectors(diagonal, off);
      }),
    );
  });

  // Found by trial: a row whose rotation vanishes on the way, so that the chain is cut there and begun anew.
  test.each([
    { diagonal: [1e-99, 0, 1e-99, 1e-90], off: [1e-90, -1, 1e-16] },
    { diagonal: [-1, 1e-90, 1e-99, 0, 1e-16], off: [0, 1e-90, 1e-99, -1] },
    { diagonal: [1e-90, 1e-99, 1e-17, 0, 1e-90], off: [1e-99, -1, 2, 1e-99] },
    { diagonal: [1e-99, 0, 1e-99, 1e-99, 1e-90], off: [1e-90, 1e-99, 3, 2] },
  ])('holds to the same law where all but nothing couples its rows: $diagonal, $off', ({ diagonal, off }) => expectVectors(diagonal, off));

  test.each([1e-250, 1e-160, 1, 1e160, 1e250])('%d times as large has values so many times as large (law)', (size) => {
    const [diagonal, off] = [[0.3, -1, 0.2, 0.5], [0.7, -12, 0.4]];
    const { values } = tridiagonalEigen(diagonal, off);
    const { values: scaled, turns } = tridiagonalEigen(diagonal.map((value) => value * size), off.map((value) => value * size));
    values.forEach((value, i) => expect(scaled[i]! / size).toBeCloseTo(value, 12));
    expect(turns).toBe(tridiagonalEigen(diagonal, off).turns);
  });

  test('of nothing has nothing but zeros, and a single row is its own value', () => {
    expect([...tridiagonalEigen([0, 0, 0], [0, 0]).values]).toEqual([0, 0, 0]);
    expect([...tridiagonalEigen([7], []).values]).toEqual([7]);
  });

  test('takes no notice of what stands beside its last row', () => {
    expect(tridiagonalEigen([1, 2, 4], [0.5, 0.25, 1e300])).toEqual(tridiagonalEigen([1, 2, 4], [0.5, 0.25]));
  });

  // law: with its shift the method squares, most often cubes, what is left in each sweep: about two over half the rows for each value
  test.each([
    { name: 'alike', entry: () => 1 },
    { name: 'growing', entry: (i: number) => 10 ** (i / 2) },
    { name: 'fading', entry: (i: number) => 10 ** (-i / 2) },
  ])('of rows that are $name is done in about two sweeps a value', ({ entry }) => {
    const n = 24;
    const { turns } = tridiagonalEigen(Array.from({ length: n }, (_, i) => 2 * entry(i)), Array.from({ length: n - 1 }, (_, i) => -entry(i)));
    expect(turns / (n * n)).toBeLessThan(1.5);
  });

  test('with entries whose squares vanish comes to an end', () => {
    const { values } = tridiagonalEigen([-2.595503438387223, 5e-324, 5e-324, 1.4863301804885305, 0, -0.45036024587229795, 3, 1e-200, 1e-200], [-1e-160, 1e-200, 0, 1e-200, -1.3413893148838976, 5e-324, 2.011626750492429, 3]);
    expect(values.every((value) => Number.isFinite(value))).toBe(true);
  });

  // by hand: 2 on the diagonal, −1 beside it, λ = 2 − 2·cos(kπ/(n + 1))
  test('of a chain of masses has the values of the closed form', () => {
    const { values, descending } = tridiagonalEigen([2, 2, 2, 2, 2], [-1, -1, -1, -1]);
    descending.forEach((index, place) => expect(values[index]).toBeCloseTo(2 - 2 * Math.cos(((5 - place) * Math.PI) / 6), 12));
  });
});

describe('rows turned to right angles', () => {
  test('keep the sum of their squares and span what they spanned (law)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5 }).chain((n) => fc.array(fc.array(part, { minLength: 6, maxLength: 6 }), { minLength: n, maxLength: n })), (given) => {
        const rows = given.map((row) => Float64Array.from(row));
        const before = rows.map((row) => row.slice());
        const turned = orthogonalRows(rows);
        expect(rows).toEqual(before);
        const found = turned.filter(({ length }) => length > 1e-9);
        for (const [i, a] of found.entries()) for (const [j, b] of found.entries()) expect(a.direction.reduce((sum, own, k) => sum + own * b.direction[k]!, 0)).toBeCloseTo(i === j ? 1 : 0, 9);
        // AᵀA is the same before and after.
        for (let p = 0; p < 6; p++) {
          for (let q = 0; q < 6; q++) {
            const was = before.reduce((sum, row) => sum + row[p]! * row[q]!, 0);
            expect(found.reduce((sum, { length, direction }) => sum + length ** 2 * direction[p]! * direction[q]!, 0)).toBeCloseTo(was, 9);
          }
        }
      }),
    );
  });

  // by hand: rows (3, 0, 0) and (0, 4e-9, 0) stand square already
  test('keep the digits of a short row beside a long one', () => {
    expect(orthogonalRows([Float64Array.of(3, 0, 0), Float64Array.of(0, 4e-9, 0)]).map(({ length }) => length)).toEqual([3, 4e-9]);
  });
});
