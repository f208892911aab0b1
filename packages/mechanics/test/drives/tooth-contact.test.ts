import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beltTurnFrequency, passingFrequency, toothHunting } from '../../src/index.ts';

const teeth = fc.integer({ min: 5, max: 200 });

describe('which teeth meet, and how often', () => {
  test('the same teeth meet again after the count that stepping tooth by tooth gives (independent route)', () => {
    fc.assert(
      fc.property(teeth, teeth, (teeth1, teeth2) => {
        let meshes = 1;
        while (meshes % teeth1 !== 0 || meshes % teeth2 !== 0) meshes += 1;
        const hunting = toothHunting(teeth1, teeth2);
        expect(hunting.pinionTurnsToRepeat).toBe(meshes / teeth1);
        expect(hunting.huntingFrequencyRatio).toBeCloseTo(1 / meshes, 15);
      }),
      { numRuns: 50 },
    );
  });

  test('coprime counts let every tooth meet every other: 17 and 85 do not, 17 and 84 do (by hand)', () => {
    expect(toothHunting(17, 85)).toEqual({ commonFactor: 17, pinionTurnsToRepeat: 5, huntingFrequencyRatio: 17 / 17 / 85 });
    expect(toothHunting(17, 84).commonFactor).toBe(1);
  });

  test('a passing frequency does not ask for the sense of rotation (law)', () => {
    expect(passingFrequency(2, -180)).toBe(passingFrequency(2, 180));
    // By hand: 1,800 rpm are 30 turns a second, two blades pass 60 times.
    expect(passingFrequency(2, (1800 * 2 * Math.PI) / 60)).toBeCloseTo(60, 12);
  });

  test('a belt comes round as often from either pulley (law)', () => {
    expect(beltTurnFrequency(20, 500, 400)).toBeCloseTo(beltTurnFrequency(80, 125, 400), 12);
  });

  test('misuse is refused', () => {
    expect(() => toothHunting(17.5, 85)).toThrow('teeth1 must be a positive whole number, got 17.5');
    expect(() => passingFrequency(2, Number.NaN)).toThrow('must be finite');
    expect(() => beltTurnFrequency(20, 1, 0)).toThrow('beltTeeth');
  });
});
