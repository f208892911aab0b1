import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionName, isUnit, listedUnits, sameDimension, siUnit, unit, type Dimension } from '../src/index.ts';

function dimensionOf(text: string): Dimension {
  const read = unit(text);
  if (!isUnit(read)) throw new Error(JSON.stringify(read));
  return read.dimension;
}

describe('dimensions', () => {
  // By hand: each is a product of base units, N = kg·m/s², V = W/A.
  it.each([
    ['mm', 'm', 'a length'], ['rpm', 'rad/s', 'a speed of rotation'], ['kHz', 'Hz', 'a frequency'], ['J', 'N·m', 'a torque or an energy'], ['MPa', 'Pa', 'a pressure or stress'], ['%', '-', 'a pure number'],
    ['rpm/V', 'rad/(s·V)', 'a speed constant'], ['mAh', 's·A', 'a charge'], ['g·mm', 'm·kg', 'an unbalance'], ['g/cm³', 'kg/m³', 'a density'], ['J/(kg·K)', 'm²/(s²·K)', 'a specific heat'], ['mm/A', 'm/A', 'a quantity of another kind'],
    ['√MPa', '√Pa', 'a quantity of another kind'], ['√MPa/mm', '√Pa/m', 'a quantity of another kind'], ['√MPa·mm', '√Pa·m', 'a quantity of another kind'],
  ])('%s is kept in %s and is %s', (text, si, name) => {
    expect(siUnit(dimensionOf(text))).toBe(si);
    expect(dimensionName(dimensionOf(text))).toBe(name);
  });

  it('law: the SI unit of a dimension has the factor one and that dimension', () => {
    const symbols = listedUnits.filter((one) => one.offset === undefined && one.symbol !== '%').map((one) => one.symbol);
    const symbol = fc.constantFrom(...symbols);
    fc.assert(fc.property(symbol, symbol, fc.constantFrom('·', '/'), (a, b, sign) => {
      const dimension = dimensionOf(sign === '/' ? `${a}/(${b})` : `${a}·${b}`);
      const si = siUnit(dimension);
      if (si === '-') return;
      const read = unit(si);
      if (!isUnit(read)) throw new Error(JSON.stringify(read));
      expect(read.factor).toBe(1);
      expect(sameDimension(read.dimension, dimension)).toBe(true);
    }));
  });
});
