import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { tubeSection, tubeTwist } from '../../src/shafts/index.ts';

const size = fc.double({ min: 1e-3, max: 0.1, noNaN: true });
const share = numberIn(0, 0.999);

describe('a tube', () => {
  // independent route: ∫ r² dA over 20,000 rings of the annulus, mid-point rule
  test('has the polar moment that its rings add up to', () => {
    const [outer, inner, rings] = [0.02, 0.017, 20_000];
    const step = (outer - inner) / 2 / rings;
    let sum = 0;
    for (let ring = 0; ring < rings; ring++) sum += 2 * Math.PI * (inner / 2 + (ring + 0.5) * step) ** 3 * step;
    expect(tubeSection(outer, inner).polarMoment / sum).toBeCloseTo(1, 8);
  });

  // law: a tube is the solid bar less its bore
  test('is the bar less its bore', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0.01, max: 0.9, noNaN: true }), (outer, part) => {
        const [tube, bar, bore] = [tubeSection(outer, part * outer), tubeSection(outer, 0), tubeSection(part * outer, 0)];
        expect(tube.area / (bar.area - bore.area)).toBeCloseTo(1, 9);
        expect(tube.secondMoment / (bar.secondMoment - bore.secondMoment)).toBeCloseTo(1, 9);
      }),
    );
  });

  // law: I grows with the fourth power of the size, A with the second
  test('scales', () => {
    fc.assert(
      fc.property(size, share, (outer, part) => {
        const [one, two] = [tubeSection(outer, part * outer), tubeSection(2 * outer, 2 * part * outer)];
        expect(two.secondMoment / one.secondMoment).toBeCloseTo(16, 9);
        expect(two.area / one.area).toBeCloseTo(4, 9);
      }),
    );
  });

  // law: elastic and odd in the torque; half the length is twice as stiff
  test('twists in proportion', () => {
    fc.assert(
      fc.property(size, share, numberIn(-100, 100), (outer, part, torque) => {
        const whole = tubeTwist(torque, outer, part * outer, 1, 26e9);
        const half = tubeTwist(-torque, outer, part * outer, 0.5, 26e9);
        expect(half.stiffness / whole.stiffness).toBeCloseTo(2, 12);
        expect(half.twist * -2).toBeCloseTo(whole.twist, 9);
        expect(half.shearStress + whole.shearStress).toBe(0);
      }),
    );
  });

  test('with a bore as wide as itself, or without length, is refused', () => {
    expect(() => tubeSection(0.01, 0.01)).toThrow(/inner < outer/);
    expect(() => tubeTwist(1, 0.01, 0, 0, 26e9)).toThrow(/positive/);
  });
});
