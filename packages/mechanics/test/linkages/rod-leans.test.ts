import { describe, expect, it } from 'vitest';
import { leanOf, linkBalls, servoRodLeans, toDeadCentre, type SwashplateGeometry } from '../../src/linkages/index.ts';

const third = (2 * Math.PI) / 3;
/** Arms of 17 mm that point inward along the radius, rods of 72 mm straight up, a link of 68 mm straight up. */
const plate: SwashplateGeometry = {
  rotation: 'clockwise', plateSide: 'above', guide: [-0.046, 0, 0],
  servos: [0, third, -third].map((at) => ({ pivot: [0.059 * Math.cos(at), 0.059 * Math.sin(at), -0.072], axis: [-Math.sin(at), Math.cos(at), 0], arm: [-0.017 * Math.cos(at), -0.017 * Math.sin(at), 0], rodLength: 0.072, ball: [0.042 * Math.cos(at), 0.042 * Math.sin(at), 0] })),
  link: { upperBall: [0.008, 0.03, 0.008], length: 0.068, driver: [0.008, 0.03, 0] },
  grip: { height: 0.082, ball: [0.008, 0.03, -0.006] },
};

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

describe('the balls of a link', () => {
  it('are a link apart where the blade has the pitch that goes with the plate', () => {
    // By hand: at rest 68 mm, straight up.
    const { upper, grip, upperStud, gripStud } = linkBalls(plate, { height: 0, p: 0, q: 0 }, 1, 0)!;
    expect([grip[0] - upper[0], grip[1] - upper[1], grip[2] - upper[2]]).toEqual([0, 0, 0.068].map((each) => expect.closeTo(each, 12)));
    expect(upperStud).toEqual([0.008, 0.03, 0].map((each) => expect.closeTo(each, 12)));
    expect(gripStud).toEqual([1, 0, 0]);
  });
});
