import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angularContactFactors, angularContactRange, deepGrooveFactors, equivalentLoad, relativeLoadRange, staticEquivalentLoad, staticThrustLoad, thrustFactors } from '../../src/bearings/index.ts';

const degrees = (value: number): number => (value * Math.PI) / 180;

describe('load factors', () => {
  // published: a worked example of a bearing catalogue, 6208 with 1000 N along its axis, read along straight lines
  test('of a deep-groove bearing between two lines of the table', () => {
    const { limit, radial, axial } = deepGrooveFactors((14 * 1000) / 17_900);
    expect(radial).toBe(0.56);
    expect(axial).toBeCloseTo(1.67, 2);
    expect(limit).toBeCloseTo(0.265, 3);
  });

  test('are held beyond the ends of the table', () => {
    expect(deepGrooveFactors(0)).toEqual(deepGrooveFactors(relativeLoadRange.least));
    expect(deepGrooveFactors(100)).toEqual(deepGrooveFactors(relativeLoadRange.most));
    expect(relativeLoadRange).toEqual({ least: 0.172, most: 6.89 });
  });

  // ISO 281:2007, table 3, contact angle 15° (from memory)
  test.each([[0.178, 0.38, 1.47], [0.714, 0.43, 1.3], [1.43, 0.47, 1.19], [3.57, 0.55, 1.02], [7.14, 0.56, 1]])('at 15° and a relative load of %d', (relative, limit, axial) => {
    expect(angularContactFactors(degrees(15), relative)).toEqual({ limit, radial: 0.44, axial });
  });

  // ISO 281:2007, table 3 (from memory)
  test.each([[20, 0.57, 0.43, 1], [25, 0.68, 0.41, 0.87], [30, 0.8, 0.39, 0.76], [35, 0.95, 0.37, 0.66], [40, 1.14, 0.35, 0.57], [45, 1.34, 0.33, 0.5]])('at %d° do not change with the load', (angle, limit, radial, axial) => {
    for (const relative of [0, 1, 9]) {
      const factors = angularContactFactors(degrees(angle), relative);
      expect(factors.limit).toBeCloseTo(limit, 9);
      expect(factors.radial).toBeCloseTo(radial, 9);
      expect(factors.axial).toBeCloseTo(axial, 9);
    }
  });

  // by hand: half-way between 30° and 35°
  test('between two angles lie between theirs', () => {
    const { limit, radial, axial } = angularContactFactors(degrees(32.5), 1);
    expect([limit, radial, axial].map((value) => Math.round(value * 1e6) / 1e6)).toEqual([0.875, 0.38, 0.71]);
  });

  // ISO 281:2007, table 6 (from memory): α, e, X
  test.each([[50, 1.49, 0.73], [60, 2.17, 0.92], [70, 3.43, 1.28], [75, 4.67, 1.66], [85, 14.29, 4.8]])('of a thrust bearing at %d°', (angle, limit, radial) => {
    const factors = thrustFactors(degrees(angle));
    expect(Math.abs(factors.limit - limit)).toBeLessThan(0.006);
    expect(Math.abs(factors.radial - radial)).toBeLessThan(0.006);
    expect(factors.axial).toBe(1);
  });

  // law: at F_a = e·F_r both rules give one load, so X + e·Y = 1; the table is rounded to two figures
  test('meet where the axial load begins to count', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 7, noNaN: true }), fc.double({ min: 15, max: 45, noNaN: true }), (relative, angle) => {
        for (const { limit, radial, axial } of [deepGrooveFactors(relative), angularContactFactors(degrees(angle), relative)]) expect(Math.abs(radial + limit * axial - 1)).toBeLessThan(0.025);
      }),
    );
  });

  test.each([
    [() => deepGrooveFactors(-0.1), /deepGrooveFactors: relativeLoad must not be negative, got -0\.1/],
    [() => deepGrooveFactors(Number.NaN), /relativeLoad/],
    [() => angularContactFactors(degrees(14), 1), /15° to 45°/],
    [() => angularContactFactors(degrees(46), 1), /15° to 45°/],
    [() => angularContactFactors(degrees(30), -1), /relativeLoad/],
    [() => thrustFactors(degrees(45)), /over 45°/],
    [() => thrustFactors(degrees(90)), /below 90°/],
  ])('refuse what the table does not have: %s', (ask, message) => expect(ask).toThrow(message));

  test('take the ends of the table', () => {
    expect(angularContactFactors(angularContactRange.least, 1).radial).toBe(0.44);
    expect(angularContactFactors(angularContactRange.most, 1).radial).toBe(0.33);
  });
});

describe('equivalent load', () => {
  const factors = { limit: 0.3, radial: 0.56, axial: 1.45 };
  // by hand: 0.56·1000 + 1.45·400 = 1140
  test.each([[1000, 300, 1000], [1000, 300.1, 0.56 * 1000 + 1.45 * 300.1], [1000, 400, 1140], [0, 400, 580], [0, 0, 0]])('of %d N and %d N', (radial, axial, expected) => expect(equivalentLoad(radial, axial, factors)).toBeCloseTo(expected, 9));

  // published: rule of a bearing catalogue for deep grooves; ISO 76:2006, table 2 (from memory) for angles
  test.each([
    [200, 400, 0, 320], [1000, 100, 0, 1000], [100, 300, 15, 188], [100, 300, 20, 176], [100, 300, 25, 164], [100, 300, 30, 149], [100, 300, 35, 137], [100, 300, 40, 128], [100, 300, 45, 116], [100, 300, 17.5, 182], [500, 10, 40, 500],
  ])('at rest of %d N and %d N at %d°', (radial, axial, angle, expected) => expect(staticEquivalentLoad(radial, axial, degrees(angle))).toBeCloseTo(expected, 9));

  // by hand: 2.3·100·tan 60° + 500
  test('of a thrust bearing at rest', () => expect(staticThrustLoad(100, 500, degrees(60))).toBeCloseTo(230 * Math.sqrt(3) + 500, 9));
  test.each([5, 14, 46, Number.NaN])('at rest is refused at %d°', (angle) => expect(() => staticEquivalentLoad(1, 1, degrees(angle))).toThrow(/0 or 15° to 45°/));
});
