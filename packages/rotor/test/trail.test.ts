import { expect, test } from 'vitest';
import { Trail } from '../src/series/index.ts';

const parabola = (x: number): number => 1 + 2 * x + 3 * x * x;

function trail(places: readonly number[], of: (x: number) => number): Trail {
  const made = new Trail(1);
  for (const place of places) made.record(place, Float64Array.of(of(place)));
  return made;
}

function pointed(made: Trail, place: number): number | undefined {
  const values = new Float64Array(1);
  return made.point(place, values) ? values[0] : undefined;
}

test('three solutions point along their parabola, two along their line, one at itself, none nowhere (law)', () => {
  expect(pointed(trail([0, 1, 2.5], parabola), 4)).toBeCloseTo(parabola(4), 12);
  expect(pointed(trail([0, 1], (x) => 5 - x), 2.5)).toBeCloseTo(2.5, 12);
  expect(pointed(trail([1], parabola), 2)).toBe(parabola(1));
  expect(pointed(trail([], parabola), 2)).toBeUndefined();
});

test('a place far off, and one nearly the same as the last, are no continuation', () => {
  expect(pointed(trail([0, 1, 2], parabola), 20)).toBe(parabola(2));
  // 2.01 takes the place of 2: the line goes on from 1.
  expect(pointed(trail([0, 1, 2, 2.01], parabola), 3)).toBeCloseTo(parabola(3), 12);
});

test('what was forgotten points nowhere', () => {
  const made = trail([0, 1, 2], parabola);
  made.clear();
  expect(pointed(made, 3)).toBeUndefined();
});
