import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { leanOf, linkBalls, pitchAt, poseOf, servoRodLeans, toDeadCentre, type SwashplateGeometry } from '../../src/linkages/index.ts';
import { plateBall } from '../../src/linkages/plate-pose.ts';
import { cross, dot, rotateAbout, type Vector3 } from '../../src/numeric/vector.ts';

const third = (2 * Math.PI) / 3;
/** Arms of 17 mm that point inward along the radius, rods of 72 mm straight up, a link of 68 mm straight up. */
const plate: SwashplateGeometry = {
  rotation: 'clockwise', plateSide: 'above', guide: [-0.046, 0, 0],
  servos: [0, third, -third].map((at) => ({ pivot: [0.059 * Math.cos(at), 0.059 * Math.sin(at), -0.072], axis: [-Math.sin(at), Math.cos(at), 0], arm: [-0.017 * Math.cos(at), -0.017 * Math.sin(at), 0], rodLength: 0.072, ball: [0.042 * Math.cos(at), 0.042 * Math.sin(at), 0] })),
  link: { upperBall: [0.008, 0.03, 0.008], length: 0.068, driver: [0.008, 0.03, 0] },
  grip: { height: 0.082, ball: [0.008, 0.03, -0.006] },
};

/** The same with its parts askew, so that no sum has an idle term: balls off their planes, studs and driver out of line. */
const askew: SwashplateGeometry = {
  ...plate,
  guide: [-0.04, 0.012, 0.005],
  servos: plate.servos.map((servo, index) => ({ ...servo, axis: [servo.axis[0], servo.axis[1], 0.2], ball: [servo.ball[0], servo.ball[1], 0.004 * (index - 1)] })),
  link: { upperBall: [0.011, 0.03, 0.009], length: 0.07, driver: [0.02, 0.025, -0.003] },
  grip: { height: 0.084, ball: [0.009, 0.028, -0.006] },
};
const poses = fc.record({ height: numberIn(-0.004, 0.004), p: numberIn(-0.15, 0.15), q: numberIn(-0.15, 0.15) });
const between = (a: Vector3, b: Vector3): number => Math.atan2(Math.hypot(...cross(a, b)), dot(a, b));

describe('how rods stand', () => {
  it('is square to studs and arms at rest', () => {
    // By hand: upright rods, level arms, level studs.
    for (const { from, to, toDeadCentre: left } of servoRodLeans(plate, [0, 0, 0], { height: 0, p: 0, q: 0 })!) {
      expect(from).toBeCloseTo(0, 12);
      expect(to).toBeCloseTo(0, 12);
      expect(left).toBeCloseTo(Math.PI / 2, 12);
    }
  });

  it('leans by what the plate leans at the ball that lies in front', () => {
    // By hand: the front stud dips with the plate, the rod stays upright as near as its arm lets it.
    const lean = Math.atan(0.12);
    const [front] = servoRodLeans(plate, [0, 0, 0], { height: 0, p: 0.12, q: 0 })!;
    expect(front!.to).toBeGreaterThan(0.9 * lean);
    expect(front!.to).toBeLessThan(1.2 * lean);
  });

  it('is the angle whose sine is the share along the stud', () => {
    // By hand: 3, 4, 5.
    expect(leanOf([0.03, 0.04, 0], [2, 0, 0])).toBeCloseTo(Math.asin(0.6), 12);
    expect(leanOf([0.03, 0.04, 0], [-2, 0, 0])).toBeCloseTo(Math.asin(0.6), 12);
  });

  it('is nothing left at the dead centre, whichever way the rod points', () => {
    // By hand: rod and arm in line, as seen along the axis.
    for (const rod of [[0.1, 0.02, 0], [-0.1, 0.02, 0]] as const) expect(toDeadCentre(rod, [0.017, 0, 0], [0, 1, 0])).toBeCloseTo(0, 12);
    expect(toDeadCentre([0.05, 0, 0.05], [0.017, 0, 0], [0, 1, 0])).toBeCloseTo(Math.PI / 4, 12);
  });
});

describe('how rods stand in any pose', () => {
  it('is told from rod and stud alone: what is missing to square (independent route: the angle by its tangent)', () => {
    const turn = numberIn(-0.3, 0.3);
    fc.assert(fc.property(turn, turn, turn, (...angles) => {
      const { pose, rodErrors } = poseOf(askew, angles)!;
      expect(Math.max(...rodErrors.map(Math.abs))).toBeLessThan(1e-9);
      const leans = servoRodLeans(askew, angles, pose)!;
      const middle = plateBall(askew, pose, [0, 0, 0])!;
      for (const [index, servo] of askew.servos.entries()) {
        const arm = rotateAbout(servo.arm, servo.axis, angles[index]!);
        const end = plateBall(askew, pose, servo.ball)!;
        const rod = end.map((each, at) => each - servo.pivot[at]! - arm[at]!) as unknown as Vector3;
        const flat = plateBall(askew, pose, [servo.ball[0], servo.ball[1], 0])!;
        const stud = flat.map((each, at) => each - middle[at]!) as unknown as Vector3;
        expect(Math.hypot(...rod)).toBeCloseTo(servo.rodLength, 9);
        expect(leans[index]!.from).toBeCloseTo(Math.abs(Math.PI / 2 - between(rod, servo.axis)), 9);
        expect(leans[index]!.to).toBeCloseTo(Math.abs(Math.PI / 2 - between(rod, stud)), 9);
        // Both seen along the axis: what the axis holds of them taken off.
        const seen = (of: Vector3): Vector3 => cross(cross(servo.axis, of), servo.axis);
        const angle = between(seen(arm), seen(rod));
        expect(leans[index]!.toDeadCentre).toBeCloseTo(Math.min(angle, Math.PI - angle), 9);
      }
    }), { numRuns: 40 });
  });

  it('is not told where the guide points along the mast and keeps nothing', () => {
    expect(servoRodLeans({ ...plate, guide: [0, 0, 0.04] }, [0, 0, 0], { height: 0, p: 0.1, q: 0 })).toBeUndefined();
    expect(linkBalls({ ...plate, link: { ...plate.link, driver: [0, 0, 0.04] } }, { height: 0, p: 0.1, q: 0 }, 0, 0)).toBeUndefined();
  });
});

