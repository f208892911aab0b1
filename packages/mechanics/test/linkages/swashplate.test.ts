import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { harmonicsOf, linearServoAngles, pitchAt, poseFor, poseOf, rodErrorsAt, sensitivityOf, servoAnglesAt, tiltOf, type PlatePose, type SwashplateGeometry } from '../../src/linkages/index.ts';
import { attitudeOf } from '../../src/linkages/plate-attitude.ts';
import { rotateAbout, type Vector3 } from '../../src/numeric/vector.ts';

const third = (2 * Math.PI) / 3;

/** Arms square to their radius, 18 mm; plate balls on 34 mm: one ahead, two aft at 120°. Mirror-symmetric but for the arms. */
const plate = (rotation: SwashplateGeometry['rotation'] = 'clockwise'): SwashplateGeometry => ({
  rotation, plateSide: 'above', guide: [-0.045, 0, 0],
  servos: [0, third, -third].map((at) => {
    const radial: Vector3 = [Math.cos(at), Math.sin(at), 0];
    const along: Vector3 = [-Math.sin(at), Math.cos(at), 0];
    const ball: Vector3 = [0.034 * radial[0], 0.034 * radial[1], -0.004];
    return { pivot: [ball[0] - 0.018 * along[0], ball[1] - 0.018 * along[1], -0.1], axis: radial, arm: [0.018 * along[0], 0.018 * along[1], 0], rodLength: 0.095, ball };
  }),
  link: { upperBall: [0.03, 0.032, 0.006], length: 0.064, driver: [0.03, 0.032, 0] },
  grip: { height: 0.07, ball: [0.045, 0.03, 0] },
});

const angle = numberIn(-0.35, 0.35);
const pose = fc.record({ height: numberIn(-0.006, 0.006), p: numberIn(-0.12, 0.12), q: numberIn(-0.12, 0.12) });

describe('the attitude of a guided plate', () => {
  // law: a rotation, its normal where it was put, its guide in its plane
  it('is a rotation with its normal where it was put and its guide in its plane', () => {
    const part = numberIn(-0.5, 0.5);
    const radius = fc.double({ min: 0.02, max: 0.06, noNaN: true });
    fc.assert(fc.property(part, part, numberIn(-3, 3), radius, numberIn(-0.01, 0.01), (p, q, side, r, z) => {
      const size = Math.hypot(1, p, q);
      const guide = [r * Math.cos(side), r * Math.sin(side), z] as const;
      const m = new Float64Array(9);
      expect(attitudeOf(p / size, q / size, 1 / size, ...guide, m)).toBe(true);
      const row = (index: number) => m.subarray(3 * index, 3 * index + 3);
      for (const [a, b, wanted] of [[0, 0, 1], [1, 1, 1], [2, 2, 1], [0, 1, 0], [0, 2, 0], [1, 2, 0]] as const) expect(row(a).reduce((sum, value, index) => sum + value * row(b)[index]!, 0)).toBeCloseTo(wanted, 12);
      expect([m[2]! * size, m[5]! * size, m[8]! * size]).toEqual([expect.closeTo(p, 12), expect.closeTo(q, 12), expect.closeTo(1, 12)]);
      const turned = [0, 1].map((index) => row(index).reduce((sum, value, at) => sum + value * guide[at]!, 0));
      expect(-Math.sin(side) * turned[0]! + Math.cos(side) * turned[1]!).toBeCloseTo(0, 12);
    }));
  });
});

describe('a plate on three servos', () => {
  // law: closure
  it('closes all rods at any angles within reach', () => {
    fc.assert(fc.property(angle, angle, angle, (a, b, c) => {
      const found = poseOf(plate(), [a, b, c]);
      expect(Math.max(...found!.rodErrors.map(Math.abs))).toBeLessThan(1e-12);
    }), { numRuns: 60 });
  });

  // law: the inverse undoes the forward
  it('gives back the angles that it was given', () => {
    fc.assert(fc.property(angle, angle, angle, (a, b, c) => {
      const angles = servoAnglesAt(plate(), poseOf(plate(), [a, b, c])!.pose) as readonly number[];
      expect(Math.max(...[a, b, c].map((each, index) => Math.abs(each - angles[index]!)))).toBeLessThan(1e-9);
    }), { numRuns: 60 });
  });

  it('rises with all servos together, and stays level', () => {
    const found = poseOf(plate(), [0.2, 0.2, 0.2])!.pose;
    const level = poseOf(plate(), [0, 0, 0])!.pose;
    expect(found.height - level.height).toBeGreaterThan(0.002);
    expect(tiltOf(found).whole).toBeLessThan(1e-9);
  });

  it('has no pose that closes where a rod is far too short', () => {
    const short = plate();
    const servos = short.servos.map((servo, index) => (index === 0 ? { ...servo, rodLength: 0.02 } : servo));
    const found = poseOf({ ...short, servos }, [0, 0, 0]);
    expect(found === undefined || Math.max(...found.rodErrors.map(Math.abs)) > 1e-4).toBe(true);
  });
});

