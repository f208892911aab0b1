import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../tests/number-in.ts';
import { airAt, saturationPressure } from '../src/index.ts';

const altitude = numberIn(-2000, 20_000);
const offset = numberIn(-40, 40);
const humidity = numberIn(0, 1);

describe('air', () => {
  test('pressure holds up the air above it: dp/dH = −ρ·g on a standard day (law)', () => {
    fc.assert(
      fc.property(numberIn(-1900, 19_900), (height) => {
        fc.pre(Math.abs(height - 11_000) > 10);
        const slope = (airAt(height + 1).pressure - airAt(height - 1).pressure) / 2;
        expect(slope / (-airAt(height).density * 9.80665)).toBeCloseTo(1, 6);
      }),
    );
  });

  test('warmth at the same pressure thins dry air in proportion (law: ideal gas)', () => {
    fc.assert(
      fc.property(altitude, offset, (height, warmer) => {
        const [standard, warm] = [airAt(height), airAt(height, warmer)];
        expect(warm.pressure).toBe(standard.pressure);
        expect((warm.density * warm.temperature) / (standard.density * standard.temperature)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('damp air is lighter, and sound is quicker in it (law)', () => {
    fc.assert(
      fc.property(numberIn(-2000, 8000), offset, humidity, (height, warmer, damp) => {
        const [dry, wet] = [airAt(height, warmer), airAt(height, warmer, damp)];
        expect(wet.density).toBeLessThanOrEqual(dry.density);
        expect(wet.speedOfSound).toBeGreaterThanOrEqual(dry.speedOfSound);
      }),
    );
  });

  test('nothing jumps where the temperature stops falling (law: continuity at 11,000 m)', () => {
    const [below, above] = [airAt(11_000 - 1e-6), airAt(11_000 + 1e-6)];
    expect(above.pressure / below.pressure).toBeCloseTo(1, 9);
    expect(above.temperature).toBeCloseTo(below.temperature, 7);
  });

  test('all values are finite over the whole range, and all but the density altitude are positive (law)', () => {
    fc.assert(
      fc.property(altitude, offset, humidity, (height, warmer, damp) => {
        const { densityAltitude, ...positive } = airAt(height, warmer, damp);
        expect(Number.isFinite(densityAltitude)).toBe(true);
        for (const value of Object.values(positive)) expect(value > 0 && Number.isFinite(value)).toBe(true);
      }),
    );
  });

  test('saturated vapour at 20 °C presses with 2,339 Pa (published: IAPWS steam tables, from memory)', () => {
    expect(saturationPressure(293.15) / 2339).toBeCloseTo(1, 2);
  });

  test('misuse is refused', () => {
    expect(() => airAt(30_000)).toThrow('pressureAltitude [m]');
    expect(() => airAt(0, 0, 1.2)).toThrow('relativeHumidity');
    expect(() => airAt(0, Number.NaN)).toThrow('temperature [K]');
  });
});

test('on a standard day the density altitude is the altitude, in both layers; warm and damp air stands higher (law)', () => {
  for (const altitude of [-1500, 0, 800, 5000, 10_900, 11_000, 11_200, 18_000]) expect(airAt(altitude).densityAltitude).toBeCloseTo(altitude, 5);
  expect(airAt(0, 20).densityAltitude).toBeGreaterThan(600);
  expect(airAt(0, 20, 0.9).densityAltitude).toBeGreaterThan(airAt(0, 20).densityAltitude);
});
