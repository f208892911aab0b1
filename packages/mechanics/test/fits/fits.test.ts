import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { interferenceLost, isoFit, limitDeviations, pressFit, warmingToFit } from '../../src/fits/index.ts';

describe('limits after ISO 286', () => {
  // published: appendix tables 9 to 11 of a public bearing catalogue, micrometres
  test.each([
    [5, 'h6', -8, 0], [5, 'k6', 1, 9], [5, 'n6', 8, 16], [8, 'g6', -14, -5], [8, 'j6', -2, 7], [8, 'k6', 1, 10], [8, 'm6', 6, 15],
    [8, 'p6', 15, 24], [8, 'H7', 0, 15], [8, 'N7', -19, -4], [13, 'g6', -17, -6], [13, 'j6', -3, 8], [13, 'm6', 7, 18],
    [13, 'p6', 18, 29], [13, 'K7', -12, 6], [13, 'M7', -18, 0], [13, 'P7', -29, -11], [13, 'J7', -8, 10], [22, 'h6', -13, 0],
    [22, 'k6', 2, 15], [22, 'n6', 15, 28], [22, 'M7', -21, 0], [22, 'P7', -35, -14], [22, 'J7', -9, 12],
  ] as const)('%d mm %s', (millimetres, code, lower, upper) => {
    const deviations = limitDeviations(millimetres / 1000, code);
    expect(deviations.lower * 1e6).toBeCloseTo(lower, 9);
    expect(deviations.upper * 1e6).toBeCloseTo(upper, 9);
  });

  test('a size on the border of a step belongs to the lower step', () => {
    expect(limitDeviations(0.01, 'h6').lower * 1e6).toBeCloseTo(-9, 9);
    expect(limitDeviations(0.0100001, 'h6').lower * 1e6).toBeCloseTo(-11, 9);
  });

  // law: in the hole-basis and the shaft-basis system the mirrored fit has the same tightest fit where Δ applies (hole one grade coarser)
  test.each(['k', 'm', 'n', 'p', 's', 'u', 'x', 'z'])('H7/%s6 is as tight as its mirror image', (letter) => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 120 }), (millimetres) => {
        const size = millimetres / 1000;
        const holeBasis = isoFit(size, 'H7', `${letter}6`);
        const shaftBasis = isoFit(size, `${letter.toUpperCase()}7`, 'h6');
        expect(shaftBasis.clearanceMax).toBeCloseTo(holeBasis.clearanceMax, 12);
        expect(shaftBasis.clearanceMin).toBeCloseTo(holeBasis.clearanceMin, 12);
      }),
    );
  });

  // law: each letter lies higher than the one before it, at any size and grade that has both
  test('letters rise in order', () => {
    const letters = ['d', 'e', 'f', 'g', 'h', 'k', 'm', 'n', 'p', 'r', 's', 'u', 'x', 'z', 'za', 'zb', 'zc'];
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), fc.integer({ min: 4, max: 7 }), (millimetres, grade) => {
        const uppers = letters.map((letter) => limitDeviations(millimetres / 1000, `${letter}${grade}`).upper);
        uppers.slice(1).forEach((upper, i) => expect(upper).toBeGreaterThanOrEqual(uppers[i]!));
      }),
    );
  });

  test.each([
    [0.2, 'H7', /up to 0\.12 m/], [0.01, 'H2', /4 to 11/], [0.01, 'Hh7', /capitals/], [0.02, 't6', /no t at 20 mm/], [0.02, '7H', /letters and a grade/], [0.02, 'K9', /only up to grade 8/],
  ] as const)('%d m %s is refused', (size, code, message) => expect(() => limitDeviations(size, code)).toThrow(message));
});

