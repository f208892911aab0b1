import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { centreDistances, gearGeometry, gearOutline, matingPhase, ringProfile, thicknessAt, toothProfile, type Point, type ProfileOptions } from '../../src/index.ts';
import { area, signedDistance } from './outline.ts';

// Modules are the unit of length here.
const rack = { normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, addendum: 1, dedendum: 1.25, pointsPerFlank: 30 };
const gears: fc.Arbitrary<ProfileOptions> = fc.record({
  teeth: fc.integer({ min: 8, max: 70 }),
  shift: numberIn(0, 0.5),
  pressureAngle: fc.constantFrom(Math.PI / 9, (14.5 * Math.PI) / 180, (25 * Math.PI) / 180),
  helixAngle: fc.constantFrom(0, 0.3),
  normalModule: fc.constant(1),
  addendum: fc.constant(1),
  dedendum: fc.constant(1.25),
  pointsPerFlank: fc.constant(12),
});

/**
 * Signed distance from the tooth of a rack with rounded tips, negative in the rack; x from its middle, y up from the pitch line of generation.
 */
function rackDistance(x: number, y: number, { shift, dedendum, pressureAngle, helixAngle }: ProfileOptions): number {
  const module = 1 / Math.cos(helixAngle);
  const angle = Math.atan(Math.tan(pressureAngle) / Math.cos(helixAngle));
  const halfTip = (Math.PI * module) / 4 - dedendum * Math.tan(angle);
  const radius = Math.min(0.38, halfTip / (1 / Math.cos(angle) - Math.tan(angle)));
  const cornerX = halfTip + radius * Math.tan(angle) - radius / Math.cos(angle);
  const cornerY = shift - dedendum + radius;
  const [dx, dy] = [Math.abs(x) - cornerX, y - cornerY];
  const flank = dx * Math.cos(angle) - dy * Math.sin(angle);
  // Between the two normals at the corner the rounding is nearest.
  const onCorner = dx > 0 && dy < 0 && dx * Math.sin(angle) + dy * Math.cos(angle) < 0;
  return (onCorner ? Math.hypot(dx, dy) : Math.max(flank, -dy)) - radius;
}

/** Least distance that the rolling rack ever has from a point of the gear, given from the middle of the gap. */
function leastRackDistance(radius: number, angle: number, gear: ProfileOptions): number {
  const reference = gear.teeth / Math.cos(gear.helixAngle) / 2;
  const at = (turned: number): number => rackDistance(radius * Math.sin(angle + turned) - turned * reference, radius * Math.cos(angle + turned) - reference, gear);
  const span = 6 / reference;
  let best = 0;
  for (let step = -100; step <= 100; step += 1) if (at((step / 100) * span) < at(best)) best = (step / 100) * span;
  for (let width = span / 100; width > 1e-9; width /= 2) for (const side of [-1, 1]) if (at(best + side * width) < at(best)) best += side * width;
  return at(best);
}

