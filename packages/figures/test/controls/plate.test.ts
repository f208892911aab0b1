import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harmonicsOf, pitchAt, type Harmonics } from '@rotorwright/mechanics';
import { numberIn } from '../../../../tests/number-in.ts';
import { mixed, poseAt, servosFor, sweepSticks, wantedAt } from '../../src/controls/plate-motion.ts';
import { plateOf } from '../../src/controls/plate.ts';
import type { Plate } from '../../src/controls/plate-types.ts';
import { solveDrive } from '../../src/drive/solve.ts';
import { around, bench, example, levered, plateIn } from './benches.ts';
import { carriedBy, pitchByHalving, plateByLeastSquares, plateByVectors } from './independent.ts';

const angle = numberIn(-0.35, 0.35);
const azimuth = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
const stick = numberIn(-0.7, 0.7);
const sticks = fc.record({ collective: stick, fore: stick, right: stick });
const threes: readonly (readonly [string, Plate])[] = [
  ['Whimbrel', plateIn(example('whimbrel'))],
  ['Sanderling', plateIn(example('sanderling'))],
  ['servos at 0°, 140° and 220°', plateIn(around([0, 140, 220], { sense: 'counter-clockwise' }))],
  ['servos at 60°, 180° and 300°', plateIn(around([60, 180, 300]))],
  ['a bell-crank before the front rod', plateIn(levered())],
];
const fours: readonly (readonly [string, Plate])[] = [
  ['45° off the axes', plateIn(around([45, 135, 225, 315]))],
  ['on the axes, counter-clockwise', plateIn(around([0, 90, 180, 270], { sense: 'counter-clockwise' }))],
  ['at 20°, 110°, 200° and 320°', plateIn(around([20, 110, 200, 320]))],
];
/** Balls that carry the plate, each where its servo, or its levers, have taken it. */
const ballsAt = (plate: Plate, angles: readonly number[]): readonly (readonly number[])[] => {
  const carried = carriedBy(plate.train, angles);
  return plate.ends.map(({ mover, balls: [ball] }) => carried(mover, ball));
};
const given = (plate: Plate, angles: readonly number[]): Harmonics => harmonicsOf(plate.geometry, poseAt(plate, angles)!.pose)!;
const furthest = (a: readonly number[], b: readonly number[]): number => Math.max(...a.map((each, index) => Math.abs(each - b[index]!)));

describe.each(threes)('%s', (_, plate) => {
  it('puts the plate where rotation vectors and four equations put it, and the blade where halving does', () => {
    // Independent route.
    fc.assert(fc.property(angle, angle, angle, azimuth, (a, b, c, psi) => {
      const { geometry } = plate;
      const other = plateByVectors(geometry, ballsAt(plate, [a, b, c]));
      const { pose } = poseAt(plate, [a, b, c])!;
      const long = Math.hypot(pose.p, pose.q, 1);
      expect(furthest([pose.height, pose.p / long, pose.q / long], [other.height, ...other.normal.slice(0, 2)])).toBeLessThan(1e-9);
      expect(Math.abs(pitchAt(geometry, pose, [psi])![0]! - pitchByHalving(geometry, other.height, other.normal, psi))).toBeLessThan(1e-9);
    }), { numRuns: 25 });
  });

  it('closes every rod', () => {
    fc.assert(fc.property(angle, angle, angle, (a, b, c) => {
      expect(Math.max(...poseAt(plate, [a, b, c])!.rodErrors.map(Math.abs))).toBeLessThan(1e-11);
    }), { numRuns: 25 });
  });

  it('gives the servo angles back from the pitch that they give', () => {
    // Law: the inverse of the forward is the identity.
    fc.assert(fc.property(angle, angle, angle, (a, b, c) => {
      expect(furthest(servosFor(plate, given(plate, [a, b, c]))!, [a, b, c])).toBeLessThan(1e-8);
    }), { numRuns: 15 });
  });

  it('has its blades in the middle of the wanted pitch with links of the very length, servos at mid travel and the plate level', () => {
    const machine = { ...plate, geometry: { ...plate.geometry, servos: plate.geometry.servos.map((servo, index) => ({ ...servo, rodLength: plate.ends[index]!.wanted })), link: { ...plate.geometry.link, length: plate.pitchRod.wanted } } };
    const { pose } = poseAt(machine, [0, 0, 0])!;
    expect(furthest([pose.height, pose.p, pose.q], [0, 0, 0])).toBeLessThan(1e-12);
    expect(harmonicsOf(machine.geometry, pose)!.collective).toBeCloseTo((plate.wanted.low + plate.wanted.high) / 2, 12);
  });

  it('is swept as it is put, position by position', () => {
    fc.assert(fc.property(fc.array(sticks, { minLength: 1, maxLength: 12 }), (positions) => {
      const sweep = sweepSticks(plate, positions)!;
      positions.forEach((position, index) => {
        const { pose } = poseAt(plate, mixed(plate, wantedAt(plate, position))!)!;
        expect(furthest([...sweep.poses.subarray(3 * index, 3 * index + 3)], [pose.height, pose.p, pose.q])).toBeLessThan(1e-11);
        expect(sweep.pitches[72 * index + 18]).toBeCloseTo(pitchAt(plate.geometry, pose, [Math.PI / 2])![0]!, 11);
      });
    }), { numRuns: 15 });
  });
});

