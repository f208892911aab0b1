import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invertRatio, multiplyRatios, ratio, ratioText, solveTrain, type TrainCoupling } from '../../src/index.ts';

const couple = (a: number, b: number, above: number, below: number, engaged = true): TrainCoupling => ({ a, b, ratio: ratio(above, below), engaged });
const texts = (solution: ReturnType<typeof solveTrain>): string[] => solution.ratios.map((value) => (value === 'decoupled' ? value : ratioText(value)));

describe('trains', () => {
  test('ratios multiply along the train, whichever way a coupling is written (by hand: −17/85 · −54/11 = 54/55)', () => {
    expect(texts(solveTrain(3, [couple(0, 1, -17, 85), couple(2, 1, -11, 54)], 0))).toEqual(['1', '-1/5', '54/55']);
  });

  test('an open clutch leaves what is behind it decoupled', () => {
    const couplings = [couple(0, 1, -17, 85), couple(1, 2, 1, 1, false), couple(2, 3, 9, 2)];
    expect(texts(solveTrain(4, couplings, 0))).toEqual(['1', '-1/5', 'decoupled', 'decoupled']);
    expect(texts(solveTrain(4, couplings, 2))).toEqual(['decoupled', 'decoupled', '1', '9/2']);
  });

  test('two ways that agree are no contradiction: 20/40 · 30/60 is 15/60 (by hand)', () => {
    expect(solveTrain(3, [couple(0, 1, 20, 40), couple(1, 2, 30, 60), couple(0, 2, 15, 60)], 0).contradictions).toEqual([]);
  });

  test('two ways that differ name the loop and both ratios', () => {
    // 0 → 1 → 2 → 3 gives 1/2 · 1/2 · 1 = 1/4; the closing coupling asks for 1/5. Shaft 4 hangs off the loop and is not in it.
    const couplings = [couple(0, 1, 1, 2), couple(1, 2, 1, 2), couple(2, 3, 1, 1), couple(1, 4, 3, 1), couple(0, 3, 1, 5)];
    const [contradiction, ...more] = solveTrain(5, couplings, 0).contradictions;
    expect(more).toEqual([]);
    expect(contradiction!.couplings.toSorted()).toEqual([0, 1, 2, 4]);
    // Breadth first, shaft 3 is reached straight from 0, so the ways meet at the far end of the coupling that the other branch cannot meet.
    expect([contradiction!.shaft, ...contradiction!.ratios.map(ratioText)]).toEqual([3, '1/5', '1/4']);
  });

  test('a loop that jams is found even where the source does not reach', () => {
    const couplings = [couple(1, 2, -1, 2), couple(2, 3, -1, 2), couple(3, 1, -4, 1)];
    const solution = solveTrain(4, couplings, 0);
    expect(texts(solution)).toEqual(['1', 'decoupled', 'decoupled', 'decoupled']);
    expect(solution.contradictions).toHaveLength(1);
  });

  test('a shaft coupled to itself at another speed jams', () => {
    expect(solveTrain(1, [couple(0, 0, 2, 1)], 0).contradictions).toEqual([{ shaft: 0, couplings: [0], ratios: [ratio(1), ratio(2)] }]);
    expect(solveTrain(1, [couple(0, 0, 1, 1)], 0).contradictions).toEqual([]);
  });

  test('a sound train with redundant ways gives every shaft its speed (law: speeds chosen first, couplings made from them)', () => {
    const speeds = fc.array(fc.tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 99 }), fc.boolean()), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(speeds, fc.array(fc.tuple(fc.nat(1000), fc.nat(1000)), { maxLength: 40 }), (list, extra) => {
        const speed = list.map(([above, below, back]) => ratio(back ? -above : above, below));
        const between = (a: number, b: number): TrainCoupling => ({ a, b, ratio: multiplyRatios(speed[b]!, invertRatio(speed[a]!)), engaged: true });
        const chain = speed.slice(1).map((_, index) => (index % 2 ? between(index + 1, index) : between(index, index + 1)));
        const couplings = [...chain, ...extra.map(([a, b]) => between(a % speed.length, b % speed.length))];
        const solution = solveTrain(speed.length, couplings, 0);
        expect(solution.contradictions).toEqual([]);
        expect(texts(solution)).toEqual(speed.map((value) => ratioText(multiplyRatios(value, invertRatio(speed[0]!)))));
      }),
    );
  });

  test('one falsified coupling of a ring is reported as that whole ring (law)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 40 }), fc.nat(), (count, which) => {
        const ring = Array.from({ length: count }, (_, index) => couple(index, (index + 1) % count, index === which % count ? 2 : 1, 1));
        const { contradictions } = solveTrain(count, ring, 0);
        expect(contradictions).toHaveLength(1);
        expect(contradictions[0]!.couplings.toSorted((a, b) => a - b)).toEqual(ring.map((_, index) => index));
      }),
    );
  });

  test('time grows in proportion: a hundred thousand shafts in a chain are no deep recursion', () => {
    const count = 100_000;
    const chain = Array.from({ length: count - 1 }, (_, index) => couple(index, index + 1, -1, 1));
    expect(solveTrain(count, chain, 0).ratios.at(-1)).toEqual(ratio(-1));
  });

  test('misuse is refused', () => {
    expect(() => solveTrain(2, [], 2)).toThrow('below 2, got 2');
    expect(() => solveTrain(2, [couple(0, 5, 1, 1)], 0)).toThrow('coupling 0');
    expect(() => solveTrain(2, [couple(0, 1, 0, 1)], 0)).toThrow('must not be 0');
  });
});
