import { describe, expect, it } from 'vitest';
import { isUnit, listedUnits, nearestUnit, unit } from '../src/index.ts';

// Each row: unit, value of one of it in SI, where the number comes from.
// "SI" is the SI Brochure, 9th edition (2019), tables 1, 4, 7 and 8 (from memory): exact by definition.
const known: readonly (readonly [string, number, string])[] = [
  ['mm', 0.001, 'published: SI, prefix milli'],
  ['µm', 0.000001, 'published: SI, prefix micro (U+00B5)'],
  ['\u03BCm', 0.000001, 'published: SI, prefix micro (U+03BC)'],
  ['cm', 0.01, 'published: SI, prefix centi'],
  ['m', 1, 'published: SI, base unit'],
  ['km', 1000, 'published: SI, prefix kilo'],
  ['in', 0.0254, 'published: yard and pound agreement 1959, 25.4 mm exactly (from memory)'],
  ['g', 0.001, 'published: SI, kilogram is the base unit'],
  ['mg', 0.000001, 'published: SI, prefix milli on gram'],
  ['kg', 1, 'published: SI, base unit'],
  ['s', 1, 'published: SI, base unit'],
  ['µs', 0.000001, 'published: SI, prefix micro (U+00B5)'],
  ['\u03BCs', 0.000001, 'published: SI, prefix micro (U+03BC)'],
  ['ms', 0.001, 'published: SI, prefix milli'],
  ['min', 60, 'published: SI, table 8'],
  ['h', 3600, 'published: SI, table 8'],
  ['day', 86400, 'published: SI, table 8'],
  ['days', 86400, 'published: SI, table 8'],
  ['Hz', 1, 'published: SI, table 4'],
  ['kHz', 1000, 'published: SI, prefix kilo'],
  ['rad', 1, 'published: SI, table 4'],
  ['°', 0.017453292519943295, 'published: SI, table 8, π/180'],
  ['rpm', 0.10471975511965977, 'by hand: 2π/60 = 6.283185307179586/60'],
  ['N', 1, 'published: SI, table 4'],
  ['kN', 1000, 'published: SI, prefix kilo'],
  ['N·m', 1, 'published: SI, table 6'],
  ['Nm', 1, 'published: SI, table 6'],
  ['N*m', 1, 'published: SI, table 6'],
  ['N m', 1, 'published: SI, section 5.4.6, a space multiplies'],
  ['N⋅m', 1, 'published: SI, dot operator U+22C5'],
  ['Pa', 1, 'published: SI, table 4'],
  ['hPa', 100, 'published: SI, prefix hecto'],
  ['kPa', 1000, 'published: SI, prefix kilo'],
  ['MPa', 1e6, 'published: SI, prefix mega'],
  ['GPa', 1e9, 'published: SI, prefix giga'],
  ['√Pa', 1, 'definition: its square is 1 Pa'],
  ['√MPa', 1e3, 'definition: its square is 1 MPa'],
  ['W', 1, 'published: SI, table 4'],
  ['kW', 1000, 'published: SI, prefix kilo'],
  ['J', 1, 'published: SI, table 4'],
  ['kJ', 1000, 'published: SI, prefix kilo'],
  ['Wh', 3600, 'by hand: 1 W × 3600 s'],
  ['A', 1, 'published: SI, base unit'],
  ['mA', 0.001, 'published: SI, prefix milli'],
  ['Ah', 3600, 'by hand: 1 A × 3600 s'],
  ['mAh', 3.6, 'by hand: 0.001 A × 3600 s'],
  ['V', 1, 'published: SI, table 4'],
  ['\u03A9', 1, 'published: SI, table 4 (Greek omega)'],
  ['\u2126', 1, 'published: SI, table 4 (ohm sign)'],
  ['m\u03A9', 0.001, 'published: SI, prefix milli'],
  ['m\u2126', 0.001, 'published: SI, prefix milli'],
  ['l', 0.001, 'published: SI, table 8'],
  ['L', 0.001, 'published: SI, table 8'],
  ['ml', 0.000001, 'published: SI, prefix milli on litre'],
  ['mL', 0.000001, 'published: SI, prefix milli on litre'],
  ['K', 1, 'published: SI, base unit'],
  ['°C', 1, 'published: SI, section 2.3.1, a degree is as large as a kelvin'],
  ['%', 0.01, 'published: SI, section 5.4.7'],
  ['cm³', 1e-6, 'by hand: 0.01³'],
  ['cm3', 1e-6, 'by hand: 0.01³'],
  ['cm^3', 1e-6, 'by hand: 0.01³'],
  ['mm²', 1e-6, 'by hand: 0.001²'],
  ['m/s', 1, 'by hand'],
  ['m/s²', 1, 'by hand'],
  ['km/h', 0.2777777777777778, 'by hand: 1000/3600'],
  ['rpm/V', 0.10471975511965977, 'by hand: 2π/60'],
  ['kg·m²', 1, 'by hand'],
  ['N·m/rad', 1, 'by hand'],
  ['N·m/°', 57.29577951308232, 'by hand: 180/π'],
  ['g·mm', 1e-6, 'by hand: 0.001 × 0.001'],
  ['g/cm³', 1000, 'by hand: 0.001/1e-6'],
  ['1/K', 1, 'by hand'],
  ['/K', 1, 'by hand'],
  ['K⁻¹', 1, 'by hand'],
  ['K^-1', 1, 'by hand'],
  ['J/(kg·K)', 1, 'by hand'],
  ['N/mm²', 1e6, 'by hand: 1/1e-6, which is a megapascal'],
  ['mm⁴', 1e-12, 'by hand: 0.001⁴'],
];

