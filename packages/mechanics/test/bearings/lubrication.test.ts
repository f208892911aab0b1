import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { lifeModification, referenceViscosity, viscosityRatioRange } from '../../src/bearings/index.ts';

const families = ['radial-ball', 'radial-roller', 'thrust-ball', 'thrust-roller'] as const;
const anyFamily = fc.constantFrom(...families);
const anyRatio = fc.double({ min: 0.1, max: 6, noNaN: true });
const anyDirt = numberIn(0, 10);

describe('life modification', () => {
  // independent route: the equations of ISO 281:2007 (from memory) worked elsewhere
  test.each([[1, 0.1, 2.4305177780348117], [2.45, 0.1072, 5.519013970898661]])('of a radial ball bearing at κ = %d and %d', (kappa, dirt, expected) => expect(lifeModification(kappa, dirt, 'radial-ball')).toBeCloseTo(expected, 9));

  // by hand: equations 34 to 36 (rollers) at κ = 1: 0.1·(1 − 0.3511·c^0.4)^−9.185; equation 40 (thrust rollers) the same of c/2.5
  test.each([['radial-roller', 0.5], ['thrust-roller', 1.25]] as const)('of a %s bearing', (family, dirt) => {
    expect(lifeModification(1, dirt, family)).toBeCloseTo(0.1 * (1 - 0.3511 * 0.5 ** 0.4) ** -9.185, 9);
  });

  test('of a thrust ball bearing is that of a radial one three times as dirty', () => {
    fc.assert(fc.property(anyRatio, anyDirt, (kappa, dirt) => { expect(lifeModification(kappa, dirt, 'thrust-ball') / lifeModification(kappa, dirt / 3, 'radial-ball')).toBeCloseTo(1, 9); }));
  });

  // law: the standard's branches meet; its constants are rounded, so they meet to a part in a thousand
  test.each(families)('of %s has no step where the constants change', (family) => {
    for (const kappa of [0.4, 1]) expect(lifeModification(kappa - 1e-9, 0.3, family) / lifeModification(kappa, 0.3, family)).toBeCloseTo(1, 2);
  });

  test('grows with film and with cleanliness, from a tenth up to fifty, and is always a number (law)', () => {
    fc.assert(
      fc.property(anyRatio, anyDirt, anyFamily, (kappa, dirt, family) => {
        const factor = lifeModification(kappa, dirt, family);
        // At κ = 0.1 the rounded constants of rollers leave up to 0.2 % below a tenth.
        expect(factor).toBeGreaterThan(0.0998);
        expect(factor).toBeLessThanOrEqual(50);
        // Rounded constants leave a step of 0.1 % at the change.
        expect(lifeModification(kappa * 1.05, dirt, family)).toBeGreaterThanOrEqual(factor * 0.999);
        expect(lifeModification(kappa, dirt * 1.05, family)).toBeGreaterThanOrEqual(factor * 0.999);
      }),
    );
  });

  test('is held at fifty, also past the end of the formula, and takes κ over 4 as 4', () => {
    expect(lifeModification(4, 5, 'radial-ball')).toBe(50);
    expect(lifeModification(4, 0.5, 'radial-ball')).toBe(50);
    expect(lifeModification(1, 1, 'radial-ball')).toBe(50);
    expect(lifeModification(9, 0.05, 'radial-ball')).toBe(lifeModification(4, 0.05, 'radial-ball'));
    expect(lifeModification(4, 0.05, 'radial-ball')).toBeGreaterThan(lifeModification(3.5, 0.05, 'radial-ball'));
  });

  test.each([[0.09, 1], [Number.NaN, 1]])('is refused at κ = %d', (kappa, dirt) => expect(() => lifeModification(kappa, dirt, 'radial-ball')).toThrow(`at least ${viscosityRatioRange.least}`));
  test.each([-0.1, Number.NaN])('is refused at %d of dirt', (dirt) => expect(() => lifeModification(1, dirt, 'radial-ball')).toThrow(/contamination must not be negative/));
});

describe('reference viscosity', () => {
  const rpm = Math.PI / 30;
  // independent route: formulas of ISO 281:2007 (from memory) worked elsewhere, mm²/s
  test.each([[500, 30, 47.261422], [3000, 72.5, 9.649013]])('at %d rpm on %d mm', (speed, diameter, expected) => {
    expect((referenceViscosity(speed * rpm, diameter / 1000) * 1e6) / expected).toBeCloseTo(1, 6);
    expect(referenceViscosity(-speed * rpm, diameter / 1000)).toBe(referenceViscosity(speed * rpm, diameter / 1000));
  });
  // by hand: 45000·1000^−0.83 over 4500·1000^−½
  test('steps down by 2.3 % at 1000 rpm, where the standard changes its formula', () => expect(referenceViscosity(999.999 * rpm, 0.03) / referenceViscosity(1000.001 * rpm, 0.03)).toBeCloseTo(1.0233, 4));
  test.each([[0, 0.03], [100, 0], [Number.NaN, 0.03]])('is refused at %d rad/s on %d m', (speed, diameter) => expect(() => referenceViscosity(speed, diameter)).toThrow(/a speed other than zero and a positive diameter/));
});
