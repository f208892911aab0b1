import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { poseOf, rodErrorsAt, servoAnglesAt, type PlatePose, type SwashplateGeometry } from '../../src/linkages/index.ts';
import { attitudeOf } from '../../src/linkages/plate-attitude.ts';
import { plateBall } from '../../src/linkages/plate-pose.ts';
import { ballOf } from '../../src/linkages/spatial-four-bar.ts';
import type { Vector3 } from '../../src/numeric/vector.ts';

/** Arms square to their radius, 18 mm, servo balls at the given depths; plate balls on 34 mm. */
const plateOf = (at: readonly number[], rodLength: number, depths: readonly number[]): SwashplateGeometry => ({
  rotation: 'clockwise', plateSide: 'above', guide: [-0.045, 0.008, 0.004],
  servos: at.map((angle, index) => {
    const radial: Vector3 = [Math.cos(angle), Math.sin(angle), 0];
    const along: Vector3 = [-Math.sin(angle), Math.cos(angle), 0];
    const ball: Vector3 = [0.034 * radial[0], 0.034 * radial[1], -0.004 + 0.001 * index];
    return { pivot: [ball[0] - 0.018 * along[0], ball[1] - 0.018 * along[1], -depths[index]!], axis: radial, arm: [0.018 * along[0], 0.018 * along[1], 0.002], rodLength, ball };
  }),
  link: { upperBall: [0.03, 0.032, 0.006], length: 0.064, driver: [0.03, 0.032, 0] },
  grip: { height: 0.07, ball: [0.045, 0.03, 0] },
});
const three = plateOf([0, 2.1, -2.1], 0.095, [0.1, 0.101, 0.099]);
const four = plateOf([0.8, 2.4, 3.9, 5.5], 0.095, [0.1, 0.101, 0.099, 0.1]);
const largest = (values: ArrayLike<number>): number => Math.max(...Array.from(values, Math.abs));
const angle = numberIn(-0.3, 0.3);

/** Upside down: points change the sign of their height; an axis, which tells a sense of turning, of its other parts. */
function upsideDown(geometry: SwashplateGeometry): SwashplateGeometry {
  const point = ([x, y, z]: Vector3): Vector3 => [x, y, -z];
  const axis = ([x, y, z]: Vector3): Vector3 => [-x, -y, z];
  return {
    ...geometry, plateSide: geometry.plateSide === 'above' ? 'below' : 'above', guide: point(geometry.guide),
    servos: geometry.servos.map((servo) => ({ pivot: point(servo.pivot), axis: axis(servo.axis), arm: point(servo.arm), rodLength: servo.rodLength, ball: point(servo.ball) })),
  };
}

describe.each([['three', three, [0, 0, 0]], ['four', four, [0, 0, 0, 0]]] as const)('the pose on %s servos', (_count, geometry, still) => {
  const turns = fc.tuple(...still.map(() => angle));

  it('upside down is the pose upside down (law: mirror image)', () => {
    fc.assert(fc.property(turns, (angles) => {
      const found = poseOf(geometry, angles)!;
      const mirrored = poseOf(upsideDown(geometry), angles)!;
      // Four rods that fight leave a flat valley: its bottom is found to the root of what rounding leaves.
      const digits = still.length === 3 ? 11 : 7;
      expect(mirrored.pose).toEqual({ height: expect.closeTo(-found.pose.height, digits), p: expect.closeTo(-found.pose.p, digits - 1), q: expect.closeTo(-found.pose.q, digits - 1) });
      expect([...mirrored.rodErrors]).toEqual([...found.rodErrors].map((error) => expect.closeTo(error, digits)));
    }), { numRuns: 30 });
  });

  it('is the bottom of the valley: no small move lessens the sum of squares, and the errors are those of rods and balls (law)', () => {
    fc.assert(fc.property(turns, (angles) => {
      const { pose, rodErrors } = poseOf(geometry, angles)!;
      const sum = (at: PlatePose): number => rodErrorsAt(geometry, angles, at).reduce((total, error) => total + error * error, 0);
      for (const [unknown, step] of [['height', 1e-5], ['p', 3e-4], ['q', 3e-4]] as const) {
        for (const side of [-1, 1]) expect(sum({ ...pose, [unknown]: pose[unknown] + side * step })).toBeGreaterThan(sum(pose));
      }
      for (const [index, servo] of geometry.servos.entries()) {
        const [a, b] = [ballOf(servo, angles[index]!), plateBall(geometry, pose, servo.ball)!];
        expect(rodErrors[index]).toBeCloseTo(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) - servo.rodLength, 14);
      }
    }), { numRuns: 30 });
  });

  it('stands on the side that was asked for, and the two sides are two poses', () => {
    for (const plateSide of ['above', 'below'] as const) {
      const { pose, rodErrors } = poseOf({ ...geometry, plateSide }, still)!;
      expect(largest(rodErrors)).toBeLessThan(still.length === 3 ? 1e-12 : 2e-3);
      for (const servo of geometry.servos) expect((plateBall(geometry, pose, servo.ball)![2] - ballOf(servo, 0)[2]) * (plateSide === 'above' ? 1 : -1)).toBeGreaterThan(0.05);
    }
  });

  it('is found from any pose nearby as from level', () => {
    const from = { height: 0.005, p: 0.2, q: -0.15 };
    const level = poseOf(geometry, still)!.pose;
    const digits = still.length === 3 ? 11 : 7;
    expect(poseOf(geometry, still, from)!.pose).toEqual({ height: expect.closeTo(level.height, digits), p: expect.closeTo(level.p, digits - 1), q: expect.closeTo(level.q, digits - 1) });
  });
});