describe('tooth outline', () => {
  test('the rack that rolls along it touches every point of flank and fillet and cuts into none, undercut or not (independent route: rack rolled numerically)', () => {
    fc.assert(
      fc.property(gears, (gear) => {
        const profile = toothProfile(gear);
        for (const [x, y] of profile.points) {
          const radius = Math.hypot(x, y);
          if (radius > profile.tipRadius - 1e-9) continue;
          const distance = leastRackDistance(radius, Math.PI / gear.teeth - Math.abs(Math.atan2(y, x)), gear);
          expect(distance).toBeGreaterThan(-1e-6);
          expect(distance).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('its teeth are as thick as their flanks are apart (law: the involute at the middle of the flank)', () => {
    fc.assert(
      fc.property(gears, (gear) => {
        const profile = toothProfile({ ...gear, pointsPerFlank: 3 });
        const flank = profile.points.filter(([x, y]) => y < 0 && Math.hypot(x, y) > profile.formRadius + 1e-9 && Math.hypot(x, y) < profile.tipRadius - 1e-9);
        expect(flank).toHaveLength(1);
        const radius = Math.hypot(...flank[0]!);
        expect(-2 * Math.atan2(flank[0]![1], flank[0]![0]) * radius).toBeCloseTo(thicknessAt(2 * radius, gearGeometry(gear)), 9);
      }),
    );
  });

  test('it is its own mirror image and runs anticlockwise from gap to gap (law)', () => {
    fc.assert(
      fc.property(gears, (gear) => {
        const { points } = toothProfile(gear);
        points.forEach(([x, y], index) => {
          const [mirroredX, mirroredY] = points.at(-1 - index)!;
          expect(mirroredX).toBeCloseTo(x, 12);
          expect(mirroredY).toBeCloseTo(-y, 12);
        });
        const ends = [points[0]!, points.at(-1)!].map(([x, y]) => Math.atan2(y, x));
        expect(ends[0]).toBeCloseTo(-Math.PI / gear.teeth, 12);
        expect(ends[1]).toBeCloseTo(Math.PI / gear.teeth, 12);
      }),
    );
  });

  test('the whole outline covers more than its root circle and less than its tip circle, whatever its rotation (law)', () => {
    fc.assert(
      fc.property(gears, numberIn(-7, 7), (gear, rotation) => {
        const profile = toothProfile(gear);
        const covered = area(gearOutline(profile));
        expect(covered).toBeGreaterThan(Math.PI * profile.rootRadius ** 2);
        expect(covered).toBeLessThan(Math.PI * profile.tipRadius ** 2);
        expect(area(gearOutline(profile, rotation))).toBeCloseTo(covered, 8);
      }),
    );
  });

  test('a gear with very many teeth becomes the rack (law: area of its tooth)', () => {
    // By hand: at height y over the reference line the tooth fills 1/2 − y·2 tan α/π of each pitch π; integrated from −1.25 to 1.
    const teeth = 20_000;
    const profile = toothProfile({ ...rack, teeth, shift: 0, filletRadius: 0 });
    const one = area([[0, 0], ...profile.points]);
    const root = area([[0, 0], ...[-1, 1].map((side): Point => [profile.rootRadius * Math.cos(Math.PI / teeth), side * profile.rootRadius * Math.sin(Math.PI / teeth)])]);
    const slope = (2 * Math.tan(Math.PI / 9)) / Math.PI;
    const wanted = Math.PI * (0.5 * 2.25 - (slope * (1 - 1.25 ** 2)) / 2);
    expect(one - root).toBeCloseTo(wanted, 2);
  });

  test('ten teeth without shift are undercut, with a shift of 0.5 they are not (by hand: least shift 1 − 10·sin² 20°/2 = 0.415)', () => {
    const base = (10 / 2) * Math.cos(Math.PI / 9);
    const plain = toothProfile({ ...rack, teeth: 10, shift: 0 });
    expect(plain.formRadius).toBeGreaterThan(base * 1.001);
    // Below the involute the undercut tooth is thinner than at the start of the involute.
    const waist = plain.points.filter(([x, y]) => y < 0 && Math.hypot(x, y) < plain.formRadius - 1e-9 && Math.hypot(x, y) > plain.rootRadius + 0.3).map(([, y]) => -2 * y);
    const atForm = 2 * plain.formRadius * Math.sin(thicknessAt(2 * plain.formRadius, gearGeometry({ ...rack, teeth: 10, shift: 0 })) / (2 * plain.formRadius));
    expect(Math.min(...waist)).toBeLessThan(atForm);
    expect(toothProfile({ ...rack, teeth: 10, shift: 0.5 }).formRadius).toBeLessThan(base * 1.01);
  });

  test('a tooth that would be pointed ends in its point', () => {
    const profile = toothProfile({ ...rack, teeth: 8, shift: 0.8 });
    expect(profile.tipRadius).toBeLessThan(8 / 2 + 1.8);
    expect(profile.points.filter(([, y]) => Math.abs(y) < 1e-9).length).toBeGreaterThan(0);
  });

  test('misuse is refused', () => {
    expect(() => toothProfile({ ...rack, teeth: 17, shift: 0, pointsPerFlank: 1 })).toThrow('pointsPerFlank');
    expect(() => toothProfile({ ...rack, teeth: 17, shift: 0, dedendum: 2.5 })).toThrow('pointed');
    expect(() => toothProfile({ ...rack, teeth: 112, shift: -1.35, pressureAngle: Math.PI / 18, addendum: 0.5, dedendum: 0.8 })).toThrow('no involute is left');
    expect(() => toothProfile({ ...rack, teeth: 14, shift: -1.5, pressureAngle: 0.43633, addendum: 1.2, dedendum: 1.5 })).toThrow('cuts the tooth off');
    expect(() => ringProfile({ ...rack, teeth: 30, shift: 0, dedendum: 4 })).toThrow('flanks of a gap meet');
  });
});

describe('teeth in mesh', () => {
  const meshes = (kind: 'external' | 'internal', fewest: number, addendum: number): fc.Arbitrary<{ first: ProfileOptions; second: ProfileOptions; rotation: number; direction: number; kind: typeof kind }> =>
    fc.record({
      first: fc.record({ teeth: fc.integer({ min: fewest, max: 40 }), shift: numberIn(0, 0.4) }).map((own) => ({ ...rack, addendum, ...own })),
      second: fc.record({ teeth: fc.integer({ min: 65, max: 90 }), shift: numberIn(0, 0.4) }).map((own) => ({ ...rack, addendum, ...own })),
      rotation: numberIn(-3, 3),
      direction: numberIn(-3, 3),
      kind: fc.constant(kind),
    });

  function nearestAndDeepest({ first, second, rotation, direction, kind }: { first: ProfileOptions; second: ProfileOptions; rotation: number; direction: number; kind: 'external' | 'internal' }): [number, number] {
    const { zeroBacklashCentreDistance: distance } = centreDistances(rack, first.teeth, second.teeth, first.shift, second.shift, kind);
    const side = kind === 'external' ? 1 : -1;
    const profile = toothProfile(first);
    const outer = kind === 'external' ? toothProfile(second) : ringProfile(second);
    const [offsetX, offsetY] = [side * distance * Math.cos(direction), side * distance * Math.sin(direction)];
    const phase = matingPhase(first.teeth, rotation, second.teeth, direction, kind);
    /** Angle of a point from a direction, −π to π. */
    const from = (towards: number, [x, y]: Point): number => Math.atan2(Math.sin(Math.atan2(y, x) - towards), Math.cos(Math.atan2(y, x) - towards));
    const small = gearOutline(profile, rotation).filter((point) => Math.abs(from(direction, point)) < (3 * 2 * Math.PI) / first.teeth);
    // Of the large gear a slice of sixteen teeth about the mesh, closed at its centre; so many teeth are not undercut, and turn back nowhere.
    const facing = kind === 'external' ? direction + Math.PI : direction;
    const slice = gearOutline(outer, phase).filter((point) => Math.abs(from(facing, point)) < (8 * 2 * Math.PI) / second.teeth).toSorted((a, b) => from(facing, a) - from(facing, b));
    const large = [[0, 0] as Point, ...slice].map(([x, y]): Point => [x + offsetX, y + offsetY]);
    const distances = small.map((point) => side * signedDistance(point, large));
    return [Math.min(...distances.map(Math.abs)), Math.min(...distances)];
  }

  test('two gears at their backlash-free distance touch and do not cut into each other (law: conjugate action), undercut pinions included', () => {
    fc.assert(
      fc.property(meshes('external', 10, 1), (mesh) => {
        const [nearest, deepest] = nearestAndDeepest(mesh);
        expect(nearest).toBeLessThan(2e-3);
        expect(deepest).toBeGreaterThan(-2e-3);
      }),
      { numRuns: 6 },
    );
  });

  test('a pinion in its ring touches and does not cut (law: conjugate action)', () => {
    fc.assert(
      fc.property(meshes('internal', 20, 0.75), (mesh) => {
        const [nearest, deepest] = nearestAndDeepest(mesh);
        expect(nearest).toBeLessThan(2e-3);
        expect(deepest).toBeGreaterThan(-2e-3);
      }),
      { numRuns: 6 },
    );
  });

  test('when gear 1 turns by an angle, gear 2 turns back by the ratio (law)', () => {
    const pitch = (2 * Math.PI) / 54;
    const before = matingPhase(11, 0.2, 54, 0.7);
    const after = matingPhase(11, 0.2 + 0.1, 54, 0.7);
    const turned = (((before - after) % pitch) + pitch) % pitch;
    expect(turned).toBeCloseTo((0.1 * 11) / 54, 12);
  });
});
