import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beltRatio, bevelMeshRatio, externalMeshRatio, internalMeshRatio, ratioText, ratioToNumber, rigidRatio, type Vector3 } from '../../src/index.ts';

const up: Vector3 = [0, 0, 1];
const down: Vector3 = [0, 0, -1];
const forward: Vector3 = [1, 0, 0];
const left: Vector3 = [0, 1, 0];

describe('signs of speed ratios', () => {
  test('wheels that mesh outside turn against each other, a ring turns with its pinion (law)', () => {
    expect(ratioText(externalMeshRatio({ axis: up, teeth: 17 }, { axis: up, teeth: 85 }))).toBe('-1/5');
    expect(ratioText(externalMeshRatio({ axis: up, teeth: 17 }, { axis: down, teeth: 85 }))).toBe('1/5');
    expect(ratioText(internalMeshRatio({ axis: up, teeth: 17 }, { axis: up, teeth: 85 }))).toBe('1/5');
    expect(ratioText(internalMeshRatio({ axis: up, teeth: 17 }, { axis: down, teeth: 85 }))).toBe('-1/5');
  });

  test('bevel teeth share one velocity at their contact, whichever way the axes point (independent route: velocities from cross products)', () => {
    const side = fc.constantFrom<1 | -1>(1, -1);
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 60 }), fc.integer({ min: 10, max: 60 }), side, side, fc.double({ min: 1, max: 2.1, noNaN: true }), (teeth1, teeth2, side1, side2, shaftAngle) => {
        // Gears lie along b1 and b2, an angle apart; their shafts' axes point the same way or against.
        const b1: Vector3 = [1, 0, 0];
        const b2: Vector3 = [Math.cos(shaftAngle), Math.sin(shaftAngle), 0];
        const axis1 = b1.map((c) => side1 * c) as unknown as Vector3;
        const axis2 = b2.map((c) => side2 * c) as unknown as Vector3;
        // Cone angle of gear 1 from sin δ1/sin(Σ − δ1) = z1/z2.
        const cone1 = Math.atan2(Math.sin(shaftAngle), teeth2 / teeth1 + Math.cos(shaftAngle));
        const contact: Vector3 = [Math.cos(cone1), Math.sin(cone1), 0];
        const omega2 = ratioToNumber(bevelMeshRatio({ axis: axis1, teeth: teeth1, side: side1 }, { axis: axis2, teeth: teeth2, side: side2 }));
        const velocity1 = axis1[0] * contact[1] - axis1[1] * contact[0];
        const velocity2 = omega2 * (axis2[0] * contact[1] - axis2[1] * contact[0]);
        expect(velocity2).toBeCloseTo(velocity1, 12);
      }),
    );
  });

  test('a quarter twist carries the sense of rotation with it (by hand: z turned 90° right-handed about −x points along +y)', () => {
    const twist = { runs: [-1, 0, 0] as Vector3, angle: Math.PI / 2 };
    expect(ratioText(beltRatio({ axis: up, teeth: 60 }, { axis: left, teeth: 12 }, twist))).toBe('5');
    expect(ratioText(beltRatio({ axis: up, teeth: 60 }, { axis: left, teeth: 12 }, { ...twist, angle: -Math.PI / 2 }))).toBe('-5');
    expect(ratioText(beltRatio({ axis: up, teeth: 60 }, { axis: up, teeth: 12 }))).toBe('5');
    expect(ratioText(beltRatio({ axis: up, teeth: 60 }, { axis: down, teeth: 12 }))).toBe('-5');
  });

  test('axes that no such coupling can join are refused', () => {
    expect(() => externalMeshRatio({ axis: up, teeth: 17 }, { axis: forward, teeth: 85 })).toThrow('must be parallel');
    expect(() => beltRatio({ axis: up, teeth: 20 }, { axis: forward, teeth: 20 }, { runs: [-1, 0, 0], angle: Math.PI / 2 })).toThrow('must be parallel');
    expect(() => bevelMeshRatio({ axis: up, teeth: 20, side: 1 }, { axis: down, teeth: 20, side: 1 })).toThrow('must cross');
    expect(() => externalMeshRatio({ axis: up, teeth: 0 }, { axis: up, teeth: 85 })).toThrow('positive whole number');
    expect(() => rigidRatio([0, 0, 0], up)).toThrow('a direction wanted');
  });
});