describe('a press fit', () => {
  const steel = { youngsModulus: 200e9, poissonsRatio: 0.3 };

  // published: a public worked example, solid shaft 50 mm, hub 80 mm, 40 µm; held to 0.1 %
  test('of one material on a solid shaft', () => {
    const fit = pressFit({ nominal: 0.05, interference: 40e-6, shaftBore: 0, hubOuter: 0.08, length: 0.04, friction: 0.15, shaft: steel, hub: steel });
    expect(fit.pressure / 48.75e6).toBeCloseTo(1, 3);
    expect(fit.pressForce / 45950).toBeCloseTo(1, 3);
    expect(fit.torqueCapacity / 1149).toBeCloseTo(1, 3);
    expect(fit.hubHoopStress / 111.3e6).toBeCloseTo(1, 3);
  });

  // independent route: Lamé's formula for two materials, worked elsewhere
  test('of a steel ring in aluminium', () => {
    const fit = pressFit({
      nominal: 0.022, interference: 15e-6, shaftBore: 0, hubOuter: 0.032, length: 0.01, friction: 0.12,
      shaft: { youngsModulus: 208e9, poissonsRatio: 0.3 }, hub: { youngsModulus: 71.7e9, poissonsRatio: 0.33 },
    });
    expect(fit.pressure / 14.53268504811491e6).toBeCloseTo(1, 9);
  });

  // law: elastic, so pressure is proportional to interference
  test('presses twice as hard with twice the interference', () => {
    const at = (interference: number): number =>
      pressFit({ nominal: 0.01, interference, shaftBore: 0.004, hubOuter: 0.02, length: 0.01, friction: 0.12, shaft: steel, hub: steel }).pressure;
    expect(at(20e-6) / at(10e-6)).toBeCloseTo(2, 12);
  });

  // law: only what differs counts; a bore in the shaft gives way, a thicker hub resists
  test('presses less on a hollow shaft and in a thin hub, and holds by friction and length', () => {
    const base = { nominal: 0.01, interference: 10e-6, shaftBore: 0, hubOuter: 0.02, length: 0.01, friction: 0.12, shaft: steel, hub: steel };
    const fit = pressFit(base);
    expect(pressFit({ ...base, shaftBore: 0.006 }).pressure).toBeLessThan(fit.pressure);
    expect(pressFit({ ...base, hubOuter: 0.015 }).pressure).toBeLessThan(fit.pressure);
    expect(pressFit({ ...base, length: 0.02 }).pressForce / fit.pressForce).toBeCloseTo(2, 12);
    expect(pressFit({ ...base, friction: 0.24 }).torqueCapacity / fit.torqueCapacity).toBeCloseTo(2, 12);
    expect(fit.torqueCapacity / fit.pressForce).toBeCloseTo(0.005, 12);
    // by hand, one material and a solid shaft: p = I·E/(2d)·(1 − (d/D)²), σ_t = p·(D² + d²)/(D² − d²)
    expect(fit.pressure).toBeCloseTo(((10e-6 * 200e9) / 0.02) * 0.75, 0);
    expect(fit.hubHoopStress / fit.pressure).toBeCloseTo(5 / 3, 12);
    expect(pressFit({ ...base, interference: 0 }).pressure).toBe(0);
  });

  test.each([[{ nominal: 0.02 }, /bore < nominal < hub/], [{ shaftBore: -0.001 }, /bore < nominal < hub/], [{ shaftBore: 0.01 }, /bore < nominal < hub/], [{ length: 0 }, /bore < nominal < hub/], [{ interference: -1e-6 }, /interference must not be negative/]])('%o is refused', (change, message) => {
    expect(() => pressFit({ nominal: 0.01, interference: 0, shaftBore: 0, hubOuter: 0.02, length: 0.01, friction: 0.1, shaft: steel, hub: steel, ...change })).toThrow(message);
  });

  test('with the bore outside the joint is refused', () => {
    expect(() => pressFit({ nominal: 0.01, interference: 0, shaftBore: 0.02, hubOuter: 0.03, length: 0.01, friction: 0.1, shaft: steel, hub: steel })).toThrow(/bore < nominal < hub/);
  });
});

describe('warming a housing', () => {
  // by hand: (15 + 5) µm / (23.4e-6 /K × 22 mm) = 38.85 K
  test('lets a 22 mm bearing drop in', () => expect(warmingToFit(0.022, 15e-6, 5e-6, 23.4e-6)).toBeCloseTo(38.85003885003886, 9));
  test('is not needed where it is loose', () => expect(warmingToFit(0.022, -10e-6, 5e-6, 23.4e-6)).toBe(0));
  test.each([[0, 1e-5, /nominal/], [0.01, 0, /expansion/], [0.01, Number.NaN, /expansion/]])('of %d m, %d 1/K is refused', (nominal, expansion, message) => expect(() => warmingToFit(nominal, 1e-6, 0, expansion)).toThrow(message));
});

describe('warming a joint', () => {
  // by hand: (23.4 − 12.5)·10⁻⁶/K · 22 mm · 60 K = 14.388 µm
  test('takes interference where the outer part expands more, and gives it back in the cold', () => {
    expect(interferenceLost(0.022, 23.4e-6, 12.5e-6, 60) * 1e6).toBeCloseTo(14.388, 9);
    expect(interferenceLost(0.022, 23.4e-6, 12.5e-6, -60) * 1e6).toBeCloseTo(-14.388, 9);
    expect(interferenceLost(0.022, 12.5e-6, 23.4e-6, 60) * 1e6).toBeCloseTo(-14.388, 9);
  });
  test.each([[0, 1e-5, 10, /nominal must be positive/], [0.01, Number.NaN, 10, /finite/], [0.01, 1e-5, Infinity, /finite/]])('of %d m, %d 1/K, %d K is refused', (nominal, expansion, rise, message) => expect(() => interferenceLost(nominal, expansion, 0, rise)).toThrow(message));
});
