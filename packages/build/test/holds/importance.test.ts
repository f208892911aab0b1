import { readFileSync } from 'node:fs';
import path from 'node:path';
import { readMachine } from '@rotorwright/machine';
import { minimalCutSets } from '@rotorwright/reliability';
import { describe, expect, it } from 'vitest';
import { gainWords, hazardChance, holds, importances, listLengths, omissionRange, shareWords, waysOfWorking } from '../../src/index.ts';
import { withOnly } from '../../src/holds/gate-book.ts';

const machine = readMachine(readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8')).machine!;
const model = holds(machine);
const of = (hazard: string) => model.hazards.get(hazard)!;

describe('what weighs in a hazard', () => {
  it('by hand: of two steps alike, each enough by itself, half each', () => {
    // P = 1 − 0.997² = 0.005991; without one of them 0.003: share 1 − 0.003/0.005991 = 0.49925. Gain 0.997.
    const weights = importances(model, of('free-wheel-jams'), 'ticked list')!;
    expect(weights).toHaveLength(2);
    for (const { share, gain } of weights) {
      expect(share.middle).toBeCloseTo(1 - 0.003 / 0.005991, 9);
      expect(gain.middle).toBeCloseTo(0.997, 9);
    }
  });

  it('law: shares lie between 0 and 1, from the weightiest down, and the ends of a range hold its middle', () => {
    for (const hazard of model.hazards.values()) {
      for (const way of waysOfWorking) {
        const weights = importances(model, hazard, way) ?? [];
        expect(weights.length > 0).toBe(hazardChance(model, hazard) !== undefined);
        for (const [at, { share, gain }] of weights.entries()) {
          for (const range of [share, gain]) for (const value of Object.values(range)) expect(value >= -1e-12 && value <= 1 + 1e-12).toBe(true);
          expect(share.low <= share.middle && share.middle <= share.high).toBe(true);
          expect(share.middle).toBeLessThanOrEqual(weights[at - 1]?.share.middle ?? 1);
        }
      }
    }
  });

  it('a single point by omission is enough by itself, where everything else is done', () => {
    const hazard = of('tail-drive-lost');
    const alone = new Set(hazard.singlePoints.filter(({ events }) => events.some(({ kind }) => kind === 'undone')).map(({ step }) => step));
    const weights = importances(model, hazard, 'second look')!.filter(({ step }) => alone.has(step));
    expect(weights.length).toBeGreaterThan(3);
    for (const weight of weights) {
      expect(gainWords(weight)).toBe('is enough by itself');
      expect(weight.gain.high).toBeGreaterThan(0.99);
    }
  });

  it('independent route: for rare events a share is that of the minimal cut sets that hold the step', () => {
    const hazard = of('tail-drive-lost');
    const tree = withOnly(hazard.tree!, (id) => ['undone', 'skipped', 'wrong'].includes(model.events.get(id)!.kind))!;
    const lengthOf = listLengths(model);
    const found = minimalCutSets(tree);
    const chances = Object.fromEntries(found.events.map((id) => [id, omissionRange('second look', lengthOf(model.events.get(id)!.step)).low]));
    const shares = found.fussellVesely(chances);
    for (const { step, share } of importances(model, hazard, 'second look')!) {
      const own = found.events.filter((id) => model.events.get(id)!.step === step);
      // Rare: the cut sets that hold two events of one step count for next to nothing.
      const sum = own.reduce((total, id) => total + shares[id]!, 0);
      expect(Math.min(Math.abs(share.low - sum), Math.abs(share.high - sum)), step).toBeLessThan(0.002);
    }
  });

  it('is worded as ranges', () => {
    expect(shareWords({ low: 0.1234, middle: 0.2, high: 0.4 })).toBe('12 to 40 %');
    expect(gainWords({ alone: false, gain: { low: 0.001, middle: 0.003, high: 0.009 } })).toBe('with others: 1 in 110 to 1,000');
  });
});
