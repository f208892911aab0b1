import { linearBlade, uniformBlade } from '@rotorwright/rotor';
import { describe, expect, test } from 'vitest';

describe('a blade whose mass per length goes linearly from root to tip', () => {
  test('law: with its centre halfway it is the even blade', () => {
    const { inertia, staticMoment, rootMassPerLength, tipMassPerLength } = linearBlade(0.2, 0.1, 0.75, 0.425);
    expect(rootMassPerLength).toBeCloseTo(tipMassPerLength, 12);
    expect(inertia).toBeCloseTo(uniformBlade(0.2, 0.1, 0.75).inertia, 14);
    expect(staticMoment).toBeCloseTo(0.2 * 0.425, 14);
  });

  // By hand: a triangle that ends in nothing at the tip, from the axis: m' = (2m/R)(1 − r/R), ∫r²m' dr = m·R²/6.
  test('with its centre at a third it is a triangle', () => {
    const { inertia, tipMassPerLength } = linearBlade(0.3, 0, 0.9, 0.3);
    expect(tipMassPerLength).toBeCloseTo(0, 14);
    expect(inertia).toBeCloseTo((0.3 * 0.9 ** 2) / 6, 14);
  });

  // Independent route: a sum over many thin slices.
  test('mass and centre come out as they were put in', () => {
    const { rootMassPerLength, tipMassPerLength, inertia } = linearBlade(0.21, 0.1, 0.775, 0.4);
    const slices = 100_000;
    const step = 0.675 / slices;
    let mass = 0;
    let moment = 0;
    let second = 0;
    for (let slice = 0; slice < slices; slice += 1) {
      const share = (slice + 0.5) / slices;
      const r = 0.1 + 0.675 * share;
      const each = (rootMassPerLength + (tipMassPerLength - rootMassPerLength) * share) * step;
      mass += each;
      moment += each * r;
      second += each * r * r;
    }
    expect(mass).toBeCloseTo(0.21, 10);
    expect(moment / mass).toBeCloseTo(0.4, 9);
    expect(second).toBeCloseTo(inertia, 9);
  });

  test('a centre that no linear spread has is refused', () => {
    expect(() => linearBlade(0.2, 0.1, 0.75, 0.3)).toThrow('centreOfMass');
    expect(() => linearBlade(0.2, 0.1, 0.75, 0.6)).toThrow('centreOfMass');
    expect(() => linearBlade(0.2, 0.1, 0.1, 0.1)).toThrow('radius');
    expect(() => linearBlade(-0.2, 0.1, 0.75, 0.4)).toThrow('mass');
  });
});
