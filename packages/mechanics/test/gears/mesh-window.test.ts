import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { centreDistances, chordMeasure, grownBacklash, grownCentreDistance, meshGeometry } from '../../src/index.ts';

const teeth = { normalModule: 0.001, helixAngle: 0.25, pressureAngle: Math.PI / 9, teeth1: 17, teeth2: 84, shift1: 0.2, shift2: 0.1, addendum: 1, dedendum: 1.25 };
const same = { gear1: 1, gear2: 1, frame: 1 };
const growth = fc.double({ min: 0.995, max: 1.01, noNaN: true });
const tight = centreDistances(teeth, 17, 84, 0.2, 0.1, 'external').zeroBacklashCentreDistance;

describe('a mesh that grows', () => {
  test('that has not grown is that of the gear pair (independent route)', () => {
    fc.assert(
      fc.property(numberIn(-0.0001, 0.0008), (excess) => {
        const centreDistance = tight + excess;
        expect(grownBacklash(teeth, centreDistance, same).backlash).toBeCloseTo(meshGeometry({ ...teeth, faceWidth: 0.01, centreDistance }).backlash, 14);
      }),
    );
    expect(grownCentreDistance(teeth, same)).toBeCloseTo(tight, 14);
  });

  test('a pair in which all grows alike is a larger copy of itself (law)', () => {
    fc.assert(
      fc.property(growth, (share) => {
        const alike = { gear1: share, gear2: share, frame: share };
        expect(grownBacklash(teeth, 0.0532, alike).backlash / grownBacklash(teeth, 0.0532, same).backlash).toBeCloseTo(share, 9);
        expect(grownCentreDistance(teeth, alike)).toBeCloseTo(tight, 14);
      }),
    );
  });

  test('growing gears close it, a growing frame opens it (law)', () => {
    fc.assert(
      fc.property(growth, growth, growth, (gear1, gear2, frame) => {
        const play = grownBacklash(teeth, 0.0534, { gear1, gear2, frame }).backlash;
        expect(grownBacklash(teeth, 0.0534, { gear1: gear1 + 1e-4, gear2, frame }).backlash).toBeLessThan(play);
        expect(grownBacklash(teeth, 0.0534, { gear1, gear2: gear2 + 1e-4, frame }).backlash).toBeLessThan(play);
        expect(grownBacklash(teeth, 0.0534, { gear1, gear2, frame: frame + 1e-4 }).backlash).toBeGreaterThan(play);
      }),
    );
  });

  test('the distance found leaves just the backlash asked for (law: there and back)', () => {
    fc.assert(
      fc.property(growth, growth, growth, numberIn(0, 0.0005), (gear1, gear2, frame, wanted) => {
        const grown = { gear1, gear2, frame };
        expect(grownBacklash(teeth, grownCentreDistance(teeth, grown, wanted), grown).backlash).toBeCloseTo(wanted, 12);
      }),
    );
  });

  test('closer than the base circles each micrometre binds two more (law), and at their touch there is no step', () => {
    const { gear1, gear2 } = meshGeometry({ ...teeth, faceWidth: 0.01 });
    const touch = (gear1.baseDiameter + gear2.baseDiameter) / 2;
    const play = (distance: number): number => grownBacklash(teeth, distance, same).backlash;
    expect(play(touch - 1e-6) - play(touch - 3e-6)).toBeCloseTo(4e-6, 12);
    expect(play(touch + 1e-12)).toBeCloseTo(play(touch - 1e-12), 8);
  });

  test('closer than the base circles it binds still harder', () => {
    const least = 0.95 * tight;
    expect(grownBacklash(teeth, least * 0.99, same).backlash).toBeLessThan(grownBacklash(teeth, least, same).backlash);
  });

  test('misuse is refused with argument, rule and value', () => {
    expect(() => grownBacklash(teeth, 0.053, { ...same, gear2: 0 })).toThrow('growth of gear2 must be positive, got 0');
    expect(() => grownCentreDistance(teeth, same, -1)).toThrow('leastBacklash');
    expect(() => grownCentreDistance({ ...teeth, teeth2: 20, shift1: -1, shift2: -1, addendum: 2 }, same)).toThrow('must let the flanks touch');
  });
});

test('a tooth calliper reads less than the arc, and sits deeper than the tip height (law)', () => {
  fc.assert(
    fc.property(fc.integer({ min: 8, max: 200 }), (count) => {
      const gear = { ...teeth, helixAngle: 0, teeth: count, shift: 0 };
      const { chord, height } = chordMeasure(gear, 0.001);
      expect(chord).toBeLessThan((0.001 * Math.PI) / 2);
      expect(height).toBeGreaterThan(0.001);
    }),
  );
});
