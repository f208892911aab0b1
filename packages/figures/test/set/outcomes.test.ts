import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Outcomes, type Given } from '../../src/set/outcomes.ts';

const given = fc.dictionary(fc.stringMatching(/^[a-c]$/u), fc.oneof(fc.double({ noNaN: true }), fc.string({ maxLength: 3 }), fc.array(fc.double({ noNaN: true }), { maxLength: 3 }))) as fc.Arbitrary<Given>;
const outcome = (value: number) => ({ outputs: { value }, warnings: [] });

describe('outcomes', () => {
  test('come back for the same inputs, and for no others', () => {
    fc.assert(fc.property(given, given, (one, other) => {
      const outcomes = new Outcomes();
      outcomes.set('margin', one, outcomes.numberOf('margin', one), outcome(1));
      expect(outcomes.get('margin', structuredClone(one), outcomes.numberOf('margin', structuredClone(one)))).toEqual(outcome(1));
      expect(outcomes.get('resultant', one, outcomes.numberOf('margin', one))).toBeUndefined();
      // Even under the number of the first, other inputs are told apart.
      const found = outcomes.get('margin', other, outcomes.numberOf('margin', one));
      expect(found !== undefined).toBe(same(one, other));
    }));
  });

  test('tell rows from records, and words from numbers', () => {
    const outcomes = new Outcomes();
    const known: Given = { a: [1, 2] };
    outcomes.set('margin', known, 0, outcome(1));
    for (const other of [{ a: { 0: 1, 1: 2 } }, { a: ['1', 2] }, { a: [1, 2, 3] }, { a: [1] }, { b: [1, 2] }, { a: [1, 2], b: 1 }] as readonly Given[]) expect(outcomes.get('margin', other, 0)).toBeUndefined();
    expect(outcomes.get('margin', { a: [1, 2] }, 0)).toEqual(outcome(1));
  });
});

/** The same to the last bit, by another route: as words, with the sign of nought. */
const same = (one: Given, other: Given): boolean => {
  const words = (value: Given): string => JSON.stringify(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)), (_, each: unknown) => (typeof each === 'number' ? `number ${Object.is(each, -0) ? '-0' : each}` : each));
  return words(one) === words(other);
};
