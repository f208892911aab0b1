import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { servoTorque, type ServoDuty } from '../../src/index.ts';

const still: ServoDuty = { stiffness: 3, blades: 2, gains: [0, 0, 0], lowest: 0, highest: 0, cyclic: 0 };
const degrees = Math.PI / 180;

describe('torque of the blades at a servo', () => {
  // by hand: every blade at θ asks K·sin θ·cos θ, times what the servo gives to each
  it.each([1, 2, 3, 5])('of collective alone is the sum over %d blades', (blades) => {
    expect(servoTorque({ ...still, blades, gains: [0.4, 0, 0], lowest: 10 * degrees, highest: 10 * degrees })).toBeCloseTo(blades * 0.4 * 3 * Math.sin(10 * degrees) * Math.cos(10 * degrees), 12);
  });

  // by hand: both ends count, the harder one, whichever its sign; a steep range is hardest at 45° in its middle
  it('takes the harder end, and the middle where that is harder', () => {
    const at = (lowest: number, highest: number): number => servoTorque({ ...still, gains: [0.5, 0, 0], lowest: lowest * degrees, highest: highest * degrees });
    expect(at(-12, 5)).toBeCloseTo(1.5 * Math.sin(24 * degrees), 12);
    expect(at(-5, 12)).toBeCloseTo(1.5 * Math.sin(24 * degrees), 12);
    expect(at(30, 60)).toBeCloseTo(1.5, 12);
    expect(at(0, 0)).toBe(0);
  });

  // by hand: two blades across, one up by the cyclic, the other down, where the servo moves them most; K·sin 2c
  it.each([['forward', [0, 1, 0]], ['sideways', [0, 0, 1]], ['between the two', [0, Math.SQRT1_2, Math.SQRT1_2]], ['backward and sideways', [0, -Math.SQRT1_2, Math.SQRT1_2]]] as const)('of cyclic at a servo that leans the plate %s is K·sin 2c', (_way, gains) => {
    expect(servoTorque({ ...still, gains, cyclic: 8 * degrees })).toBeCloseTo(3 * Math.sin(16 * degrees), 12);
  });

  // law: over a small cyclic the sum over evenly spaced blades is B/2 of one, at any azimuth
  it.each([3, 4, 6])('of a small cyclic grows with the number of blades, %d', (blades) => {
    expect(servoTorque({ ...still, blades, gains: [0, 1, 0], cyclic: 1e-4 }) / 3e-4).toBeCloseTo(blades / 2, 5);
  });

  // by hand: about 45° every blade that cyclic moves asks less; three blades are never all unmoved but with the stick in the middle
  it('has the stick in the middle among those it tries', () => {
    expect(servoTorque({ ...still, blades: 3, gains: [1, 0, 0], lowest: 45 * degrees, highest: 45 * degrees, cyclic: 10 * degrees })).toBeCloseTo(4.5, 12);
  });

  // by hand: one blade, at the azimuth and stick where collective and cyclic add up: K/2·sin 2(θ + c)·(g₀ + g)
  it('adds cyclic to collective on a single blade', () => {
    expect(servoTorque({ ...still, blades: 1, gains: [0.3, 0.2, 0], lowest: 5 * degrees, highest: 5 * degrees, cyclic: 4 * degrees })).toBeCloseTo(1.5 * Math.sin(18 * degrees) * 0.5, 12);
    expect(servoTorque({ ...still, blades: 1, gains: [0.3, 0, 0.2], lowest: 5 * degrees, highest: 5 * degrees, cyclic: 4 * degrees })).toBeCloseTo(1.5 * Math.sin(18 * degrees) * 0.5, 12);
  });

  it('grows with the moment and with the gains, and does not ask for their sign (law)', () => {
    const angle = numberIn(-0.3, 0.3);
    const gain = numberIn(-2, 2);
    fc.assert(fc.property(fc.integer({ min: 1, max: 4 }), gain, gain, gain, angle, angle, numberIn(0, 0.2), numberIn(0.5, 4), (blades, g0, g1, g2, lowest, highest, cyclic, times) => {
      const duty: ServoDuty = { stiffness: 2, blades, gains: [g0, g1, g2], lowest, highest, cyclic };
      const torque = servoTorque(duty);
      expect(torque).toBeGreaterThanOrEqual(0);
      expect(servoTorque({ ...duty, stiffness: -2 * times })).toBeCloseTo(torque * times, 12);
      expect(servoTorque({ ...duty, gains: [-g0 * times, -g1 * times, -g2 * times] })).toBeCloseTo(torque * times, 12);
      // The other way up and the ends changed over, nothing is harder.
      expect(servoTorque({ ...duty, lowest: highest, highest: lowest })).toBeCloseTo(torque, 12);
      // No blade can ask for more than K/2 of its own gain.
      expect(torque).toBeLessThanOrEqual(blades * (Math.abs(g0) + Math.hypot(g1, g2)) + 1e-12);
    }), { numRuns: 60 });
  });

  it.each([['stiffness', { stiffness: Number.NaN }], ['gains', { gains: [0, Number.NaN, 0] }], ['lowest', { lowest: Number.NaN }], ['highest', { highest: Number.NaN }], ['cyclic', { cyclic: Number.NaN }]] as const)('is refused without a number of %s', (_name, wrong) => {
    expect(() => servoTorque({ ...still, ...wrong })).toThrow(new RangeError('servoTorque: finite numbers are needed, got NaN'));
  });

  it.each([0, -1, 1.5, Number.NaN])('is refused for %d blades', (blades) => {
    expect(() => servoTorque({ ...still, blades })).toThrow(new RangeError(`servoTorque: blades must be a whole number from 1 on, got ${blades}`));
  });
});
