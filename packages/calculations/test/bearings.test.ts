import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answer, isCalcProblem, type CalcAnswer } from '../src/index.ts';

function answered(id: string, inputs: Readonly<Record<string, unknown>>): CalcAnswer {
  const result = answer(id, inputs);
  if (isCalcProblem(result)) throw new Error(JSON.stringify(result.problems));
  return result;
}

const value = (id: string, inputs: Readonly<Record<string, unknown>>, output: string): unknown => (answered(id, inputs).outputs[output] as { readonly value: unknown } | undefined)?.value;

function problem(id: string, inputs: Readonly<Record<string, unknown>>): { readonly name: string; readonly wanted: string } {
  const result = answer(id, inputs);
  if (!isCalcProblem(result)) throw new Error('there is no problem');
  return result.problems[0]!;
}

const ball = { type: 'deep-groove', dynamicRating: 3300, staticRating: 1370, f0: 12.4, radial: 100, axial: 0, speed: '1800 rpm' };
const load = fc.double({ min: 0.1, max: 1000, noNaN: true });

describe('life of a bearing', () => {
  test('falls with the cube of the load on balls (law)', () => {
    fc.assert(
      fc.property(load, (radial) => {
        expect((value('bearing-life', { ...ball, radial }, 'life') as number) / (value('bearing-life', { ...ball, radial: 2 * radial }, 'life') as number)).toBeCloseTo(8, 9);
      }),
    );
  });

  test('never grows with more load along the axis, but for the rounding of the table (law)', () => {
    fc.assert(
      fc.property(load, load, fc.constantFrom('deep-groove', 'angular-contact'), (radial, axial, type) => {
        const at = (more: number): number => value('bearing-life', { ...ball, type, radial, axial: axial * more }, 'equivalentLoad') as number;
        expect(at(1.1)).toBeGreaterThanOrEqual(at(1) * 0.97);
      }),
    );
  });

  test('is the same either way round, and half as long at twice the speed', () => {
    const life = (speed: number): number => value('bearing-life', { ...ball, speed }, 'lifeHours') as number;
    expect(life(-100)).toBe(life(100));
    expect(life(100) / life(200)).toBeCloseTo(2, 12);
  });

  test('is multiplied by what lubrication and reliability leave of it', () => {
    const life = value('bearing-life', ball, 'life') as number;
    expect(value('bearing-life', { ...ball, a: 2.5 }, 'life')).toBeCloseTo(2.5 * life, 3);
    expect(value('bearing-life', { ...ball, reliability: '99 %' }, 'life')).toBeCloseTo(0.25 * life, 3);
    expect(value('bearing-life', { ...ball, reliability: 0.99, reliabilityEdition: '1990' }, 'life')).toBeCloseTo(0.21 * life, 3);
  });

  test('of needles has the exponent 10/3 and takes radial load alone', () => {
    const needle = { type: 'needle', dynamicRating: 4000, staticRating: 4000, radial: 400, speed: '1800 rpm' };
    expect(value('bearing-life', needle, 'life')).toBeCloseTo(1e6 * 10 ** (10 / 3), 0);
    expect(value('bearing-life', { ...needle, axial: 0 }, 'equivalentLoad')).toBe(400);
    expect(problem('bearing-life', { ...needle, axial: 1 })).toMatchObject({ name: 'axial', wanted: expect.stringContaining('takes no axial load') });
    expect(problem('bearing-life', { ...needle, radial: undefined })).toMatchObject({ name: 'radial' });
  });

  test('of a thrust bearing takes axial load alone, unless its contact angle says otherwise', () => {
    const thrust = { type: 'thrust-ball', dynamicRating: 10_100, staticRating: 14_000, axial: 500, speed: '1500 rpm' };
    expect(answered('bearing-life', thrust).outputs).toMatchObject({ equivalentLoad: { value: 500 }, staticEquivalentLoad: { value: 500 }, usedRadialFactor: { value: 0 }, usedAxialFactor: { value: 1 } });
    expect(problem('bearing-life', { ...thrust, radial: 1 })).toMatchObject({ name: 'radial', wanted: expect.stringContaining('takes no radial load') });
    // by hand, ISO 281 and ISO 76 (from memory) at 60°: e = 1.25·tan 60° = 2.165, X = e·(1 − ⅔·sin 60°) = 0.915, P0 = 2.3·tan 60°·100 + 500
    const slanted = answered('bearing-life', { ...thrust, radial: 100, contactAngle: '60 °' });
    expect((slanted.outputs['equivalentLoad'] as { value: number }).value).toBeCloseTo(2.165064 * (1 - Math.sqrt(3) / 3) * 100 + 500, 3);
    expect((slanted.outputs['staticEquivalentLoad'] as { value: number }).value).toBeCloseTo(230 * Math.sqrt(3) + 500, 6);
    expect(problem('bearing-life', { ...thrust, radial: 300, contactAngle: '60 °' })).toMatchObject({ name: 'axial', wanted: expect.stringContaining('at least 649.5') });
    expect(problem('bearing-life', { ...thrust, contactAngle: '45 °' })).toMatchObject({ name: 'contactAngle', wanted: 'over 45° to 90° for a bearing of type thrust-ball' });
  });

  test('of angular contact is that of 40° unless an angle is given', () => {
    const angular = { ...ball, type: 'angular-contact', axial: 300 };
    expect(value('bearing-life', angular, 'equivalentLoad')).toBeCloseTo(0.35 * 100 + 0.57 * 300, 9);
    expect(value('bearing-life', { ...angular, contactAngle: '30 °' }, 'equivalentLoad')).toBeCloseTo(0.39 * 100 + 0.76 * 300, 9);
    expect(problem('bearing-life', { ...angular, contactAngle: '10 °' })).toMatchObject({ name: 'contactAngle', wanted: expect.stringContaining('15° to 45°') });
  });

  test('takes the maker’s own factors, both of them', () => {
    expect(value('bearing-life', { ...ball, radial: 3200, axial: 1800, radialFactor: 0.56, axialFactor: 1.48 }, 'equivalentLoad')).toBeCloseTo(4456, 9);
    expect(problem('bearing-life', { ...ball, axialFactor: 1.48 })).toMatchObject({ name: 'radialFactor' });
    expect(problem('bearing-life', { ...ball, radialFactor: 0.56 })).toMatchObject({ name: 'axialFactor' });
    expect(problem('bearing-life', { type: 'needle', dynamicRating: 1, staticRating: 1, radial: 1, speed: 1, radialFactor: 1, axialFactor: 1 })).toMatchObject({ name: 'radialFactor' });
  });

  test.each([
    [{ radial: 2000 }, /half the rating/], [{ radial: 1400 }, /dent the races/], [{ axial: 900 }, /beyond the table/], [{ radial: 0 }, /there is no load/], [{ speed: 0 }, /stands still/],
  ])('warns of %o', (change, message) => expect(answered('bearing-life', { ...ball, ...change }).warnings.join(' ')).toMatch(message));
  test('has nothing to warn of in an ordinary case', () => expect(answered('bearing-life', ball).warnings).toEqual([]));

  test.each([
    [{ axial: undefined }, 'axial'], [{ radial: undefined }, 'radial'], [{ contactAngle: 0.5 }, 'contactAngle'], [{ reliability: 0.995, reliabilityEdition: '1990' }, 'reliability'], [{ reliability: 0.5 }, 'reliability'], [{ dynamicRating: 0 }, 'dynamicRating'], [{ type: 'roller' }, 'type'], [{ radial: -1 }, 'radial'],
  ])('names the input that is wrong: %o', (change, name) => expect(problem('bearing-life', { ...ball, ...change }).name).toBe(name));
});