describe('the blade over azimuth', () => {
  // independent route: the plate turned as a body, the grip turned as a body, the pitch bracketed
  it('keeps the link at its length', () => {
    fc.assert(fc.property(pose, numberIn(0, 6.28), fc.constantFrom('clockwise' as const, 'counterclockwise' as const), (at, psi, rotation) => {
      const geometry = plate(rotation);
      const [pitch] = pitchAt(geometry, at, [psi])!;
      const s = rotation === 'counterclockwise' ? 1 : -1;
      const outboard: Vector3 = [-Math.cos(psi), -s * Math.sin(psi), 0];
      const leading: Vector3 = [s * -outboard[1], s * outboard[0], 0];
      const put = ([r, t, z]: Vector3): Vector3 => [r * outboard[0] + t * leading[0], r * outboard[1] + t * leading[1], z];
      // The normal by two turns, then the turn about it that keeps the driver with the blade, by bisection.
      const size = Math.hypot(1, at.p, at.q);
      const normal: Vector3 = [at.p / size, at.q / size, 1 / size];
      const lean = Math.acos(normal[2]);
      const hinge: Vector3 = [-normal[1], normal[0], 0];
      const turned = (point: Vector3, turn: number): Vector3 => (lean < 1e-12 ? rotateAbout(point, normal, turn) : rotateAbout(rotateAbout(point, hinge, lean), normal, turn));
      const driver = put(geometry.link.driver);
      const off = (turn: number): number => {
        const there = turned(driver, turn);
        return driver[0] * there[1] - driver[1] * there[0];
      };
      let [low, high] = [-0.5, 0.5];
      for (let step = 0; step < 100; step += 1) {
        const middle = (low + high) / 2;
        if (off(middle) < 0) low = middle;
        else high = middle;
      }
      const upper = turned(put(geometry.link.upperBall), (low + high) / 2);
      const [gr, gt, gz] = geometry.grip.ball;
      const grip = put([gr, gt * Math.cos(pitch!) - gz * Math.sin(pitch!), geometry.grip.height + gt * Math.sin(pitch!) + gz * Math.cos(pitch!)]);
      expect(Math.abs(Math.hypot(upper[0] - grip[0], upper[1] - grip[1], upper[2] + at.height - grip[2]) - geometry.link.length)).toBeLessThan(1e-9);
    }));
  });

  // law: a mirror image of plate, hub and sense flies the mirror image
  it('mirrors when everything is mirrored', () => {
    fc.assert(fc.property(pose, numberIn(0, 6.28), ({ height, p, q }, psi) => {
      const [one] = pitchAt(plate('clockwise'), { height, p, q }, [psi])!;
      const [other] = pitchAt(plate('counterclockwise'), { height, p, q: -q }, [psi])!;
      expect(other).toBeCloseTo(one!, 12);
    }));
  });

  it('is the same all round when the plate stands level, and nothing but collective', () => {
    const { collective, cyclicCos, cyclicSin, residual } = harmonicsOf(plate(), { height: 0.002, p: 0, q: 0 })!;
    expect(pitchAt(plate(), { height: 0.002, p: 0, q: 0 }, [1])![0]).toBeCloseTo(collective, 12);
    expect(Math.max(Math.abs(cyclicCos), Math.abs(cyclicSin), residual)).toBeLessThan(1e-12);
  });

  it('is not told where the link does not reach', () => {
    const high: PlatePose = { height: 0.2, p: 0, q: 0 };
    expect(harmonicsOf(plate(), high)).toBeUndefined();
    expect(pitchAt(plate(), high, [0])).toBeUndefined();
  });
});

describe('from wanted pitch to servos', () => {
  // law: the forward undoes the inverse
  it('gives the pitch that was wanted', () => {
    const small = numberIn(-0.09, 0.09);
    fc.assert(fc.property(small, small, small, (collective, cyclicCos, cyclicSin) => {
      const geometry = plate();
      const found = poseFor(geometry, { collective, cyclicCos, cyclicSin }, poseOf(geometry, [0, 0, 0])!.pose)!;
      const angles = servoAnglesAt(geometry, found) as readonly number[];
      const back = harmonicsOf(geometry, poseOf(geometry, angles)!.pose)!;
      expect(Math.max(Math.abs(back.collective - collective), Math.abs(back.cyclicCos - cyclicCos), Math.abs(back.cyclicSin - cyclicSin))).toBeLessThan(1e-9);
      expect(Math.max(...rodErrorsAt(geometry, angles, found).map(Math.abs))).toBeLessThan(1e-12);
    }), { numRuns: 40 });
  });

  it('finds no pose for a pitch beyond reach', () => {
    expect(poseFor(plate(), { collective: 3.5, cyclicCos: 0, cyclicSin: 0 }, poseOf(plate(), [0, 0, 0])!.pose)).toBeUndefined();
  });

  it('names the servo whose rod does not reach', () => {
    expect(servoAnglesAt(plate(), { height: 0.2, p: 0, q: 0 })).toEqual({ unreached: 0 });
  });

  // independent route: the sensitivities against whole turns of a servo
  it('answers to a small turn as the sensitivities say', () => {
    const geometry = plate();
    const sensitivity = sensitivityOf(geometry)!;
    const zero = harmonicsOf(geometry, poseOf(geometry, [0, 0, 0])!.pose)!;
    const turned = harmonicsOf(geometry, poseOf(geometry, [0, 0.001, 0])!.pose)!;
    expect((turned.collective - zero.collective) / 0.001).toBeCloseTo(sensitivity[0][1]!, 3);
    expect((turned.cyclicSin - zero.cyclicSin) / 0.001).toBeCloseTo(sensitivity[2][1]!, 3);
  });

  it('gives a linear mixer nothing to do where nothing is wanted', () => {
    const geometry = plate();
    const zero = harmonicsOf(geometry, poseOf(geometry, [0, 0, 0])!.pose)!;
    expect(linearServoAngles(sensitivityOf(geometry)!, zero, zero)!.map(Math.abs).every((each) => each < 1e-12)).toBe(true);
  });
});
