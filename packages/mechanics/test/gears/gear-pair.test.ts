import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { centreDistances, gearGeometry, helixPush, involute, meshGeometry, minimumTeethWithoutUndercut, pointedDiameter, thicknessAt, type MeshInputs } from '../../src/index.ts';

const twenty = Math.PI / 9;
const base: MeshInputs = { normalModule: 0.001, helixAngle: 0, pressureAngle: twenty, teeth1: 17, teeth2: 85, shift1: 0, shift2: 0, addendum: 1, dedendum: 1.25, faceWidth: 0.01 };

/** Pairs whose teeth can touch at some centre distance: the working pressure angle stays above zero. */
const pairs = fc.record({
  normalModule: fc.double({ min: 3e-4, max: 0.003, noNaN: true }),
  helixAngle: numberIn(0, 0.6),
  pressureAngle: fc.double({ min: 0.25, max: 0.45, noNaN: true }),
  teeth1: fc.integer({ min: 9, max: 60 }),
  teeth2: fc.integer({ min: 9, max: 150 }),
  shift1: numberIn(-0.2, 0.6),
  shift2: numberIn(-0.2, 0.6),
  addendum: fc.constant(1),
  dedendum: fc.constant(1.25),
  faceWidth: fc.double({ min: 0.002, max: 0.02, noNaN: true }),
}).filter(({ helixAngle, pressureAngle, teeth1, teeth2, shift1, shift2 }) => {
  const transverse = Math.atan(Math.tan(pressureAngle) / Math.cos(helixAngle));
  return involute(transverse) + (2 * Math.tan(pressureAngle) * (shift1 + shift2)) / (teeth1 + teeth2) > 1e-3;
});

