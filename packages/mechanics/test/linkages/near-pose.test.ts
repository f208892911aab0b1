import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { servoAnglesAt, type SwashplateGeometry } from '../../src/linkages/index.ts';
import { nearPoseSolver } from '../../src/linkages/near-pose.ts';
import { poseOf } from '../../src/linkages/plate-pose.ts';
import type { Vector3 } from '../../src/numeric/vector.ts';

/** Nothing square, nothing level: axes point up and in, arms are no radius of their circle, balls stand at different heights. */
const crooked = (side: 'above' | 'below', at: readonly number[]): SwashplateGeometry => {
  const up = side === 'above' ? 1 : -1;
  return {
    rotation: 'clockwise', plateSide: side, guide: [-0.041, 0.007, 0.003],
    servos: at.map((angle, index) => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const ball: Vector3 = [0.036 * c, 0.036 * s, -0.003 - 0.001 * index];
      const arm: Vector3 = [-0.016 * s + 0.002 * c, 0.016 * c + 0.002 * s, 0.003 + 0.001 * index];
      const end: Vector3 = [ball[0] + 0.004, ball[1] - 0.003 * index, -0.085 * up];
      return { pivot: [end[0] - arm[0], end[1] - arm[1], end[2] - arm[2]], axis: [2 * c, 2 * s, 0.3], arm, rodLength: 0.082 + 0.001 * index, ball };
    }),
    link: { upperBall: [0.01, 0.03, 0.008], length: 0.066, driver: [0, -0.026, 0.008] },
    grip: { height: 0.08, ball: [0.009, 0.03, -0.006] },
  };
};
const three = [0.3, 2.2, 4.4];
const small = numberIn(-0.12, 0.12);
const shift = numberIn(-0.004, 0.004);

describe.each(['above', 'below'] as const)('a plate %s its servos, three of them', (side) => {
  const geometry = crooked(side, three);
  const solve = nearPoseSolver(geometry);
  const level = poseOf(geometry, [0, 0, 0])!.pose;

  // law: the forward undoes the inverse, and needs no help from the slower search
  it('is found again from nearby, at the angles that hold it', () => {
    fc.assert(fc.property(shift, small, small, (height, p, q) => {
      const pose = { height: level.height + height, p: level.p + p, q: level.q + q };
      const angles = servoAnglesAt(geometry, pose);
      expect(angles).toBeInstanceOf(Array);
      const again = solve(angles as readonly number[], level);
      expect(again).toEqual({ height: expect.closeTo(pose.height, 12), p: expect.closeTo(pose.p, 11), q: expect.closeTo(pose.q, 11) });
    }), { numRuns: 60 });
  });

  it('stands on its own side, and is not looked for on the other', () => {
    const other = crooked(side === 'above' ? 'below' : 'above', three);
    expect(nearPoseSolver({ ...geometry, plateSide: other.plateSide })([0, 0, 0], level)).toBeUndefined();
  });

  it('is found in few steps: twelve reach from a tenth of leaning', () => {
    expect(solve([0, 0, 0], { height: level.height + 0.003, p: level.p + 0.1, q: level.q - 0.1 })).toEqual({ height: expect.closeTo(level.height, 12), p: expect.closeTo(level.p, 11), q: expect.closeTo(level.q, 11) });
  });

  it('is not found where a rod is too short to close, nor where the guide cannot be kept', () => {
    const short = { ...geometry, servos: geometry.servos.map((servo, index) => (index === 0 ? { ...servo, rodLength: 0.02 } : servo)) };
    expect(nearPoseSolver(short)([0, 0, 0], level)).toBeUndefined();
    expect(nearPoseSolver({ ...geometry, guide: [0.001, 0, 0.05] })([0, 0, 0], { ...level, q: 0.4 })).toBeUndefined();
  });
});

describe.each(['above', 'below'] as const)('a plate %s four servos that fight each other', (side) => {
  it('settles where the slower search settles', () => {
    // Independent route: damped descent from level. The bottom of a valley is known to the root of what rounding leaves.
    const geometry = crooked(side, [0.8, 2.4, 3.9, 5.5]);
    const level = poseOf(geometry, [0, 0, 0, 0])!.pose;
    const angles = [0.03, -0.02, 0.04, 0.01];
    const slow = poseOf(geometry, angles)!;
    expect(Math.max(...slow.rodErrors.map(Math.abs))).toBeGreaterThan(1e-6);
    expect(nearPoseSolver(geometry)(angles, level)).toEqual({ height: expect.closeTo(slow.pose.height, 7), p: expect.closeTo(slow.pose.p, 6), q: expect.closeTo(slow.pose.q, 6) });
  });
});

describe('the slower search', () => {
  // law: closure, and the side that was asked for
  it.each(['above', 'below'] as const)('closes crooked rods with the plate %s the servos, from level and from any pose nearby', (side) => {
    const geometry = crooked(side, three);
    const level = poseOf(geometry, [0, 0, 0])!;
    expect(level.pose.height * (side === 'above' ? 1 : -1)).toBeGreaterThan(-0.02);
    fc.assert(fc.property(small, small, small, (a, b, c) => {
      const found = poseOf(geometry, [a, b, c])!;
      expect(Math.max(...found.rodErrors.map(Math.abs))).toBeLessThan(1e-12);
      const near = poseOf(geometry, [a, b, c], level.pose)!;
      expect(near.pose).toEqual({ height: expect.closeTo(found.pose.height, 11), p: expect.closeTo(found.pose.p, 10), q: expect.closeTo(found.pose.q, 10) });
    }), { numRuns: 40 });
  });

  it('has no pose for a plate that would have to stand beyond its servos', () => {
    const geometry = crooked('above', three);
    const sunk = { ...geometry, servos: geometry.servos.map((servo) => ({ ...servo, rodLength: 0.0001 })) };
    const found = poseOf(sunk, [0, 0, 0]);
    expect(found === undefined || Math.max(...found.rodErrors.map(Math.abs)) > 1e-3).toBe(true);
  });
});