function spelt(text: string): unknown {
  const read = unit(text);
  return isUnit(read) ? read.symbol : read;
}

describe('units', () => {
  it.each(known)('%s has the factor %d (%s)', (text, factor) => {
    const read = unit(text);
    if (!isUnit(read)) throw new Error(JSON.stringify(read));
    expect(read.factor).toBeCloseTo(factor, 15 - Math.ceil(Math.log10(Math.max(1, factor))));
    expect(Math.abs(read.factor / factor - 1)).toBeLessThan(1e-14);
  });

  it('every listed unit is in this table', () => {
    const tested = new Set(known.map(([text]) => text));
    for (const listed of listedUnits) for (const spelling of [listed.symbol, ...(listed.spellings ?? [])]) expect(tested).toContain(spelling);
  });

  it('names every spelling once', () => {
    const spellings = listedUnits.flatMap((listed) => [listed.symbol, ...(listed.spellings ?? [])]);
    expect(new Set(spellings).size).toBe(spellings.length);
  });

  it('takes no prefix that is not listed', () => {
    for (const text of ['Mm', 'dm', 'hm', 'kK', 'mrad', 'krpm', 'mN', 'MW', 'ns']) expect(isUnit(unit(text)), text).toBe(false);
  });

  // Expected: what a person who writes the slip most likely meant; no source.
  it.each([
    ['gr', 'g'], ['Mm', 'mm'], ['RPM', 'rpm'], ['Kg', 'kg'], ['um', 'µm'], ['NM', 'N·m'], ['Ncm', 'N·m'], ['degC', '°C'], ['deg', '°'], ['ohm', 'Ω'], ['hrs', 'h'],
    ['cc', 'cm³'], ['mpa', 'MPa'], ['kv', 'rpm/V'], ['mAH', 'mAh'], ['khz', 'kHz'],
  ])('%s is nearest to %s', (slip, meant) => {
    expect(nearestUnit(slip)).toBe(meant);
  });

  it.each([
    ['N·m·°C', /use K/], ['°C²', /use K/], ['1/°C', /use K/], ['J/kg/K', /one '\/'/], ['J/kg·K', /\/\(kg·K\)/], ['mm0', /whole number/], ['mm^9', /whole number/],
  ])('%s is refused with what would be right', (text, reason) => {
    const read = unit(text);
    expect(read).toMatchObject({ problem: 'unit-misplaced' });
    expect('reason' in read && read.reason).toMatch(reason);
  });

  it('spells what it read in one way', () => {
    expect(['Nm', 'N*m', 'N m', 'N · m'].map(spelt)).toEqual(['N·m', 'N·m', 'N·m', 'N·m']);
    expect(['kg*m^2', 'J/(kg K)', 's^-1', 'μm', 'g/cm3', 'rpm / V'].map(spelt)).toEqual(['kg·m²', 'J/(kg·K)', '1/s', 'µm', 'g/cm³', 'rpm/V']);
  });
});
