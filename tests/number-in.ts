import fc from 'fast-check';

const PARTS = 2 ** 31 - 1;

/**
 * Numbers spread evenly from `least` to `most`, and zero where it lies between them. `fc.double` takes every pattern of bits alike: about
 * zero nearly all of its numbers are then too small to tell a sum from a difference.
 */
export function numberIn(least: number, most: number): fc.Arbitrary<number> {
  const even = fc.integer({ min: 0, max: PARTS }).map((part) => least + (most - least) * (part / PARTS));
  return least < 0 && most > 0 ? fc.oneof({ arbitrary: even, weight: 15 }, { arbitrary: fc.constant(0), weight: 1 }) : even;
}