describe.each(fours)('four servos %s', (_, plate) => {
  it('put the plate where the squares of the rod errors are least, and the blade where halving does', () => {
    // Independent route; angles at which the rods fight one another.
    const small = numberIn(-0.15, 0.15);
    fc.assert(fc.property(small, small, small, small, azimuth, (a, b, c, d, psi) => {
      const other = plateByLeastSquares(plate.geometry, ballsAt(plate, [a, b, c, d]));
      const { pose } = poseAt(plate, [a, b, c, d])!;
      const long = Math.hypot(pose.p, pose.q, 1);
      expect(furthest([pose.height, pose.p / long, pose.q / long], [other.height, ...other.normal.slice(0, 2)])).toBeLessThan(1e-9);
      expect(Math.abs(pitchAt(plate.geometry, pose, [psi])![0]! - pitchByHalving(plate.geometry, other.height, other.normal, psi))).toBeLessThan(1e-9);
    }), { numRuns: 15 });
  });

  it('are swept as they are put, position by position', () => {
    fc.assert(fc.property(fc.array(sticks, { minLength: 1, maxLength: 6 }), (positions) => {
      const sweep = sweepSticks(plate, positions)!;
      positions.forEach((position, index) => {
        const { pose } = poseAt(plate, mixed(plate, wantedAt(plate, position))!)!;
        expect(furthest([...sweep.poses.subarray(3 * index, 3 * index + 3)], [pose.height, pose.p, pose.q])).toBeLessThan(1e-9);
      });
    }), { numRuns: 10 });
  });
});

describe('a plate on four servos', () => {
  const plate = plateIn(around([45, 135, 225, 315]));

  it('is held by all of them: commanded together they fight by less than a tenth of a millimetre within half the sticks', () => {
    const angles = mixed(plate, wantedAt(plate, { collective: 0.5, fore: 0.3, right: 0.3 }))!;
    const { rodErrors } = poseAt(plate, angles)!;
    expect(rodErrors).toHaveLength(4);
    expect(Math.max(...rodErrors.map(Math.abs))).toBeLessThan(1e-4);
  });

  it('gives the wanted pitch with servo angles found backwards, and no fight at all', () => {
    fc.assert(fc.property(sticks, (position) => {
      const wanted = wantedAt(plate, position);
      const angles = servosFor(plate, wanted)!;
      const { rodErrors, pose } = poseAt(plate, angles)!;
      expect(Math.max(...rodErrors.map(Math.abs))).toBeLessThan(1e-9);
      const { collective, cyclicCos, cyclicSin } = harmonicsOf(plate.geometry, pose)!;
      expect(furthest([collective, cyclicCos, cyclicSin], [wanted.collective, wanted.cyclicCos, wanted.cyclicSin])).toBeLessThan(1e-8);
    }), { numRuns: 10 });
  });
});

describe('a lever that rides on another', () => {
  const plate = plateIn(levered(true));

  it('moves the plate by either servo', () => {
    const [lift, front] = ['lift', 'front'].map((id) => plate.servos.findIndex((servo) => servo.id === id));
    for (const index of [lift!, front!]) {
      const { pose } = poseAt(plate, plate.servos.map((_, own) => (own === index ? 0.1 : 0)))!;
      expect(Math.abs(pose.p)).toBeGreaterThan(0.005);
    }
  });

  it('puts the plate and the blade where two turns, one after the other, put them', () => {
    // Independent route: quaternions, with the angles that keep the rods at their lengths found by halving.
    const small = numberIn(-0.15, 0.15);
    fc.assert(fc.property(fc.array(small, { minLength: plate.servos.length, maxLength: plate.servos.length }), azimuth, (angles, psi) => {
      const other = plateByVectors(plate.geometry, ballsAt(plate, angles));
      const { pose } = poseAt(plate, angles)!;
      const long = Math.hypot(pose.p, pose.q, 1);
      expect(furthest([pose.height, pose.p / long, pose.q / long], [other.height, ...other.normal.slice(0, 2)])).toBeLessThan(1e-9);
      expect(Math.abs(pitchAt(plate.geometry, pose, [psi])![0]! - pitchByHalving(plate.geometry, other.height, other.normal, psi))).toBeLessThan(1e-9);
    }), { numRuns: 20 });
  });

  it('gives the wanted pitch with servo angles found backwards', () => {
    fc.assert(fc.property(sticks, (position) => {
      const wanted = wantedAt(plate, { collective: position.collective / 2, fore: position.fore / 2, right: position.right / 2 });
      const angles = servosFor(plate, wanted)!;
      const { collective, cyclicCos, cyclicSin } = given(plate, angles);
      expect(furthest([collective, cyclicCos, cyclicSin], [wanted.collective, wanted.cyclicCos, wanted.cyclicSin])).toBeLessThan(1e-8);
    }), { numRuns: 10 });
  });
});

