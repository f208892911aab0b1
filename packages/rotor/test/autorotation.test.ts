import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { autorotationDescentRatio, minimumRotorSpeed, rotorDecayTime, tipMach, tipSpeed } from '../src/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('autorotation', () => {
  test('the rotor slows as the equation of motion says (independent route: stepped in time)', () => {
    const [inertia, speed, power, minimum] = [0.09, 180, 450, 120];
    let now = speed;
    let time = 0;
    const step = 1e-5;
    while (now > minimum) {
      const middle = now - ((step / 2) * power * now ** 2) / (inertia * speed ** 3);
      now -= (step * power * middle ** 2) / (inertia * speed ** 3);
      time += step;
    }
    expect(rotorDecayTime(inertia, speed, power, minimum)).toBeCloseTo(time, 4);
  });

  test('in the windmill brake state momentum and power balance (law: ν(ν + x) = 1 with κ = 1)', () => {
    fc.assert(
      fc.property(between(1.1, 5), (powerRatio) => {
        const ratio = autorotationDescentRatio(powerRatio, 1);
        const induced = ratio - powerRatio;
        // Flow up through the disc ratio − ν, thrust in units of 2ρA·v_h².
        expect(induced * (ratio - induced)).toBeCloseTo(1, 8);
      }),
    );
  });

  test('more profile power, or a larger induced factor, means a faster descent (law)', () => {
    fc.assert(
      fc.property(between(0, 3), between(0, 1), between(1, 1.4), (powerRatio, more, factor) => {
        expect(autorotationDescentRatio(powerRatio + more, factor)).toBeGreaterThanOrEqual(autorotationDescentRatio(powerRatio, factor) - 1e-12);
        expect(autorotationDescentRatio(powerRatio, factor + more)).toBeGreaterThanOrEqual(autorotationDescentRatio(powerRatio, factor) - 1e-12);
      }),
    );
  });

  test('a value in the step between the two branches is 2 (by hand: κ = 1 and P₀ = 0.99 lie between 1.974 − 1 and 2 − 1)', () => {
    expect(autorotationDescentRatio(0.99, 1)).toBe(2);
    expect(autorotationDescentRatio(0.97, 1)).toBeLessThan(2);
    expect(autorotationDescentRatio(1.01, 1)).toBeGreaterThan(2);
  });

  test('blades that carry four times what they need may turn half as fast (law)', () => {
    expect(minimumRotorSpeed(180, 0.05, 0.2, 1)).toBeCloseTo(90, 12);
  });

  test('misuse is refused', () => {
    expect(() => autorotationDescentRatio(-1, 1.15)).toThrow('powerRatio');
    expect(() => autorotationDescentRatio(1, 0)).toThrow('inducedFactor');
  });
});

describe('tips', () => {
  test('speed grows with radius and rotor speed, and does not ask for the sense (law)', () => {
    fc.assert(
      fc.property(between(-400, 400), between(0.01, 2), (speed, radius) => {
        expect(tipSpeed(-speed, radius)).toBe(tipSpeed(speed, radius));
        expect(tipSpeed(speed, 2 * radius)).toBeCloseTo(2 * tipSpeed(speed, radius), 9);
        expect(tipMach(tipSpeed(speed, radius), 340, 20)).toBeCloseTo((Math.abs(speed) * radius + 20) / 340, 9);
      }),
    );
    expect(() => tipSpeed(Number.NaN, 1)).toThrow('speed [rad/s]');
    expect(() => tipMach(100, 0)).toThrow('speedOfSound');
  });
});
