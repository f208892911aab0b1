import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromUnit, inUnit, isProblem, listedUnits, readQuantity, showNumber, showQuantity, writeQuantity } from '../src/index.ts';

describe('a shown quantity', () => {
  // By hand: value divided by the factor of the unit, rounded half away.
  it.each([
    [(1760 * Math.PI) / 30, 'rpm', undefined, '1,760 rpm'],
    [(14_623.4 * Math.PI) / 30, 'rpm', undefined, '14,623 rpm'],
    [0.0014, 'mm', undefined, '1.4 mm'],
    [0.0014, 'mm', { decimals: 2 }, '1.40 mm'],
    [Math.PI / 2, '°', undefined, '90°'],
    [293.15, '°C', undefined, '20 °C'],
    [-0.001, 'mm', undefined, '−1 mm'],
    [2, 'Nm', { significant: 2 }, '2 N·m'],
    [0.996, '-', undefined, '0.996'],
    [1234567, '', { grouped: false }, '1234567'],
    [0, 'mm', undefined, '0 mm'],
    [0, 'mm', { decimals: 1 }, '0.0 mm'],
    [-1e-9, 'mm', { decimals: 2 }, '0.00 mm'],
    [23e-6, '1/K', undefined, '2.3×10⁻⁵ 1/K'],
    [0.25, '%', undefined, '25 %'],
  ] as const)('%d in %s with %o is %s', (value, unit, options, text) => {
    expect(showQuantity(value, unit, options)).toBe(text);
  });

  it('refuses to show what is no number, and names the unit it does not know', () => {
    for (const value of [NaN, Infinity, -Infinity]) expect(() => showQuantity(value, 'mm')).toThrow(/must be finite/);
    expect(() => showNumber(NaN)).toThrow(/must be finite/);
    expect(() => showQuantity(1, 'gr')).toThrow(/“gr”/);
    expect(() => inUnit(1, 'gr')).toThrow(/inUnit.*“gr”/);
    expect(() => fromUnit(1, 'gr')).toThrow(/fromUnit.*“gr”/);
  });

  const listed = fc.constantFrom(...listedUnits.map((one) => one.symbol));
  const value = fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((n) => n === 0 || Math.abs(n) > 1e-9);

  it('law: what is written reads back to the same value', () => {
    fc.assert(fc.property(value, listed, (number, unit) => {
      const si = fromUnit(number, unit);
      const read = readQuantity(writeQuantity(si, unit));
      if (isProblem(read)) throw new Error(JSON.stringify(read));
      // 14 figures are kept; an offset of 273.15 loses a few of them near zero.
      expect(Math.abs(read.value - si)).toBeLessThanOrEqual(Math.abs(si) * 1e-12 + (unit === '°C' ? 1e-9 : 0));
    }));
  });

  it('law: a shown quantity without commas reads back within its figures', () => {
    fc.assert(fc.property(fc.double({ min: 0.001, max: 1e6, noNaN: true }), listed, (number, unit) => {
      const si = fromUnit(number, unit);
      const read = readQuantity(showQuantity(si, unit, { significant: 6, grouped: false }));
      if (isProblem(read)) throw new Error(JSON.stringify(read));
      expect(Math.abs(inUnit(read.value, unit) - number)).toBeLessThanOrEqual(number * 5.1e-6 + 1e-9);
    }));
  });

  it('law: inUnit undoes fromUnit', () => {
    fc.assert(fc.property(value, listed, (number, unit) => {
      expect(Math.abs(inUnit(fromUnit(number, unit), unit) - number)).toBeLessThanOrEqual(Math.abs(number) * 1e-12 + (unit === '°C' ? 1e-9 : 0));
    }));
  });
});
