import { describe, expect, test } from 'vitest';
import { servoTorque } from '../../src/index.ts';

const duty = { stiffness: 2.4, blades: 2, gains: [0.21, 0.34, -0.12], lowest: -0.15, highest: 0.23, cyclic: 0.13 } as const;

describe('servoTorque', () => {
  test.each([duty, { ...duty, blades: 3 }, { ...duty, blades: 5, gains: [0, -0.3, 0.4] as const }, { ...duty, cyclic: 0 }])('is the largest sum over the blades of all sticks and places (independent route: each stick and place by itself): %j', (given) => {
    const { stiffness, blades, gains: [collectiveGain, cosineGain, sineGain], lowest, highest, cyclic } = given;
    const sums: number[] = [];
    for (const collective of [lowest, (lowest + highest) / 2, highest]) {
      for (const [size, lean] of [[0, 0], ...Array.from({ length: 8 }, (_, index) => [cyclic, (index * Math.PI) / 4])] as [number, number][]) {
        for (let place = 0; place < 72; place += 1) {
          let sum = 0;
          for (let blade = 0; blade < blades; blade += 1) {
            const azimuth = (place * Math.PI) / 36 + (2 * Math.PI * blade) / blades;
            const pitch = collective + size * Math.cos(azimuth - lean);
            sum += stiffness * Math.sin(pitch) * Math.cos(pitch) * (collectiveGain + cosineGain * Math.cos(azimuth) + sineGain * Math.sin(azimuth));
          }
          sums.push(Math.abs(sum));
        }
      }
    }
    expect(servoTorque(given) / Math.max(...sums)).toBeCloseTo(1, 12);
  });

  test('grows in proportion to the moment, whichever sign it has (law)', () => {
    expect(servoTorque({ ...duty, stiffness: -3 * duty.stiffness })).toBeCloseTo(3 * servoTorque(duty), 12);
  });

  test('refuses what is no number, and a rotor without blades', () => {
    expect(() => servoTorque({ ...duty, cyclic: Number.NaN })).toThrow(/finite/u);
    expect(() => servoTorque({ ...duty, blades: 0 })).toThrow(/whole number from 1/u);
  });
});