describe('other answers on bearings', () => {
  test.each(['bearing-viscosity', 'bearing-speed', 'bearing-grease', 'bearing-clearance'])('%s wants a ring that is larger outside', (id) => {
    const inputs = { kind: 'deep-groove', bore: '8 mm', outer: '8 mm', width: '3 mm', speed: '1800 rpm', temperatureDifference: '10 K' };
    const wanted: Readonly<Record<string, readonly string[]>> = { 'bearing-viscosity': ['bore', 'outer', 'speed'], 'bearing-speed': ['bore', 'outer', 'speed'], 'bearing-grease': ['kind', 'bore', 'outer', 'width', 'speed'], 'bearing-clearance': ['bore', 'outer', 'temperatureDifference'] };
    expect(problem(id, Object.fromEntries(Object.entries(inputs).filter(([name]) => wanted[id]!.includes(name))))).toMatchObject({ name: 'outer', wanted: 'more than the bore of 0.008 m' });
  });

  test.each(['bearing-viscosity', 'bearing-grease'])('%s wants a speed', (id) => {
    expect(problem(id, { ...(id === 'bearing-grease' ? { kind: 'needle', width: 0.005 } : {}), bore: 0.008, outer: 0.02, speed: 0 }).name).toBe('speed');
  });

  test('a designation that the other catalogue has is refused with those that this one has', () => {
    expect(problem('bearing-size', { designation: '61800' })).toMatchObject({ name: 'designation', wanted: expect.stringContaining('of the first catalogue: MR85') });
    expect(value('bearing-size', { designation: '61800', catalogue: 'second' }, 'outer')).toBeCloseTo(0.019, 12);
  });

  test('a factor n·dm over the marks is warned of', () => {
    const warnings = (speed: string): string => answered('bearing-speed', { bore: '5 mm', outer: '10 mm', speed }).warnings.join(' ');
    expect(warnings('66000 rpm')).not.toMatch(/mm·rpm/);
    expect(warnings('67000 rpm')).toMatch(/Over 500,000 mm·rpm/);
    expect(warnings('94000 rpm')).toMatch(/Over 700,000 mm·rpm/);
  });

  test('a viscosity ratio over 4 and one below 1 are told, and so is the most', () => {
    const warnings = (viscosityRatio: number, contaminationRatio: number): string => answered('bearing-modified-life', { viscosityRatio, contaminationRatio }).warnings.join(' ');
    expect(warnings(1, 0.1)).toBe('');
    expect(warnings(0.9, 0.1)).toMatch(/metal touches metal/);
    expect(warnings(5, 0.1)).toMatch(/counts as 4/);
    expect(warnings(4, 5)).toMatch(/held at 50/);
  });

  test('a clutch that must carry more than it holds is told', () => {
    const clutch = { rollers: 6, rollerDiameter: '2 mm', rollerLength: '5 mm', shaftDiameter: '10 mm' };
    expect(answered('one-way-clutch', { ...clutch, torque: 1000 }).warnings.join(' ')).toMatch(/more than it holds/);
    expect(answered('one-way-clutch', { ...clutch, torque: 0 }).warnings).toEqual(['margin is left out: there is no torque.']);
  });
});
