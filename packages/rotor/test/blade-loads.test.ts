import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { centrifugalForce, coningAngle, featheringMoment, flappingFrequencyRatio, lagFrequencyRatio, massIntegrals, uniformBlade, type BladeStation, type HingedBlade, type PointMass } from '../src/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const station = fc.record({ massPerLength: between(0.05, 0.5), chordwise: between(-0.01, 0.01), height: between(-0.005, 0.005), chordwiseGyration: between(0, 0.02), heightGyration: between(0, 0.003) });
const stations = fc.array(station, { minLength: 2, maxLength: 4 }).map((list) => list.map((one, index): BladeStation => ({ ...one, r: 0.1 + (0.7 * index) / (list.length - 1) })));
const point = fc.record({ r: between(0.02, 0.8), mass: between(0, 0.1), chordwise: between(-0.01, 0.01), height: between(-0.01, 0.01) });
const blades = fc.record({ speed: between(50, 300), stations, points: fc.array(point, { maxLength: 3 }), grip: fc.array(point, { maxLength: 3 }) });

/** The blade cut into many small masses; gyration as two masses on either side in each direction. */
function grains({ stations: along, points, grip }: HingedBlade): PointMass[] {
  const cuts = 400;
  const pieces = along.slice(1).flatMap((outer, index) => {
    const inner = along[index]!;
    return Array.from({ length: cuts }, (_, cut) => {
      const share = (cut + 0.5) / cuts;
      const at = (field: keyof BladeStation): number => inner[field] * (1 - share) + outer[field] * share;
      const mass = (at('massPerLength') * (outer.r - inner.r)) / cuts;
      // Four grains at ±√2·k on two axes have the radii of gyration k.
      const [across, up] = [Math.SQRT2 * at('chordwiseGyration'), Math.SQRT2 * at('heightGyration')];
      return [
        [across, 0],
        [-across, 0],
        [0, up],
        [0, -up],
      ].map(([x, z]): PointMass => ({ r: at('r'), mass: mass / 4, chordwise: at('chordwise') + x!, height: at('height') + z! }));
    }).flat();
  });
  return [...pieces, ...points, ...grip];
}

describe('blade loads', () => {
  test('the integrals are sums over many small masses (independent route)', () => {
    fc.assert(
      fc.property(blades, (blade) => {
        const exact = massIntegrals(blade.stations, [...blade.points, ...blade.grip]);
        const small = grains(blade);
        const sum = (of: (grain: PointMass) => number): number => small.reduce((total, grain) => total + grain.mass * of(grain), 0);
        expect(exact.mass).toBeCloseTo(sum(() => 1), 6);
        expect(exact.staticMoment).toBeCloseTo(sum(({ r }) => r), 6);
        expect(exact.inertia).toBeCloseTo(sum(({ r }) => r * r), 6);
        expect(exact.chordwiseInertia / sum(({ chordwise }) => chordwise ** 2) || 1).toBeCloseTo(1, 4);
      }),
      { numRuns: 30 },
    );
  });

  test('the feathering moment is the slope of the centrifugal potential over pitch (independent route: numerical derivative)', () => {
    fc.assert(
      fc.property(blades, between(-0.5, 0.5), (blade, pitch) => {
        const small = grains(blade);
        // Only the distance from the plane of rotor axis and feathering axis changes with pitch: −½Ω²·Σ m·y².
        const potential = (angle: number): number => (-(blade.speed ** 2) / 2) * small.reduce((total, { mass, chordwise, height }) => total + mass * (chordwise * Math.cos(angle) - height * Math.sin(angle)) ** 2, 0);
        const step = 1e-4;
        const moment = -(potential(pitch + step) - potential(pitch - step)) / (2 * step);
        expect(featheringMoment(blade, pitch)).toBeCloseTo(moment, 4);
      }),
      { numRuns: 30 },
    );
  });

  test('a flat blade at positive pitch is turned back, leading edge down, and at pitch 0 left alone (law)', () => {
    const blade: HingedBlade = { speed: 170, stations: [0.1, 0.8].map((r) => ({ r, massPerLength: 0.25, chordwise: 0, height: 0, chordwiseGyration: 0.015, heightGyration: 0.002 })), points: [], grip: [] };
    expect(featheringMoment(blade, 0.1)).toBeLessThan(0);
    expect(featheringMoment(blade, -0.1)).toBeCloseTo(-featheringMoment(blade, 0.1), 12);
    expect(Math.abs(featheringMoment(blade, 0))).toBe(0);
  });

  test('a uniform blade from its hinge outwards flaps at √(1 + 3e/2(1 − e)) and lags at √(3e/2(1 − e)) of the rotor speed (published: textbook forms, from memory)', () => {
    const hinge = 0.05;
    const blade: HingedBlade = { speed: 150, stations: [hinge, 1].map((r) => ({ r, massPerLength: 0.2, chordwise: 0, height: 0, chordwiseGyration: 0, heightGyration: 0 })), points: [], grip: [] };
    const term = (3 * hinge) / (2 * (1 - hinge));
    expect(flappingFrequencyRatio(blade, hinge, 0)).toBeCloseTo(Math.sqrt(1 + term), 12);
    expect(lagFrequencyRatio(blade, hinge, 0)).toBeCloseTo(Math.sqrt(term), 12);
    // A hinge in the axis: the blade flaps once a turn.
    expect(flappingFrequencyRatio(blade, 0, 0)).toBe(1);
  });

  test('pull and feathering moment quadruple when the speed doubles, coning falls to a quarter (law)', () => {
    fc.assert(
      fc.property(blades, between(-0.3, 0.3), (blade, pitch) => {
        const fast = { ...blade, speed: 2 * blade.speed };
        expect(centrifugalForce(0.08, fast.speed)).toBeCloseTo(4 * centrifugalForce(0.08, blade.speed), 6);
        expect(featheringMoment(fast, pitch)).toBeCloseTo(4 * featheringMoment(blade, pitch), 6);
        expect(4 * coningAngle(fast, 25, 0.6, 0.01, 0, 9.80665)!).toBeCloseTo(coningAngle(blade, 25, 0.6, 0.01, 0, 9.80665)!, 9);
      }),
    );
  });

  test('a rotor that stands has no flapping ratio, and without a spring nothing to hold its blades out', () => {
    const blade: HingedBlade = { speed: 0, stations: [], points: [{ r: 0.4, mass: 0.2, chordwise: 0, height: 0 }], grip: [] };
    expect(flappingFrequencyRatio(blade, 0.01, 0)).toBeUndefined();
    expect(flappingFrequencyRatio(blade, 0.01, 50)).toBeUndefined();
    expect(coningAngle(blade, 25, 0.6, 0.01, 0, 9.80665)).toBeUndefined();
    expect(coningAngle(blade, 25, 0.6, 0.01, 50, 9.80665)).toBeGreaterThan(0);
  });

  test('a uniform blade is a distribution of two equal stations (law)', () => {
    const { staticMoment, inertia } = massIntegrals([0.1, 0.8].map((r) => ({ r, massPerLength: 0.25, chordwise: 0, height: 0, chordwiseGyration: 0, heightGyration: 0 })), []);
    expect(uniformBlade(0.175, 0.1, 0.8).staticMoment).toBeCloseTo(staticMoment, 12);
    expect(uniformBlade(0.175, 0.1, 0.8).inertia).toBeCloseTo(inertia, 12);
    expect(() => uniformBlade(0.2, 0.8, 0.1)).toThrow('the tip [m] must lie beyond the root');
  });
});