describe('the balls of a link in any pose', () => {
  it('are a link apart at the pitch that the plate gives the blade, and stay where plate and grip hold them (law)', () => {
    fc.assert(fc.property(poses, numberIn(-7, 7), fc.constantFrom('clockwise' as const, 'counterclockwise' as const), (pose, azimuth, rotation) => {
      const geometry: SwashplateGeometry = { ...askew, rotation };
      const [pitch] = pitchAt(geometry, pose, [azimuth])!;
      const { upper, grip, upperStud, gripStud } = linkBalls(geometry, pose, azimuth, pitch!)!;
      expect(Math.hypot(upper[0] - grip[0], upper[1] - grip[1], upper[2] - grip[2])).toBeCloseTo(0.07, 9);
      // The grip ball stays on its circle about the feathering axis, and the pitch turns it leading edge up.
      expect(grip[0]).toBe(0.009);
      expect(Math.hypot(grip[1], grip[2] - 0.084)).toBeCloseTo(Math.hypot(0.028, 0.006), 12);
      expect(Math.atan2(grip[2] - 0.084, grip[1]) - Math.atan2(-0.006, 0.028)).toBeCloseTo(pitch!, 9);
      expect(gripStud).toEqual([1, 0, 0]);
      // Plate coordinates are kept: the stud lies in the plate, the ball so far over it, both so far from its middle.
      const sense = rotation === 'counterclockwise' ? 1 : -1;
      const normal: Vector3 = [-Math.cos(azimuth) * pose.p - sense * Math.sin(azimuth) * pose.q, sense * (sense * Math.sin(azimuth) * pose.p - Math.cos(azimuth) * pose.q), 1];
      const ball: Vector3 = [upper[0], upper[1], upper[2] - pose.height];
      expect(dot(upperStud, normal)).toBeCloseTo(0, 12);
      expect(dot(ball, normal) / Math.hypot(...normal)).toBeCloseTo(0.009, 12);
      expect(Math.hypot(...upperStud)).toBeCloseTo(Math.hypot(0.011, 0.03), 12);
      expect(Math.hypot(...ball)).toBeCloseTo(Math.hypot(0.011, 0.03, 0.009), 12);
      expect(ball.map((each, at) => each - upperStud[at]!)).toEqual(normal.map((each) => expect.closeTo((0.009 * each) / Math.hypot(...normal), 12)));
    }));
  });

  it('rise where the plate is high (by hand: tilted forward, the ball over the tail rises, in front it sinks; to the right when over the left)', () => {
    const high = (rotation: 'clockwise' | 'counterclockwise', p: number, q: number, azimuth: number): number => linkBalls({ ...plate, rotation, link: { ...plate.link, upperBall: [0.03, 0, 0], driver: [0.03, 0, 0] } }, { height: 0, p, q }, azimuth, 0)!.upper[2];
    for (const rotation of ['clockwise', 'counterclockwise'] as const) {
      expect(high(rotation, 0.1, 0, 0)).toBeGreaterThan(0.002);
      expect(high(rotation, 0.1, 0, Math.PI)).toBeLessThan(-0.002);
    }
    // q is the normal to the left: the plate's right side is high. Counterclockwise a quarter turn is over the right, clockwise over the left.
    expect(high('counterclockwise', 0, 0.1, Math.PI / 2)).toBeGreaterThan(0.002);
    expect(high('clockwise', 0, 0.1, Math.PI / 2)).toBeLessThan(-0.002);
  });
});

describe('the balls of a link', () => {
  it('are a link apart where the blade has the pitch that goes with the plate', () => {
    // By hand: at rest 68 mm, straight up.
    const { upper, grip, upperStud, gripStud } = linkBalls(plate, { height: 0, p: 0, q: 0 }, 1, 0)!;
    expect([grip[0] - upper[0], grip[1] - upper[1], grip[2] - upper[2]]).toEqual([0, 0, 0.068].map((each) => expect.closeTo(each, 12)));
    expect(upperStud).toEqual([0.008, 0.03, 0].map((each) => expect.closeTo(each, 12)));
    expect(gripStud).toEqual([1, 0, 0]);
  });
});
