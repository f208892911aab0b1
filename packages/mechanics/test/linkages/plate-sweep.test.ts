import { describe, expect, it } from 'vitest';
import { pitchAt, poseOf, sweepPlate, type SwashplateGeometry } from '../../src/linkages/index.ts';

const ring = (angles: readonly number[]): SwashplateGeometry => ({
  rotation: 'counterclockwise', plateSide: 'above', guide: [-0.046, 0, -0.001],
  servos: angles.map((at) => ({ pivot: [0.042 * Math.cos(at) + 0.017 * Math.sin(at), 0.042 * Math.sin(at) - 0.017 * Math.cos(at), -0.072], axis: [Math.cos(at), Math.sin(at), 0], arm: [-0.017 * Math.sin(at), 0.017 * Math.cos(at), 0], rodLength: 0.072, ball: [0.042 * Math.cos(at), 0.042 * Math.sin(at), 0] })),
  link: { upperBall: [0.008, 0.03, 0.008], length: 0.068, driver: [0, -0.026, 0.008] },
  grip: { height: 0.082, ball: [0.009, 0.03, -0.006] },
});
const azimuths = [0, 1, 2, 3, 4, 5, 6];
const level = { height: 0, p: 0, q: 0 };
const walk = (servos: number, positions: number): Float64Array => Float64Array.from({ length: servos * positions }, (_, index) => 0.3 * Math.sin(index * 0.37) * Math.cos(index * 0.011));

describe.each([['three', [0, 2.1, 4.2]], ['four', [0.8, 2.4, 3.9, 5.5]]] as const)('a plate on %s servos, swept', (_, at) => {
  const plate = ring(at);

  it('goes where it goes one by one', () => {
    // Independent route: the pose found from level, without the position before.
    const angles = walk(at.length, 60);
    const { poses, pitches } = sweepPlate(plate, angles, azimuths, level);
    for (let position = 0; position < 60; position += 1) {
      const { pose } = poseOf(plate, [...angles.subarray(at.length * position, at.length * (position + 1))])!;
      // Four rods that fight leave a flat valley: the bottom is found to the root of what rounding leaves.
      const digits = at.length === 3 ? 11 : 7;
      expect(poses[3 * position]).toBeCloseTo(pose.height, digits);
      expect(poses[3 * position + 1]).toBeCloseTo(pose.p, digits);
      expect(poses[3 * position + 2]).toBeCloseTo(pose.q, digits);
      expect(pitches[azimuths.length * position + 2]).toBeCloseTo(pitchAt(plate, pose, [2])![0]!, digits - 1);
    }
  });
});

describe.each([['three', [0, 2.1, 4.2]], ['four', [0.8, 2.4, 3.9, 5.5]]] as const)('a sweep of %s servos that begins far from where the plate is', (_, at) => {
  // Independent route: the pose found from level. Three metres below, no quick search settles on the wanted side.
  it('is taken up by the slower search, and goes on from there', () => {
    const plate = ring(at);
    const angles = walk(at.length, 3);
    const { poses } = sweepPlate(plate, angles, azimuths, { height: -3, p: 0, q: 0 });
    for (let position = 0; position < 3; position += 1) {
      const { pose } = poseOf(plate, [...angles.subarray(at.length * position, at.length * (position + 1))])!;
      expect(poses[3 * position]).toBeCloseTo(pose.height, 7);
      expect(poses[3 * position + 1]).toBeCloseTo(pose.p, 6);
      expect(poses[3 * position + 2]).toBeCloseTo(pose.q, 6);
    }
  });
});

describe('a sweep', () => {
  it('marks what is out of reach, and goes on', () => {
    const plate = ring([0, 2.1, 4.2]);
    // A first arm turned by 90° either way pulls its rod where the two others cannot follow.
    const far = Float64Array.from([0, 0, 0, Math.PI, -Math.PI / 2, Math.PI / 2, 0, 0, 0]);
    const short = { ...plate, servos: plate.servos.map((servo, index) => (index === 0 ? { ...servo, arm: servo.arm.map((each) => 6 * each) as unknown as typeof servo.arm, pivot: [servo.pivot[0], servo.pivot[1] - 5 * 0.017, servo.pivot[2]] as const } : servo)) };
    const { poses, pitches } = sweepPlate(short, far, azimuths, level);
    expect(poses.subarray(3, 6).every(Number.isNaN)).toBe(true);
    expect(pitches.subarray(azimuths.length, 2 * azimuths.length).every(Number.isNaN)).toBe(true);
    expect([...poses.subarray(0, 3)]).toEqual([...poses.subarray(6, 9)].map((each) => expect.closeTo(each, 12)));
    expect(Number.isFinite(poses[0])).toBe(true);
  });

  it('has nothing to say of no positions', () => {
    expect(sweepPlate(ring([0, 2.1, 4.2]), new Float64Array(0), azimuths, level)).toEqual({ poses: new Float64Array(0), pitches: new Float64Array(0) });
  });
});
