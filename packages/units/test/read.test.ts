import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionName, isProblem, isUnit, listedUnits, readQuantity, readSize, readWindow, sameDimension, unit, type Quantity, type QuantityWindow } from '../src/index.ts';

function quantity(text: string): Quantity {
  const read = readQuantity(text);
  if (isProblem(read)) throw new Error(JSON.stringify(read));
  return read;
}
function window(text: string): QuantityWindow {
  const read = readWindow(text);
  if (isProblem(read)) throw new Error(JSON.stringify(read));
  return read;
}

describe('a quantity', () => {
  // By hand: number times the factor of the unit.
  it.each([
    ['14 mm', 0.014], ['14mm', 0.014], ['  14   mm ', 0.014], ['.5 mm', 0.0005], ['5. mm', 0.005], ['1e-3 m', 0.001], ['1E+2 m', 100], ['+2 g', 0.002], ['-20 °C', 253.15], ['−20 °C', 253.15],
    ['90°', Math.PI / 2], ['12 °', Math.PI / 15], ['23 cm³', 23e-6], ['50 %', 0.5], ['23e-6 1/K', 23e-6], ['20 °C', 293.15], ['0 rpm', 0],
  ])('reads %s', (text, value) => {
    expect(quantity(text).value).toBeCloseTo(value, 12);
  });

  it('keeps 1760 rpm within a double of 1760 · 2π / 60 rad/s (by hand)', () => {
    expect(quantity('1760 rpm').value).toBeCloseTo((1760 * 2 * Math.PI) / 60, 10);
  });

  it.each([
    ['1,5 mm', 'number', /decimal point, not a comma: 1\.5/],
    ['14,600 rpm', 'number', /14600 for thousands/],
    ['14 600 rpm', 'number', /without spaces/],
    ['1.234.5 mm', 'number', /one number/],
    ["14'600 rpm", 'number', /one number/],
    ['1_000 mm', 'number', /one number/],
    ['', 'number', /begin with a number/],
    ['mm', 'number', /begin with a number/],
    ['NaN mm', 'number', /begin with a number/],
    ['Infinity mm', 'number', /begin with a number/],
    ['-Infinity mm', 'number', /begin with a number/],
    ['1e400 mm', 'number', /too large/],
    ['1e308 GPa', 'number', /too large/],
    ['1e-400 mm', 'number', /too small/],
    [`1${'0'.repeat(300)} mm`, 'number', /one number and one unit/],
  ])('refuses %s', (text, problem, reason) => {
    const read = readQuantity(text);
    expect(read).toMatchObject({ problem, text });
    expect('reason' in read && read.reason).toMatch(reason);
  });

  it('refuses an unknown unit by name and offers the nearest', () => {
    expect(readQuantity('25 gr')).toEqual({ problem: 'unit-unknown', text: '25 gr', unit: 'gr', nearest: 'g' });
    expect(readQuantity('5 mm thick')).toMatchObject({ problem: 'unit-unknown', unit: 'thick' });
    expect(readQuantity('0x10 mm')).toMatchObject({ problem: 'unit-unknown', unit: 'x' });
    expect(readQuantity('1.2 N·mn')).toMatchObject({ problem: 'unit-unknown', unit: 'mn' });
  });

  it('says that a bare number has no unit', () => {
    expect(readQuantity('14')).toEqual({ problem: 'unit-missing', text: '14' });
  });

  it('tells kinds apart that SI writes alike', () => {
    expect(sameDimension(quantity('1 rpm').dimension, quantity('1 Hz').dimension)).toBe(false);
    expect(sameDimension(quantity('1 N·m').dimension, quantity('1 N·m/rad').dimension)).toBe(false);
    expect(sameDimension(quantity('1 N·m').dimension, quantity('1 J').dimension)).toBe(true);
    expect(dimensionName(quantity('1 rpm/V').dimension)).toBe('a speed constant');
  });
});

describe('a window', () => {
  it.each([
    ['0.02 to 0.06 mm', 0.00002, 0.00006], ['0.5 mm to 1 cm', 0.0005, 0.01], ['0 to 0.02 mm', 0, 0.00002], ['5 to 40 °C', 278.15, 313.15], ['-5 to 5 °C', 268.15, 278.15], ['3 mm', 0.003, 0.003],
    ['at least 3 mm', 0.003, undefined], ['at most 5 mm', undefined, 0.005],
  ])('%s', (text, min, max) => {
    const read = window(text);
    if (min === undefined) expect(read.min).toBeUndefined();
    else expect(read.min).toBeCloseTo(min, 14);
    if (max === undefined) expect(read.max).toBeUndefined();
    else expect(read.max).toBeCloseTo(max, 14);
  });

  it.each([
    ['0.06 to 0.02 mm', 'window'], ['1 to 2 to 3 mm', 'window'], ['1 g to 2 mm', 'window'], ['1 to 2', 'unit-missing'], ['1 to 2 mn', 'unit-unknown'], ['1,5 to 2 mm', 'number'], ['to 2 mm', 'number'],
    ['at least', 'number'], ['1 gr to 2 g', 'unit-unknown'],
  ])('%s is refused', (text, problem) => {
    expect(readWindow(text)).toMatchObject({ problem, text });
  });
});

