import { beltCentreDistance } from '@rotorwright/mechanics';
import fc from 'fast-check';
import { expect, test } from 'vitest';

test('by hand: equal pulleys leave half of what does not lie on them', () => {
  expect(beltCentreDistance(0.003, 200, 20, 20)).toBeCloseTo(0.27, 15);
});

// Independent route: the length of the belt, added up from its two straight runs and its two arcs.
test('the belt that lies round both pulleys has the length that it was given', () => {
  fc.assert(fc.property(fc.integer({ min: 10, max: 100 }), fc.integer({ min: 10, max: 100 }), fc.integer({ min: 10, max: 900 }), (first, second, spare) => {
    const teeth = first + second + spare;
    const centre = beltCentreDistance(0.005, teeth, first, second)!;
    const [small, large] = [first, second].toSorted((a, b) => a - b).map((z) => (z * 0.005) / (2 * Math.PI)) as [number, number];
    const lean = Math.asin((large - small) / centre);
    const length = 2 * centre * Math.cos(lean) + small * (Math.PI - 2 * lean) + large * (Math.PI + 2 * lean);
    expect(length).toBeCloseTo(teeth * 0.005, 10);
  }));
});

test('a belt that is too short has no centre distance', () => {
  expect(beltCentreDistance(0.003, 20, 20, 20)).toBeUndefined();
  expect(beltCentreDistance(0.003, 60, 10, 80)).toBeUndefined();
});

test('what is no belt is refused by name', () => {
  expect(() => beltCentreDistance(0, 200, 20, 20)).toThrow('pitch');
  expect(() => beltCentreDistance(0.003, Number.NaN, 20, 20)).toThrow('beltTeeth');
});
