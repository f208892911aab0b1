import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { chordMeasure, findLeast, gearGeometry, gearOutline, leastPinDiameter, pinMeasure, spanMeasure, spannedTeethFor, thicknessAt, toothProfile, type Point } from '../../src/index.ts';
import { signedDistance } from './outline.ts';

const rack = { normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, addendum: 1, dedendum: 1.25 };
const gears = fc.record({ teeth: fc.integer({ min: 17, max: 80 }), shift: numberIn(0, 0.5) }).map((own) => ({ ...rack, ...own }));

const helical = fc.record({ teeth: fc.integer({ min: 12, max: 80 }), shift: numberIn(-0.2, 0.6), helixAngle: numberIn(0, 0.6), pressureAngle: numberIn(0.3, 0.4) }).map((own) => ({ ...rack, ...own }));

describe('measures over helical teeth', () => {
  test('a span lies along the normal of the base helix: so many normal base pitches and a base thickness (independent route)', () => {
    fc.assert(
      fc.property(helical, fc.integer({ min: 1, max: 9 }), (gear, count) => {
        const geometry = gearGeometry(gear);
        const { span, contactDiameter } = spanMeasure(gear, count);
        const normal = Math.cos(geometry.baseHelixAngle);
        expect(span).toBeCloseTo((count - 1) * Math.PI * Math.cos(gear.pressureAngle) + thicknessAt(geometry.baseDiameter, geometry) * normal, 9);
        // In the transverse plane the anvils touch half the span's shadow from the base tangent point.
        expect(contactDiameter ** 2 - geometry.baseDiameter ** 2).toBeCloseTo((span * normal) ** 2, 9);
      }),
    );
  });

  test('the proposed count of teeth puts the anvils as near to the circle d + 2x·m as a pitch allows (law)', () => {
    fc.assert(
      fc.property(helical, (gear) => {
        const geometry = gearGeometry(gear);
        const middle = geometry.referenceDiameter + 2 * gear.shift;
        const wanted = Math.sqrt(Math.max(0, middle ** 2 - geometry.baseDiameter ** 2));
        const off = (count: number): number => Math.abs(spanMeasure(gear, count).span * Math.cos(geometry.baseHelixAngle) - wanted);
        const count = spannedTeethFor(gear);
        expect(off(count)).toBeLessThanOrEqual(off(count + 1) + 1e-9);
        if (count > 1) expect(off(count)).toBeLessThanOrEqual(off(count - 1) + 1e-9);
      }),
    );
  });

  test('a ball in the gap touches the flank where it is said to, and nowhere lies deeper (independent route: distance from the helical flank, point by point)', () => {
    fc.assert(
      fc.property(helical, numberIn(1.7, 1.9), (gear, ball) => {
        fc.pre(ball > leastPinDiameter(gear) + 0.2);
        const { pinCentreAngle, contactDiameter } = pinMeasure(gear, ball);
        const geometry = gearGeometry(gear);
        const base = geometry.baseDiameter / 2;
        const centre = base / Math.cos(pinCentreAngle);
        const gap = Math.PI / gear.teeth;
        // The flank starts at the base circle half a base thickness from the middle of the tooth, and leans back inv α; along the axis it turns.
        const start = thicknessAt(geometry.baseDiameter, geometry) / geometry.baseDiameter;
        const turn = Math.tan(geometry.baseHelixAngle) / base;
        const squared = (roll: number, along: number): number => {
          const angle = start + along * turn - roll;
          const [x, y] = [base * (Math.cos(angle) - roll * Math.sin(angle)), base * (Math.sin(angle) + roll * Math.cos(angle))];
          return (x - centre * Math.cos(gap)) ** 2 + (y - centre * Math.sin(gap)) ** 2 + along ** 2;
        };
        const nearest = (along: number): { roll: number; distance: number } => {
          const roll = findLeast((each) => squared(each, along), 0, 1.2, 40) ?? 0;
          return { roll, distance: squared(roll, along) };
        };
        const along = findLeast((each) => nearest(each).distance, -2, 2, 16)!;
        const { roll, distance } = nearest(along);
        expect(Math.sqrt(distance)).toBeCloseTo(ball / 2, 6);
        expect(2 * base * Math.hypot(1, roll)).toBeCloseTo(contactDiameter, 3);
      }),
      { numRuns: 20 },
    );
  });

  test('a calliper reads the chord of the virtual gear, which grows as the cube of the helix (law)', () => {
    const straight = { ...rack, teeth: 30, shift: 0 };
    const leaning = { ...straight, helixAngle: Math.acos(0.5 ** (1 / 3)) };
    // by hand: cos³ β = ½ doubles the diameter; half the angle, height m·z·(1 − cos(π/120))
    expect(chordMeasure(leaning, 1).height - 1).toBeCloseTo(30 * (1 - Math.cos(Math.PI / 120)), 12);
    expect(chordMeasure(leaning, 1).chord).toBeCloseTo(60 * Math.sin(Math.PI / 120), 12);
    expect(chordMeasure(straight, 1).chord).toBeCloseTo(30 * Math.sin(Math.PI / 60), 12);
  });
});

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
