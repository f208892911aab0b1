import { bearingReactions, bevelForces, shaftStress, type ShaftLoad } from '@rotorwright/mechanics';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const load: fc.Arbitrary<ShaftLoad> = fc.record({ at: number(-0.2, 0.4), angle: number(-4, 4), force: number(-500, 500), axial: number(-200, 200), arm: number(0, 0.05) });

describe('two bearings of a shaft', () => {
  test('what acts, and what the bearings answer, is in balance (law)', () => {
    fc.assert(fc.property(number(-500, 500), number(-0.2, 0.4), (force, at) => {
      const { first, second } = bearingReactions(0, 0.1, [{ at, angle: 1, force, axial: 0, arm: 0 }]);
      // By the lever: the signed answers add up to the force.
      expect(first).toBeCloseTo(Math.abs((force * (0.1 - at)) / 0.1), 6);
      expect(second).toBeCloseTo(Math.abs((force * at) / 0.1), 6);
    }), { numRuns: 100 });
  });

  test('turning everything about the axis changes nothing; doubling everything doubles it (law)', () => {
    fc.assert(fc.property(fc.array(load, { minLength: 1, maxLength: 5 }), number(-3, 3), (loads, turn) => {
      const one = bearingReactions(0.01, 0.09, loads);
      const turned = bearingReactions(0.01, 0.09, loads.map((each) => ({ ...each, angle: each.angle + turn })));
      const twice = bearingReactions(0.01, 0.09, loads.map((each) => ({ ...each, force: 2 * each.force, axial: 2 * each.axial })));
      for (const key of ['first', 'second', 'moment'] as const) {
        expect(turned[key]).toBeCloseTo(one[key], 6);
        expect(twice[key]).toBeCloseTo(2 * one[key], 6);
      }
    }), { numRuns: 100 });
  });

  test('refuses bearings at one place, and what is no number', () => {
    expect(() => bearingReactions(0.1, 0.1, [])).toThrow(/bearings apart/u);
    expect(() => bearingReactions(0, 0.1, [{ at: Number.NaN, angle: 0, force: 1, axial: 0, arm: 0 }])).toThrow(RangeError);
  });
});

describe('stress of a round shaft', () => {
  test('the parts add up as they should: bending and pull in line, shear across (law)', () => {
    fc.assert(fc.property(number(0, 50), number(0, 50), number(0, 5000), (moment, torque, pull) => {
      const stress = shaftStress(0.012, 0.006, moment, torque, pull);
      expect(stress.equivalent).toBeGreaterThanOrEqual(Math.max(stress.bending + stress.pull, Math.sqrt(3) * stress.shear) * (1 - 1e-12));
    }), { numRuns: 50 });
    expect(() => shaftStress(0.01, 0.01, 0, 0, 0)).toThrow(RangeError);
  });
});

describe('bevel gears', () => {
  test('at a right angle what pushes one gear along its axis separates the other (law)', () => {
    fc.assert(fc.property(fc.integer({ min: 10, max: 40 }), fc.integer({ min: 10, max: 40 }), (teeth, mate) => {
      const one = bevelForces(1, 0.001, teeth, mate, 0.003, Math.PI / 9);
      const other = bevelForces(mate / teeth, 0.001, mate, teeth, 0.003, Math.PI / 9);
      expect(other.tangential).toBeCloseTo(one.tangential, 9);
      expect(other.radial).toBeCloseTo(one.axial, 9);
      expect(other.axial).toBeCloseTo(one.radial, 9);
    }), { numRuns: 50 });
  });
});
