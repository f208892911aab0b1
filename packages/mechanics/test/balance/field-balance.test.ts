import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { balanceFourRuns, balanceTwoPlanes, joinMasses, splitMass, tipRisePerPitch, type Phasor, type TwoReadings } from '../../src/balance/index.ts';

const angle = numberIn(-7, 7);
const size = fc.double({ min: 0.1, max: 10, noNaN: true });
const vector = fc.record({ size, angle });

type Plane = readonly [x: number, y: number];
const at = ({ size: length, angle: turn }: Phasor): Plane => [length * Math.cos(turn), length * Math.sin(turn)];
const times = ([a, b]: Plane, [c, d]: Plane): Plane => [a * c - b * d, a * d + b * c];
const plus = (...all: readonly Plane[]): Plane => [all.reduce((sum, [x]) => sum + x, 0), all.reduce((sum, [, y]) => sum + y, 0)];
const phasor = ([x, y]: Plane): Phasor => ({ size: Math.sqrt(x * x + y * y), angle: Math.atan2(y, x) });
const length = (value: Plane): number => phasor(value).size;

describe('balancing in two planes', () => {
  test('takes the vibration away at both sensors of any rotor that answers in proportion (law)', () => {
    fc.assert(
      fc.property(fc.array(vector, { minLength: 4, maxLength: 4 }), fc.array(vector, { minLength: 4, maxLength: 4 }), (coefficients, [u1, u2, t1, t2]) => {
        const [a, b, c, d] = coefficients.map(at) as unknown as readonly [Plane, Plane, Plane, Plane];
        fc.pre(length(plus(times(a, d), times(times(b, c), [-1, 0]))) > 0.1);
        const read = (p: Plane, q: Plane): TwoReadings => [phasor(plus(times(a, p), times(b, q))), phasor(plus(times(c, p), times(d, q)))];
        const [x, y] = [at(u1!), at(u2!)];
        const { correction } = balanceTwoPlanes(read(x, y), [t1!, t2!], read(plus(x, at(t1!)), y), read(x, plus(y, at(t2!))));
        expect(length(plus(x, at(correction![0])))).toBeLessThan(1e-7);
        expect(length(plus(y, at(correction![1])))).toBeLessThan(1e-7);
      }),
    );
  });

  test('says nothing where both sensors see both planes alike', () => {
    const run = (value: number): TwoReadings => [{ size: value, angle: 0 }, { size: 2 * value, angle: 0 }];
    const trial = { size: 1, angle: 0 };
    const found = balanceTwoPlanes(run(1), [trial, trial], run(3), run(4));
    expect(found.correction).toBeUndefined();
    expect(found.influence[1][1].size).toBeCloseTo(6, 12);
    expect(() => balanceTwoPlanes(run(1), [trial, { size: 0, angle: 0 }], run(3), run(4))).toThrow('each trial must have mass, got 0 kg');
  });
});

describe('balancing without phase', () => {
  test('finds what the phases would have told (law)', () => {
    fc.assert(
      fc.property(vector, vector, size, (unbalance, influence, trial) => {
        const reading = (place?: number): number => length(times(at(influence), plus(at(unbalance), place === undefined ? [0, 0] : at({ size: trial, angle: place }))));
        const third = (2 * Math.PI) / 3;
        const { correction, closure } = balanceFourRuns(reading(), trial, [reading(0), reading(third), reading(2 * third)]);
        expect(length(plus(at(unbalance), at(correction!)))).toBeLessThan(1e-6 * (unbalance.size + trial));
        expect(closure).toBeCloseTo(1, 6);
      }),
    );
  });

  test('says nothing where the runs contradict each other, and wants nothing where nothing shakes', () => {
    expect(balanceFourRuns(2, 1, [1, 1, 1])).toEqual({});
    expect(balanceFourRuns(0, 1, [1, 1, 1])).toEqual({ trialEffect: 1, correction: { size: 0, angle: 0 } });
    expect(() => balanceFourRuns(1, 0, [1, 1, 1])).toThrow('trial must have mass');
    expect(() => balanceFourRuns(1, 1, [1, -1, 1])).toThrow('readings must be 0 or more');
  });
});

describe('a mass shared between holes', () => {
  test('acts like the whole, and sits in two holes at most (law: sum of vectors)', () => {
    fc.assert(
      fc.property(vector, angle, fc.integer({ min: 3, max: 12 }), (mass, first, count) => {
        const places = Array.from({ length: count }, (_, index) => first + (index * 2 * Math.PI) / count);
        const shares = splitMass(mass, places)!;
        expect(length(plus(at(joinMasses(shares, places)), times(at(mass), [-1, 0])))).toBeLessThan(1e-9);
        expect(shares.every((share) => share >= 0)).toBe(true);
        expect(shares.filter((share) => share > 0).length).toBeLessThanOrEqual(2);
      }),
    );
  });

  test('whole in the hole that stands at its angle, in no hole when it is nothing', () => {
    expect(splitMass({ size: 2, angle: 1 }, [0, 1, 3])).toEqual([0, 2, 0]);
    expect(splitMass({ size: 0, angle: 1 }, [0, 2])).toEqual([0, 0]);
    expect(splitMass({ size: 0, angle: 3 }, [0, 1])).toEqual([0, 0]);
    // Rounding beside a hole is no reason to refuse, though the other hole lies straight across.
    expect(splitMass({ size: 1, angle: 1e-14 }, [0, Math.PI])).toEqual([1, 0]);
    expect(splitMass({ size: 1, angle: -1e-14 }, [0, Math.PI])).toEqual([1, 0]);
  });

  test('cannot be shared by holes on one side, or straight across', () => {
    expect(splitMass({ size: 1, angle: 3 }, [0, 1])).toBeUndefined();
    expect(splitMass({ size: 1, angle: 1 }, [0, Math.PI])).toBeUndefined();
    expect(splitMass({ size: 1, angle: 1 }, [0, Math.PI - 1e-13])).toBeUndefined();
    expect(() => splitMass({ size: 1, angle: 3 }, [0])).toThrow('at least two places');
  });
});

test('a heavier blade and a stiffer hinge rise less for the same pitch (law)', () => {
  const blade = { radius: 0.775, chord: 0.062, inertia: 0.05, density: 1.2, liftSlope: 5.73, flappingFrequencyRatio: 1 };
  expect(tipRisePerPitch({ ...blade, inertia: 0.1 }) / tipRisePerPitch(blade)).toBeCloseTo(0.5, 12);
  expect(tipRisePerPitch({ ...blade, flappingFrequencyRatio: 2 }) / tipRisePerPitch(blade)).toBeCloseTo(0.25, 12);
  expect(() => tipRisePerPitch({ ...blade, inertia: 0 })).toThrow('inertia must be positive, got 0');
  expect(() => tipRisePerPitch({ ...blade, flappingFrequencyRatio: 0.9 })).toThrow('at least 1');
});