describe('a machine and its mirror image', () => {
  // Law: a mirror image that turns the other way does the same, with left and right changed over.
  const mirrored = (sense: string): Plate => plateIn(around([0, 120, 240], { sense }));

  it('lean alike, with left and right changed over', () => {
    fc.assert(fc.property(sticks, ({ collective, fore, right }) => {
      const [one, other] = [mirrored('clockwise'), mirrored('counter-clockwise')];
      const a = servosFor(one, wantedAt(one, { collective, fore, right }))!;
      const b = servosFor(other, wantedAt(other, { collective, fore, right: -right }))!;
      const [p, q] = [poseAt(one, a)!.pose, poseAt(other, b)!.pose];
      expect(furthest([p.height, p.p, p.q], [q.height, q.p, -q.q])).toBeLessThan(1e-9);
    }), { numRuns: 10 });
  });
});

describe('sticks', () => {
  it('ask for a disc that goes down in front: least pitch where the blade is a quarter of a turn before the nose', () => {
    // By hand: 0° lies over the tail, azimuth grows with the rotor, the nose is at 180°, so least pitch at 90°.
    for (const sense of ['clockwise', 'counter-clockwise']) {
      const { cyclicCos, cyclicSin } = wantedAt(plateIn(around([0, 120, 240], { sense })), { collective: 0, fore: 1, right: 0 });
      expect(cyclicCos).toBeCloseTo(0, 12);
      expect(cyclicSin).toBeLessThan(0);
    }
  });

  it('ask for a disc that goes down on the right', () => {
    // By hand: clockwise the right side is at 270°, least pitch at 180°; counter-clockwise it is at 90°, least pitch at 0°.
    const cosine = (sense: string): number => wantedAt(plateIn(around([0, 120, 240], { sense })), { collective: 0, fore: 0, right: 1 }).cyclicCos;
    expect(cosine('clockwise')).toBeGreaterThan(0);
    expect(cosine('counter-clockwise')).toBeLessThan(0);
  });
});

describe('a file that does not say enough', () => {
  const found = (controls: string): unknown => {
    const machine = bench(controls);
    return plateOf(machine, solveDrive(machine));
  };

  it('is told which entries are missing', () => {
    expect(found('  swashplate: {on: mast}')).toEqual({ missing: expect.arrayContaining(['controls.swashplate.at', 'controls.links']) });
    expect(found('  swashplate: {on: mast, radius: 40 mm, at: [0 mm, 0 mm, 100 mm]}\n  servos: {a: {arm: 16 mm}}\n  links: {l: {from: a, to: swashplate}}')).toEqual({
      missing: expect.arrayContaining(['controls.servos.a.pivot', 'controls.servos.a.axis', 'controls.servos.a.points', 'controls.links.l.to-ball']),
    });
  });

  it('is told so when levers ride on one another in a ring', () => {
    expect(found(`
  swashplate: {on: mast, at: [0 mm, 0 mm, 100 mm]}
  levers: {a: {pivot: [0 mm, 0 mm, 0 mm], axis: left, on: b}, b: {pivot: [9 mm, 0 mm, 0 mm], axis: left, on: a}}
  links: {l: {from: a, to: swashplate, from-ball: [9 mm, 9 mm, 0 mm], to-ball: [40 mm, 0 mm, 0 mm]}}`)).toEqual({ missing: expect.arrayContaining(['controls.levers.a.on']) });
  });

  it('is told what does not reach', () => {
    const short = around([0, 120, 240]);
    const links = new Map([...short.controls.links].map(([id, link]) => [id, id === 'pitch' ? { ...link, length: 0.02 } : link]));
    const machine = { ...short, controls: { ...short.controls, links } };
    expect(plateOf(machine, solveDrive(machine))).toEqual({ stuck: expect.stringMatching(/do not reach/u) });
  });
});