describe('a pose that the search from level does not reach', () => {
  const thirds = [0, (2 * Math.PI) / 3, (-2 * Math.PI) / 3];
  const bare = (rodLength: number, depths: readonly number[]): SwashplateGeometry => {
    const plate = plateOf(thirds, rodLength, depths);
    return { ...plate, guide: [-0.045, 0, 0], servos: plate.servos.map((servo) => ({ ...servo, ball: [servo.ball[0], servo.ball[1], -0.004], arm: [servo.arm[0], servo.arm[1], 0] })) };
  };

  // Found by trial: arms turned far past square. It closes none the less, from another start.
  it.each([
    { rod: 0.039410314, depths: [0.034665143, 0.052595831, 0.056359271], angles: [1.2807427, -1.7908805, 1.8735758] },
    { rod: 0.037280976, depths: [0.044287493, 0.06902248, 0.050307755], angles: [1.3444292, -1.1666028, -0.66511168] },
    { rod: 0.035099548, depths: [0.032181991, 0.054556525, 0.058912722], angles: [1.5050826, -1.6678713, 1.9555593] },
  ])('is found from a leaning one: rods of $rod m', ({ rod, depths, angles }) => {
    const geometry = bare(rod, depths);
    const { pose, rodErrors } = poseOf(geometry, angles)!;
    expect(largest(rodErrors)).toBeLessThan(1e-9);
    for (const [index, servo] of geometry.servos.entries()) expect(plateBall(geometry, pose, servo.ball)![2]).toBeGreaterThan(ballOf(servo, angles[index]!)[2]);
  });

  it('is none where the guide keeps nothing', () => expect(poseOf({ ...three, guide: [0, 0, 0.04] }, [0, 0, 0])).toBeUndefined());

  it('that cannot close is the best of those that were found: no start of its own does better', () => {
    const torn: SwashplateGeometry = { ...three, servos: three.servos.map((servo, index) => (index === 0 ? { ...servo, pivot: [servo.pivot[0] + 0.2, servo.pivot[1], servo.pivot[2]] } : servo)) };
    const sum = (found: ReturnType<typeof poseOf>): number => found!.rodErrors.reduce((total, error) => total + error * error, 0);
    const best = sum(poseOf(torn, [0, 0, 0]));
    for (const p of [-0.5, 0, 0.5]) for (const q of [-0.5, 0, 0.5]) expect(sum(poseOf(torn, [0, 0, 0], { height: 0, p, q }))).toBeGreaterThan(best * (1 - 1e-6));
  });
});

describe('angles that hold a plate', () => {
  it('are given back whichever way the arms turn (law: the inverse undoes the forward)', () => {
    const turned: SwashplateGeometry = { ...three, servos: three.servos.map((servo) => ({ ...servo, axis: servo.axis.map((each) => -each) as unknown as Vector3 })) };
    for (const geometry of [three, turned, upsideDown(three)]) {
      fc.assert(fc.property(fc.tuple(angle, angle, angle), (angles) => {
        const back = servoAnglesAt(geometry, poseOf(geometry, angles)!.pose) as readonly number[];
        expect(back).toEqual(angles.map((each) => expect.closeTo(each, 9)));
      }), { numRuns: 20 });
    }
  });

  it('are told by the servo that does not reach, or the first where the guide keeps nothing', () => {
    const long: SwashplateGeometry = { ...three, servos: three.servos.map((servo, index) => (index === 1 ? { ...servo, rodLength: 0.3 } : servo)) };
    expect(servoAnglesAt(long, { height: 0, p: 0, q: 0 })).toEqual({ unreached: 1 });
    expect(servoAnglesAt({ ...three, guide: [0, 0, 0.04] }, { height: 0, p: 0, q: 0 })).toEqual({ unreached: 0 });
  });
});

describe('an attitude', () => {
  it('that no turn can bring the guide to is none; one that it just can, is (by hand: a guide 45° over the plate reaches its upright plane until the plate leans 45° across)', () => {
    const into = new Float64Array(9);
    const at = (lean: number): boolean => attitudeOf(0, Math.sin(lean), Math.cos(lean), 1, 0, 1, into);
    expect(at(Math.PI / 4 - 1e-6)).toBe(true);
    expect(at(Math.PI / 4 + 1e-6)).toBe(false);
    expect(at(-Math.PI / 4 + 1e-6)).toBe(true);
    expect(at(-Math.PI / 4 - 1e-6)).toBe(false);
    expect(attitudeOf(0, 0, 1, 0, 0, 1, into)).toBe(false);
  });
});
