import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figures, prepareDrive, solveDrive, speedsAt } from '@rotorwright/figures';
import { invertRatio, multiplyRatios, ratio, sameRatio } from '@rotorwright/mechanics';
import { onePair, ring, wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

const teeth = fc.integer({ min: 8, max: 200 });
const whole = read(wholeDrive);

describe('laws of every drive', () => {
  test('scaling the source scales every shaft and every frequency', () => {
    const one = figures(whole, { sourceSpeed: 1000 });
    fc.assert(fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (factor) => {
      const many = figures(whole, { sourceSpeed: 1000 * factor });
      for (const figure of many.all) {
        if (!/^(speed|mesh-frequency|blade-passing|sensor-frequency|tip-speed) /.test(figure.name)) continue;
        expect(figure.value! / one.get(figure.name)!.value!).toBeCloseTo(factor, 9);
      }
    }), { numRuns: 25 });
  });

  test('swapping driver and driven inverts the ratio and keeps the relation of the senses', () => {
    fc.assert(fc.property(teeth, teeth, fc.constantFrom('external', 'internal'), (first, second, kind) => {
      fc.pre(first !== second);
      const solve = (a: number, b: number) => solveDrive(read(onePair(`kind: ${kind}, driver: {on: a, teeth: ${a}}, driven: {on: b, teeth: ${b}}`))).states.get('driven')!.motions.get('b')!;
      const forth = solve(first, second);
      const back = solve(second, first);
      expect(sameRatio(forth.ratio!, invertRatio(back.ratio!))).toBe(true);
      expect(forth.sense).toBe(back.sense);
    }), { numRuns: 40 });
  });

  test('a loop is accepted exactly when the product of its ratios is 1', () => {
    fc.assert(fc.property(fc.integer({ min: 8, max: 60 }), fc.integer({ min: 61, max: 120 }), (pinion, gear) => {
      // Round the ring: a to b 20/40, b to c pinion/gear, c back to a 60/20.
      const product = multiplyRatios(multiplyRatios(ratio(20, 40), ratio(pinion, gear)), ratio(60, 20));
      const contradicts = solveDrive(read(ring([pinion, gear]))).findings.some((finding) => finding.code === 'drive/loop');
      expect(contradicts).toBe(!sameRatio(product, ratio(1)));
    }), { numRuns: 60 });
    // Both answers occur: 2/3 closes the ring.
    expect(solveDrive(read(ring([48, 72]))).findings).toEqual([]);
  });

  test('the prepared drive gives the same speeds as the figures, with their sense', () => {
    const prepared = prepareDrive(whole);
    const set = figures(whole, { sourceSpeed: 1234 });
    for (const [shaft, speed] of speedsAt(prepared, 1234)) {
      expect(Math.abs(speed)).toBeCloseTo(set.get(`speed ${shaft}`)!.value!, 9);
      expect(Math.sign(speed)).toBe(set.drive.states.get('driven')!.motions.get(shaft)!.sense);
    }
    expect(speedsAt(prepared, 1234).size).toBe(6);
  });
});