describe('gear pair', () => {
  test('a standard pair runs on its reference circles (law)', () => {
    const mesh = meshGeometry(base);
    expect(mesh.zeroBacklashCentreDistance).toBe(mesh.referenceCentreDistance);
    expect(mesh.workingPressureAngle).toBeCloseTo(twenty, 12);
    expect(mesh.workingDiameter1).toBeCloseTo(mesh.gear1.referenceDiameter, 15);
    expect(mesh.backlash).toBe(0);
  });

  test('at the backlash-free distance the teeth fill the pitch of the working circles (independent route: thicknesses added up)', () => {
    fc.assert(
      fc.property(pairs, numberIn(0, 0.3), (inputs, excess) => {
        const tight = meshGeometry(inputs);
        const mesh = meshGeometry({ ...inputs, centreDistance: tight.zeroBacklashCentreDistance + excess * inputs.normalModule });
        const pitch = (Math.PI * mesh.workingDiameter1) / inputs.teeth1;
        const teeth = thicknessAt(mesh.workingDiameter1, mesh.gear1) + thicknessAt(mesh.workingDiameter2, mesh.gear2);
        expect((pitch - teeth - mesh.backlash) / inputs.normalModule).toBeCloseTo(0, 9);
      }),
    );
  });

  test('swapping the gears swaps their values and changes nothing else (law)', () => {
    fc.assert(
      fc.property(pairs, (inputs) => {
        const mesh = meshGeometry(inputs);
        const swapped = meshGeometry({ ...inputs, teeth1: inputs.teeth2, teeth2: inputs.teeth1, shift1: inputs.shift2, shift2: inputs.shift1 });
        expect(swapped.gear1).toEqual(mesh.gear2);
        expect(swapped.centreDistance).toBeCloseTo(mesh.centreDistance, 14);
        expect(swapped.transverseContactRatio).toBeCloseTo(mesh.transverseContactRatio, 9);
      }),
    );
  });

  test('play square to the flanks is the play around, seen along the line of action and the base helix (law)', () => {
    fc.assert(
      fc.property(pairs, numberIn(0.05, 0.3), (inputs, excess) => {
        const tight = meshGeometry(inputs);
        const mesh = meshGeometry({ ...inputs, centreDistance: tight.centreDistance + excess * inputs.normalModule });
        // On the base cylinders the play around is what the line of action sees; square to the base helix it is less by its cosine.
        const onBase = (mesh.backlash * mesh.gear1.baseDiameter) / mesh.workingDiameter1;
        expect(mesh.normalBacklash / onBase).toBeCloseTo(Math.cos(mesh.gear1.baseHelixAngle), 9);
        expect(mesh.normalBacklash).toBeLessThanOrEqual(mesh.backlash);
      }),
    );
  });

  test('a tip reaches too far or not whichever gear is called the first (law)', () => {
    fc.assert(
      fc.property(pairs, (inputs) => {
        const mesh = meshGeometry(inputs);
        const swapped = meshGeometry({ ...inputs, teeth1: inputs.teeth2, teeth2: inputs.teeth1, shift1: inputs.shift2, shift2: inputs.shift1 });
        expect([swapped.tipInterference2, swapped.tipInterference1]).toEqual([mesh.tipInterference1, mesh.tipInterference2]);
      }),
    );
    expect(meshGeometry({ ...base, teeth1: 85, teeth2: 9 })).toMatchObject({ tipInterference1: true, tipInterference2: false });
  });

  // published: a 20° rack with m·1 of straight flank undercuts below 17.097 teeth (2/sin² 20°); each tenth of shift spares 1.7 teeth
  test.each([[17, 0, true], [18, 0, false], [16, 0.05, true], [16, 0.07, false], [12, 0.29, true], [12, 0.3, false], [20, -0.16, false], [20, -0.18, true]])('%d teeth shifted by %d: undercut %s', (teeth, shift, undercut) => {
    expect(gearGeometry({ ...base, teeth, shift }).undercut).toBe(undercut);
  });

  // law: the flank ends at the base circle when the rack's corner stands at the base tangent point, h·m_n = r·sin² α_t
  test('the least count without undercut is the one whose base tangent point lies as deep as the rack', () => {
    fc.assert(
      fc.property(pairs, numberIn(0.5, 1.4), (inputs, depth) => {
        const teeth = minimumTeethWithoutUndercut(inputs, depth);
        const transverse = Math.atan(Math.tan(inputs.pressureAngle) / Math.cos(inputs.helixAngle));
        const radius = (inputs.normalModule * teeth) / Math.cos(inputs.helixAngle) / 2;
        expect((radius * Math.sin(transverse) ** 2) / inputs.normalModule).toBeCloseTo(depth, 9);
      }),
    );
  });

  test('lengths grow with the module, angles and ratios do not (law)', () => {
    fc.assert(
      fc.property(pairs, (inputs) => {
        const mesh = meshGeometry(inputs);
        const double = meshGeometry({ ...inputs, normalModule: 2 * inputs.normalModule, faceWidth: 2 * inputs.faceWidth });
        expect(double.centreDistance / mesh.centreDistance).toBeCloseTo(2, 10);
        expect(double.gear1.tipThickness - 2 * mesh.gear1.tipThickness).toBeCloseTo(0, 12);
        expect(double.transverseContactRatio).toBeCloseTo(mesh.transverseContactRatio, 9);
        expect(double.overlapRatio).toBeCloseTo(mesh.overlapRatio, 9);
      }),
    );
  });

  test('pulling a pair apart by Δa opens 2·Δa·tan α of backlash (law: limit of a small excess)', () => {
    const excess = 1e-8;
    const { backlash } = meshGeometry({ ...base, centreDistance: 0.051 + excess });
    expect(backlash / excess / (2 * Math.tan(twenty))).toBeCloseTo(1, 5);
  });

  test('a pair set too close is squeezed: its backlash is negative', () => {
    expect(meshGeometry({ ...base, centreDistance: 0.0509 }).backlash).toBeLessThan(0);
  });

  test('a pinion inside a ring with equal shifts runs on the reference circles (law)', () => {
    const { referenceCentreDistance, zeroBacklashCentreDistance } = centreDistances(base, 20, 60, 0.3, 0.3, 'internal');
    expect(referenceCentreDistance).toBeCloseTo(0.02, 15);
    expect(zeroBacklashCentreDistance).toBe(referenceCentreDistance);
  });

  test('a tooth has no thickness where its flanks meet (law)', () => {
    fc.assert(
      fc.property(pairs, (inputs) => {
        const gear = gearGeometry({ ...inputs, teeth: inputs.teeth1, shift: inputs.shift1 });
        expect(thicknessAt(pointedDiameter(gear), gear) / inputs.normalModule).toBeCloseTo(0, 8);
      }),
    );
  });

  test('a tip that reaches beyond the involute of its mate is told: 85 teeth into 9 (by hand: the tip of the large one passes the base tangent point)', () => {
    // √(r_a² − r_b²) = √(43.5² − 39.937²) = 17.24 mm against a·sin α = 47·0.34202 = 16.07 mm
    const mesh = meshGeometry({ ...base, teeth1: 9 });
    expect(mesh.tipInterference2).toBe(true);
    expect(mesh.tipInterference1).toBe(false);
    expect(mesh.gear1.undercut).toBe(true);
    expect(mesh.gear2.undercut).toBe(false);
  });

  test('misuse is refused with argument, rule and value', () => {
    expect(() => meshGeometry({ ...base, centreDistance: 0.04 })).toThrow(new RangeError(`meshGeometry: centreDistance [m] must be at least ${(0.017 * Math.cos(twenty) + 0.085 * Math.cos(twenty)) / 2}, where the base circles touch, got 0.04`));
    expect(() => meshGeometry({ ...base, centreDistance: -0.06 })).toThrow('where the base circles touch, got -0.06');
    expect(() => gearGeometry({ ...base, teeth: 2, shift: 0 })).toThrow('teeth must be a whole number from 3 up, got 2');
    expect(() => gearGeometry({ ...base, teeth: 17, shift: -9 })).toThrow('tip');
    expect(() => centreDistances(base, 60, 20, 0, 0, 'internal')).toThrow('more teeth than its pinion');
    expect(() => centreDistances(base, 12, 12, -1, -1, 'external')).toThrow('must let the flanks touch');
  });
});

describe('push of a helical gear', () => {
  test('fingers of the hand of the helix along the rotation, thumb along the push on the gear that drives (common practice, no source)', () => {
    expect(helixPush('right', 1, 'driver')).toBe(1);
    expect(helixPush('left', 1, 'driver')).toBe(-1);
  });

  test('mates push each other apart with equal force: other hand, other sense, other role, opposite push (law: Newton’s third)', () => {
    for (const hand of ['right', 'left'] as const) {
      for (const turns of [1, -1] as const) {
        for (const role of ['driver', 'driven'] as const) {
          const mate = helixPush(hand === 'right' ? 'left' : 'right', turns === 1 ? -1 : 1, role === 'driver' ? 'driven' : 'driver');
          expect(helixPush(hand, turns, role) + mate).toBe(0);
        }
      }
    }
  });
});
