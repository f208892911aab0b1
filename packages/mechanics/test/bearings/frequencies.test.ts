import { bearingFrequencyRatios } from '@rotorwright/mechanics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';

describe('frequencies of a rolling bearing', () => {
  it('meets the printed multipliers of a deep-groove bearing 6205', () => {
    // Published: multipliers 3.5848, 5.4152, 0.39828 and 4.7135 in public files; diameters 0.3126 in and 1.537 in (from memory).
    // The last one is the strike frequency of a flaw on a ball, twice the turns of the ball.
    const ratios = bearingFrequencyRatios({ rollingElements: 9, elementDiameter: 0.3126, pitchDiameter: 1.537, contactAngle: 0 });
    expect(Math.abs(ratios.outerRace - 3.5848)).toBeLessThan(6e-5);
    expect(Math.abs(ratios.innerRace - 5.4152)).toBeLessThan(6e-5);
    expect(Math.abs(ratios.cage - 0.39828)).toBeLessThan(5e-5);
    expect(Math.abs(2 * ratios.element - 4.7135)).toBeLessThan(6e-5);
  });

  it('has the races share all passes, and the cage carry the elements past the outer race', () => {
    const geometry = fc.record({
      rollingElements: fc.integer({ min: 1, max: 60 }),
      elementDiameter: fc.double({ min: 0.0005, max: 0.0099, noNaN: true }),
      pitchDiameter: fc.double({ min: 0.01, max: 0.1, noNaN: true }),
      contactAngle: numberIn(0, 1.5),
    });
    fc.assert(
      fc.property(geometry, (bearing) => {
        const ratios = bearingFrequencyRatios(bearing);
        expect(ratios.outerRace + ratios.innerRace).toBeCloseTo(bearing.rollingElements, 9);
        expect(ratios.cage * bearing.rollingElements).toBeCloseTo(ratios.outerRace, 9);
        expect(ratios.element).toBeGreaterThan(0);
      }),
    );
  });

  it.each([
    [{ rollingElements: 7.5 }, /whole number/],
    [{ elementDiameter: 0.01 }, /elementDiameter < pitchDiameter/],
    [{ elementDiameter: 0.008 }, /elementDiameter < pitchDiameter/],
    [{ contactAngle: Number.NaN }, /contactAngle/],
  ])('refuses %o', (change, message) => {
    const bearing = { rollingElements: 8, elementDiameter: 0.002, pitchDiameter: 0.008, contactAngle: 0, ...change };
    expect(() => bearingFrequencyRatios(bearing)).toThrow(message);
  });
});
