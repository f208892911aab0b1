import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { rootFactors, rootSection, toothProfile, type RackedGear } from '../../src/index.ts';

const twenty = Math.PI / 9;
const standard: RackedGear = { normalModule: 0.001, helixAngle: 0, pressureAngle: twenty, teeth: 24, shift: 0, addendum: 1, dedendum: 1.25, filletRadius: 0.38 };

const gears = fc.record({
  normalModule: fc.constant(0.001),
  helixAngle: numberIn(0, 0.5),
  pressureAngle: fc.constant(twenty),
  teeth: fc.integer({ min: 18, max: 150 }),
  shift: numberIn(-0.1, 0.6),
  addendum: fc.constant(1),
  dedendum: fc.constant(1.25),
  filletRadius: fc.double({ min: 0.2, max: 0.38, noNaN: true }),
});

describe('root of a tooth', () => {
  test('its 30° tangent touches the fillet that the rack generates (independent route: the outline of the tooth)', () => {
    for (const teeth of [18, 24, 40, 90]) {
      const gear = { ...standard, teeth, shift: 0.1 };
      const { chord } = rootSection(gear);
      // The tooth lies along x; on the outline the slope of the flank against it is 30° somewhere on the fillet.
      const { points } = toothProfile({ ...gear, pointsPerFlank: 600 });
      const lower = points.filter(([, y]) => y < 0);
      let half = 0;
      for (let i = 1; i < lower.length; i++) {
        const [[x0, y0], [x1, y1]] = [lower[i - 1]!, lower[i]!];
        const slope = Math.atan2(y1 - y0, x1 - x0);
        if (slope < Math.PI / 6 && half === 0 && x1 > x0) half = Math.abs(y0 + y1) / 2;
      }
      expect((2 * half) / gear.normalModule).toBeCloseTo(chord, 2);
    }
  });

  test('the module does not matter: all factors are ratios (law)', () => {
    fc.assert(
      fc.property(gears, (gear) => {
        const one = rootFactors(gear, 'tip', 1.4);
        const other = rootFactors({ ...gear, normalModule: 3 }, 'tip', 1.4);
        expect(other.form).toBeCloseTo(one.form, 9);
        expect(other.stressCorrection).toBeCloseTo(one.stressCorrection, 9);
      }),
    );
  });

  test('a load further out bends more: tip over outer single contact, and with less overlap (law)', () => {
    fc.assert(
      fc.property(gears, fc.double({ min: 1.02, max: 1.6, noNaN: true }), (gear, ratio) => {
        const outer = rootFactors(gear, 'outer-single-contact', ratio);
        const tip = rootFactors(gear, 'tip', ratio);
        expect(tip.form).toBeGreaterThan(outer.form);
        expect(tip.lever).toBeGreaterThan(outer.lever);
        expect(rootFactors(gear, 'outer-single-contact', ratio + 0.1).form).toBeLessThan(outer.form);
      }),
    );
    expect(rootFactors(standard, 'outer-single-contact', 1)).toEqual(rootFactors(standard, 'tip', 1));
  });

  test('a sharper fillet is a sharper notch (law)', () => {
    fc.assert(
      fc.property(gears, (gear) => {
        expect(rootFactors({ ...gear, filletRadius: gear.filletRadius - 0.1 }, 'tip', 1).stressCorrection).toBeGreaterThan(rootFactors(gear, 'tip', 1).stressCorrection);
      }),
    );
  });

  test('misuse is refused with argument, rule and value', () => {
    expect(() => rootSection({ ...standard, filletRadius: 0.6 })).toThrow('filletRadius must fit into the tip of the rack, at most 0.47');
    expect(() => rootSection({ ...standard, filletRadius: -0.1 })).toThrow('filletRadius');
    expect(() => rootFactors(standard, 'tip', 0.9)).toThrow('contactRatio must be at least 1, got 0.9');
  });
});
