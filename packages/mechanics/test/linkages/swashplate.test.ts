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

  // law: what is given is what was wanted, up to the end of reach; beyond it there is nothing
  it('either gives the wanted pitch or no pose, over and beyond its reach', () => {
    const geometry = plate();
    const from = poseOf(geometry, [0, 0, 0])!.pose;
    const found = Array.from({ length: 41 }, (_, index) => (index - 20) * 0.1).map((collective) => {
      const pose = poseFor(geometry, { collective, cyclicCos: 0.02, cyclicSin: -0.01 }, from);
      const given = pose && harmonicsOf(geometry, pose)!;
      if (given) expect([given.collective, given.cyclicCos, given.cyclicSin]).toEqual([collective, 0.02, -0.01].map((each) => expect.closeTo(each, 9)));
      return given !== undefined;
    });
    expect(found.slice(15, 26)).not.toContain(false);
    expect(found).toContain(false);
  });

  it('looks for nothing from a pose in which the links do not reach', () => {
    expect(poseFor(plate(), { collective: 0, cyclicCos: 0, cyclicSin: 0 }, { height: 0.2, p: 0, q: 0 })).toBeUndefined();
  });

  // by hand: tan of what the mast-wise parts of the normal show; 0.3 ahead and 0.4 to the left lean by atan 0.5
  it('tells the leaning forward, to the right, and whole', () => {
    expect(tiltOf({ height: 0, p: 0.3, q: 0.4 })).toEqual({ forward: Math.atan(0.3), right: -Math.atan(0.4), whole: Math.atan(0.5) });
  });

  it('has no sensitivities where plate or links do not reach', () => {
    const geometry = plate();
    expect(sensitivityOf({ ...geometry, link: { ...geometry.link, length: 0.2 } })).toBeUndefined();
    expect(sensitivityOf({ ...geometry, guide: [0, 0, 0.04] })).toBeUndefined();
    // One servo that has no pose ahead, or none behind, is enough.
    const level = { height: 0, p: 0, q: 0 };
    for (const lost of [1, -1]) expect(sensitivityOf(geometry, 3, (angles) => (angles[1]! * lost > 0 ? undefined : level))).toBeUndefined();
  });

  // independent route: each servo turned for itself, each harmonic measured
  it('has a sensitivity for every harmonic and every servo, as turning them shows', () => {
    const geometry = plate('counterclockwise');
    const sensitivity = sensitivityOf(geometry)!;
    const at = (turned: number, by: number) => harmonicsOf(geometry, poseOf(geometry, [0, 1, 2].map((index) => (index === turned ? by : 0)))!.pose)!;
    for (const servo of [0, 1, 2]) {
      const [ahead, behind] = [at(servo, 0.002), at(servo, -0.002)];
      for (const [row, harmonic] of (['collective', 'cyclicCos', 'cyclicSin'] as const).entries()) expect((ahead[harmonic] - behind[harmonic]) / 0.004).toBeCloseTo(sensitivity[row]![servo]!, 4);
    }
  });

  // law: S·angles is what was wanted; of all angles that give it, those of least length have nothing along what changes no harmonic
  it.each([['three', [[0.2, 0.3, 0.25], [0.5, -0.3, -0.2], [0.1, 0.6, -0.5]]], ['four', [[0.2, 0.3, 0.25, 0.3], [0.5, -0.3, -0.4, 0.3], [0.1, 0.6, -0.5, -0.2]]]] as const)('a linear mixer of %s servos solves its own equations with the least angles', (_servos, rows) => {
    const zero = { collective: 0.01, cyclicCos: -0.02, cyclicSin: 0.005, residual: 0 };
    const wanted = { collective: 0.1, cyclicCos: 0.05, cyclicSin: -0.08 };
    const angles = linearServoAngles(rows as unknown as Parameters<typeof linearServoAngles>[0], zero, wanted)!;
    const given = rows.map((row) => row.reduce((sum: number, each, index) => sum + each * angles[index]!, 0));
    expect(given).toEqual([0.09, 0.07, -0.085].map((each) => expect.closeTo(each, 12)));
    if (angles.length === 4) {
      // What changes nothing: the one direction square to all three rows, by cofactors.
      const without = (column: number) => rows.map((row) => row.filter((_, index) => index !== column)) as unknown as readonly [Vector3, Vector3, Vector3];
      const determinant = ([a, b, c]: readonly [Vector3, Vector3, Vector3]): number => a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
      const idle = [0, 1, 2, 3].map((column) => (column % 2 === 0 ? 1 : -1) * determinant(without(column)));
      expect(idle.reduce((sum, each, index) => sum + each * angles[index]!, 0)).toBeCloseTo(0, 12);
    }
  });

  it('a linear mixer has no answer where two servos do all the same', () => {
    const zero = { collective: 0, cyclicCos: 0, cyclicSin: 0, residual: 0 };
    expect(linearServoAngles([[0.2, 0.2], [0.5, 0.5], [0.1, 0.3]], zero, { collective: 0.1, cyclicCos: 0, cyclicSin: 0 })).toBeUndefined();
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
