import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { axialInducedSpeed, groundEffectPowerShare, smallAngleHover, thrustCoefficientAtPitch, thrustUnderDownload } from '../src/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

test('what passes through the disc carries the thrust, v·|V + v| = v_h², wherever there is a steady wake (law)', () => {
  fc.assert(
    fc.property(between(-40, 40), between(0.1, 8), (climbRate, hoverSpeed) => {
      const induced = axialInducedSpeed(climbRate, hoverSpeed);
      expect(induced === undefined).toBe(climbRate < 0 && climbRate > -2 * hoverSpeed);
      if (induced !== undefined) expect(induced * Math.abs(climbRate + induced)).toBeCloseTo(hoverSpeed ** 2, 8);
    }),
  );
});

test('the ground helps less the higher the rotor, and nothing below half a radius is answered', () => {
  fc.assert(fc.property(between(0.5, 9), between(0.01, 1), (height, more) => void expect(groundEffectPowerShare(height + more)).toBeGreaterThan(groundEffectPowerShare(height))));
  expect(() => groundEffectPowerShare(0.4)).toThrow('at least 0.5');
});

test('the thrust holds the weight and what its own wake pushes down (law: ½ρ(2v)²·f, v² = T/2ρA)', () => {
  fc.assert(
    fc.property(between(1, 200), between(0, 0.5), between(1, 4), (weight, dragArea, discArea) => {
      const thrust = thrustUnderDownload(weight, dragArea, discArea);
      const wake = 2 * Math.sqrt(thrust / (2 * 1.1 * discArea));
      expect(weight + 0.5 * 1.1 * wake ** 2 * dragArea).toBeCloseTo(thrust, 8);
    }),
  );
  expect(() => thrustUnderDownload(50, 2, 2)).toThrow('between 0 and the disc, 2, got 2');
});

test('rings that find their own inflow need more power than an even disc (law), and give nearly its thrust (independent route: uniform inflow, within 10 %)', () => {
  fc.assert(
    fc.property(between(0.02, 0.15), between(0.02, 0.25), (solidity, pitch) => {
      const { thrustCoefficient, inducedFactor } = smallAngleHover(solidity, 5.73, pitch);
      expect(inducedFactor).toBeGreaterThan(1);
      expect(Math.abs(thrustCoefficient / thrustCoefficientAtPitch({ solidity, liftSlope: 5.73 }, pitch) - 1)).toBeLessThan(0.1);
    }),
  );
});
