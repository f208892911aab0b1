import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { gearGeometry, gearOutline, pinMeasure, spanMeasure, spannedTeethFor, thicknessAt, toothProfile, type Point } from '../../src/index.ts';
import { signedDistance } from './outline.ts';

const rack = { normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, addendum: 1, dedendum: 1.25 };
const gears = fc.record({ teeth: fc.integer({ min: 17, max: 80 }), shift: numberIn(0, 0.5) }).map((own) => ({ ...rack, ...own }));

describe('measures over teeth', () => {
  test('a span is so many base pitches and one base thickness (independent route)', () => {
    fc.assert(
      fc.property(gears, fc.integer({ min: 1, max: 9 }), (gear, count) => {
        const geometry = gearGeometry(gear);
        const basePitch = Math.PI * Math.cos(Math.PI / 9);
        expect(spanMeasure(gear, count).span).toBeCloseTo((count - 1) * basePitch + thicknessAt(geometry.baseDiameter, geometry), 9);
      }),
    );
  });

  test('the proposed count of teeth puts the anvils on the flank (law)', () => {
    fc.assert(
      fc.property(gears, (gear) => {
        const { contactDiameter } = spanMeasure(gear, spannedTeethFor(gear));
        expect(contactDiameter).toBeLessThan(gearGeometry(gear).tipDiameter);
        expect(contactDiameter / 2).toBeGreaterThan(toothProfile(gear).formRadius);
      }),
    );
  });

  test('pins of the size found touch the drawn flanks (independent route: distance from the outline)', () => {
    fc.assert(
      fc.property(gears, fc.double({ min: 1.68, max: 1.9, noNaN: true }), (gear, pin) => {
        const { overPins, pinCentreAngle, contactDiameter } = pinMeasure(gear, pin);
        const centre = gearGeometry(gear).baseDiameter / Math.cos(pinCentreAngle) / 2;
        const profile = toothProfile({ ...gear, pointsPerFlank: 100 });
        fc.pre(contactDiameter / 2 < profile.tipRadius && contactDiameter / 2 > profile.formRadius);
        const outline = gearOutline(profile);
        const gap = Math.PI / gear.teeth;
        const middle: Point = [centre * Math.cos(gap), centre * Math.sin(gap)];
        expect(signedDistance(middle, outline)).toBeCloseTo(pin / 2, 3);
        // The gap opposite is half the gear away, or half a pitch less for an odd count.
        const opposite = gap + (2 * Math.PI * Math.floor(gear.teeth / 2)) / gear.teeth;
        const across = Math.hypot(middle[0] - centre * Math.cos(opposite), middle[1] - centre * Math.sin(opposite));
        expect(overPins).toBeCloseTo(across + pin, 9);
      }),
      { numRuns: 30 },
    );
  });

  test('a pin that falls to the root is refused', () => {
    expect(() => pinMeasure({ ...rack, teeth: 20, shift: 0 }, 0.1)).toThrow('thinner pins fall between the flanks');
  });
});
