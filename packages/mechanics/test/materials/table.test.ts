import { describe, expect, test } from 'vitest';
import { material, materials } from '../../src/materials/index.ts';

describe('the table of materials', () => {
  test.each(materials)('$name names a source for every value, and every value is of a solid', (one) => {
    const { name, ...properties } = one;
    for (const [property, { value, source }] of Object.entries(properties)) {
      // Carbon alone shrinks when it warms, along its fibres.
      const least = property === 'expansion' && name === 'carbon along the fibre' ? -1e-6 : 0;
      expect(Number.isFinite(value) && value > least).toBe(true);
      expect(source.length).toBeGreaterThan(5);
    }
    // law: lighter than osmium, heavier than wood; softer than diamond; ν of a stable isotropic solid below ½
    expect(one.density.value).toBeGreaterThan(500);
    expect(one.density.value).toBeLessThan(22_700);
    expect(one.youngsModulus.value).toBeLessThan(1.1e12);
    if (one.poissonsRatio) expect(one.poissonsRatio.value).toBeLessThan(0.5);
    expect(material(name)).toBe(one);
  });

  // published: Shigley's Mechanical Engineering Design, 9th ed., table A-5 (from memory): E and G in GPa of the groups; alloys of a group differ by a few per cent
  test.each([
    ['steel', 207, 79.3], ['aluminium 7075', 71.7, 26.9], ['aluminium 6061', 71.7, 26.9], ['stainless steel', 190, 73.1], ['titanium', 114, 42.4], ['brass', 106, 40.1],
  ])('%s is as stiff as the handbook’s group', (name, young, shear) => {
    expect(material(name)!.youngsModulus.value / 1e9 / young).toBeCloseTo(1, 1);
    expect(Math.abs(material(name)!.shearModulus!.value / 1e9 / shear - 1)).toBeLessThan(0.05);
  });

  test('an unknown name is not guessed', () => expect(material('Steel')).toBeUndefined());
});
