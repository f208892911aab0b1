import fc from 'fast-check';
import { expect, test } from 'vitest';
import { omission, type ListKind, type SecondLook } from '../../src/index.ts';

// by hand: 12 items on a ticked list, 0.003 each, a second look with the list misses a tenth: 1 − (1 − 0.0003)¹²
test('twelve items ticked, with a second look', () => {
  const found = omission(12, 'ticked', 'listed');
  expect(found.perStep).toBeCloseTo(0.0003, 15);
  expect(found.expectedOmissions).toBeCloseTo(0.0036, 15);
  expect(found.probability).toBeCloseTo(1 - 0.9997 ** 12, 14);
  expect(found.probabilityLow).toBeCloseTo(1 - 0.9999 ** 12, 14);
  expect(found.probabilityHigh).toBeCloseTo(1 - 0.9991 ** 12, 14);
});

test('a short list is missed less than a long one', () => {
  expect(omission(10, 'unticked', 'none').perStep).toBe(0.003);
  expect(omission(11, 'unticked', 'none').perStep).toBe(0.01);
});

// law: habits keep their order, and chances stay chances
test('ticking beats a list, a list beats none, a second look helps', () => {
  const kinds: readonly ListKind[] = ['ticked', 'unticked', 'none'];
  const looks: readonly SecondLook[] = ['listed', 'unlisted', 'none'];
  fc.assert(fc.property(fc.integer({ min: 1, max: 500 }), (steps) => {
    for (const look of looks) kinds.slice(1).forEach((kind, i) => expect(omission(steps, kind, look).probability).toBeGreaterThan(omission(steps, kinds[i]!, look).probability));
    for (const kind of kinds) looks.slice(1).forEach((look, i) => expect(omission(steps, kind, look).probability).toBeGreaterThan(omission(steps, kind, looks[i]!).probability));
    const { probabilityLow, probability, probabilityHigh } = omission(steps, 'none', 'none');
    expect(0 < probabilityLow && probabilityLow < probability && probability < probabilityHigh && probabilityHigh <= 1).toBe(true);
  }));
});

test('no steps are refused', () => expect(() => omission(0, 'none', 'none')).toThrow(/at least 1, got 0/));