describe('laws', () => {
  const listed = fc.constantFrom(...listedUnits.filter((one) => one.offset === undefined).map((one) => one.symbol));
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((n) => n === 0 || Math.abs(n) > 1e-6);

  it('law: a number scales its unit', () => {
    fc.assert(fc.property(number, listed, (n, symbol) => {
      expect(quantity(`${n} ${symbol}`).value).toBeCloseTo(n * quantity(`1 ${symbol}`).value, 6);
    }));
  });

  it('law: a product has the product of the factors and the sum of the exponents, in either order', () => {
    fc.assert(fc.property(listed, listed, (a, b) => {
      const ab = unit(`${a}·${b}`);
      const ba = unit(`${b}·${a}`);
      const [one, two] = [unit(a), unit(b)];
      if (!isUnit(ab) || !isUnit(ba) || !isUnit(one) || !isUnit(two)) throw new Error('not read');
      expect(ab.factor / (one.factor * two.factor)).toBeCloseTo(1, 12);
      expect(ab.dimension).toEqual(ba.dimension);
      expect(ab.dimension).toEqual(one.dimension.map((exponent, i) => exponent + (two.dimension[i] as number)));
    }));
  });

  it('law: a quotient undoes a product', () => {
    // A listed product (N·m) needs brackets below the line.
    fc.assert(fc.property(listed, listed, (a, b) => {
      const read = unit(`${a}·${b}/(${b})`);
      const one = unit(a);
      if (!isUnit(read) || !isUnit(one)) throw new Error('not read');
      expect(read.factor / one.factor).toBeCloseTo(1, 12);
      expect(read.dimension).toEqual(one.dimension);
    }));
  });

  it('law: no text throws, and a quantity is finite', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom(...'0123456789.,-+eE ·*/^()°CNmkgto²⁻%') })), (text) => {
      const read = readQuantity(text);
      if (!isProblem(read)) expect(Number.isFinite(read.value)).toBe(true);
      const between = readWindow(text);
      if (!isProblem(between)) expect((between.min ?? -Infinity) <= (between.max ?? Infinity)).toBe(true);
    }), { numRuns: 2000 });
  });
});

describe('sizes', () => {
  it.each([
    ['5 mm', 5, 5, 5],
    ['5 to 4.97 mm', 5, 4.97, 5],
    ['5 to 5.02 mm', 5, 5, 5.02],
    ['5 mm to 4970 µm', 5, 4.97, 5],
    ['5 ±0.05 mm', 5, 4.95, 5.05],
    ['5 mm ± 50 µm', 5, 4.95, 5.05],
  ])('%s has its nominal and its limits', (text, nominal, least, most) => {
    const read = readSize(text);
    if (isProblem(read)) throw new Error(JSON.stringify(read));
    for (const [got, wanted] of [[read.nominal, nominal], [read.least, least], [read.most, most]] as const) expect(got).toBeCloseTo(wanted / 1000, 12);
  });

  it.each([
    ['5', 'unit-missing'],
    ['5 to 4.97', 'unit-missing'],
    ['5 ±0.05', 'unit-missing'],
    ['5 mm to 4 g', 'window'],
    ['5 to 4 to 3 mm', 'window'],
    ['5 ±0.1 ±0.2 mm', 'window'],
    ['5 ±-0.05 mm', 'window'],
    ['5 ±+0.05 mm', 'window'],
    ['±0.05 mm', 'number'],
    ['at least 5 mm', 'number'],
  ])('%s is refused: %s', (text, problem) => {
    expect(readSize(text)).toMatchObject({ problem, text });
  });

  it('law: limits lie about the nominal size', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 9999 }), fc.constantFrom(' to ', ' ±'), (size, other, between) => {
      const read = readSize(`${size / 1000}${between}${other / 1000} mm`);
      if (isProblem(read)) throw new Error(JSON.stringify(read));
      expect(read.least).toBeLessThanOrEqual(read.nominal);
      expect(read.nominal).toBeLessThanOrEqual(read.most);
    }));
  });
});
