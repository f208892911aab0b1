import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { torsionModes } from '../../src/shafts/index.ts';

const ones = (count: number): number[] => Array.from({ length: count }, () => 1);
const chain = fc.integer({ min: 2, max: 7 }).chain((count) =>
  fc.record({
    inertias: fc.array(fc.double({ min: 1e-6, max: 1e-2, noNaN: true }), { minLength: count, maxLength: count }),
    stiffnesses: fc.array(fc.double({ min: 1, max: 1e4, noNaN: true }), { minLength: count - 1, maxLength: count - 1 }),
    speedRatios: fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: count, maxLength: count }),
  }),
);

describe('a chain of inertias', () => {
  // published: system of Thomson, Theory of Vibration, example 12.4-1; the frequencies are the roots of its quadratic in ω²
  test('of three discs swings at the roots of its characteristic equation', () => {
    const [first, second] = torsionModes([5, 11, 22], [1e5, 2e5], ones(3)).angularFrequencies;
    expect(first! / 123.66580008320881).toBeCloseTo(1, 12);
    expect(second! / 202.65834859046936).toBeCloseTo(1, 12);
  });

  // law: the equations of motion hold for each inertia on the first shaft, −ω²Jθ = Σ torques
  test('moves as Newton says', () => {
    fc.assert(
      fc.property(chain, ({ inertias, stiffnesses, speedRatios }) => {
        const { angularFrequencies, shapes } = torsionModes(inertias, stiffnesses, speedRatios);
        expect(angularFrequencies).toHaveLength(inertias.length - 1);
        angularFrequencies.forEach((omega, mode) => {
          const theta = shapes[mode]!.map((angle, i) => angle / speedRatios[i]!);
          const torques = stiffnesses.map((k, i) => k * speedRatios[i]! ** 2 * (theta[i + 1]! - theta[i]!));
          const scale = Math.max(...torques.map(Math.abs));
          inertias.forEach((inertia, i) => {
            const force = omega ** 2 * inertia * speedRatios[i]! ** 2 * theta[i]! + (torques[i] ?? 0) - (torques[i - 1] ?? 0);
            expect(Math.abs(force) / scale).toBeLessThan(1e-5);
          });
        });
      }),
    );
  });

  // law: ω² is stiffness over inertia; a stiffer shaft lowers no frequency
  test('rises with stiffness', () => {
    fc.assert(
      fc.property(chain, fc.double({ min: 1, max: 9, noNaN: true }), ({ inertias, stiffnesses, speedRatios }, factor) => {
        const before = torsionModes(inertias, stiffnesses, speedRatios).angularFrequencies;
        const all = torsionModes(inertias, stiffnesses.map((k) => k * factor), speedRatios).angularFrequencies;
        const one = torsionModes(inertias, [stiffnesses[0]! * factor, ...stiffnesses.slice(1)], speedRatios).angularFrequencies;
        const top = before.at(-1)!;
        before.forEach((omega, i) => {
          expect(Math.abs(all[i]! - omega * Math.sqrt(factor)) / (top * Math.sqrt(factor))).toBeLessThan(1e-9);
          expect(one[i]! - omega).toBeGreaterThan(-1e-9 * top);
        });
      }),
    );
  });

  // law: turned end for end without gears, the chain is the same
  test('does not care which end comes first', () => {
    fc.assert(
      fc.property(chain, ({ inertias, stiffnesses }) => {
        const there = torsionModes(inertias, stiffnesses, ones(inertias.length)).angularFrequencies;
        const back = torsionModes(inertias.toReversed(), stiffnesses.toReversed(), ones(inertias.length)).angularFrequencies;
        there.forEach((omega, i) => expect(Math.abs(back[i]! - omega) / there.at(-1)!).toBeLessThan(1e-9));
      }),
    );
  });

  // by hand: behind a gear that doubles the speed, 1 kg·m² counts as 4: ω² = k(1/J₁ + 1/(4J₂)) = 2(1 + 1/4) = 2.5; it swings against the first by 1 to 4, twice as far on its own shaft
  test('refers what turns faster by the square of the ratio', () => {
    const { angularFrequencies, shapes } = torsionModes([1, 1], [2], [1, 2]);
    expect(angularFrequencies[0]! ** 2).toBeCloseTo(2.5, 12);
    expect(shapes[0]![1]! / shapes[0]![0]!).toBeCloseTo(-0.5, 12);
    expect(torsionModes([1, 1], [2], [1, -2]).shapes[0]![1]! / torsionModes([1, 1], [2], [1, -2]).shapes[0]![0]!).toBeCloseTo(0.5, 12);
  });

  test('with entries that do not fit is refused', () => {
    expect(() => torsionModes([1, 1], [1, 1], [1, 1])).toThrow(/n − 1 stiffnesses/);
    expect(() => torsionModes([1, 0], [1], [1, 1])).toThrow(/positive/);
    expect(() => torsionModes([1, 1], [1], [1, 0])).toThrow(/not 0/);
  });
});
