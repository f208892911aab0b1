import { threadSizes } from '@rotorwright/mechanics';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../tests/number-in.ts';
import { answer, isCalcProblem, type CalcAnswer } from '../src/index.ts';

function answered(id: string, inputs: Readonly<Record<string, unknown>>): CalcAnswer {
  const result = answer(id, inputs);
  if (isCalcProblem(result)) throw new Error(JSON.stringify(result.problems));
  return result;
}

const value = (id: string, inputs: Readonly<Record<string, unknown>>, output: string): unknown => (answered(id, inputs).outputs[output] as { readonly value: unknown } | undefined)?.value;
const number = (id: string, inputs: Readonly<Record<string, unknown>>, output: string): number => value(id, inputs, output) as number;

function problem(id: string, inputs: Readonly<Record<string, unknown>>): { readonly name: string; readonly given: string; readonly wanted: string } {
  const result = answer(id, inputs);
  if (!isCalcProblem(result)) throw new Error('there is no problem');
  return result.problems[0]!;
}

const screw = { size: 'M3', propertyClass: '12.9', threadFriction: 0.12, headFriction: 0.12 };
const anySize = fc.constantFrom(...threadSizes);
const anyClass = fc.constantFrom('4.6', '8.8', '12.9', 'A2-70');
const anyFriction = numberIn(0, 0.4);

describe('tightening a screw', () => {
  test('forwards and backwards agree, for any screw (law)', () => {
    fc.assert(
      fc.property(anySize, anyClass, anyFriction, anyFriction, fc.double({ min: 0.05, max: 1, noNaN: true }), (size, propertyClass, threadFriction, headFriction, utilisation) => {
        const inputs = { size, propertyClass, threadFriction, headFriction, headDiameter: '60 mm', holeDiameter: '40 mm' };
        const { preload, torque } = answered('screw-tightening', { ...inputs, utilisation, prevailingTorque: 0.1 }).outputs as Record<string, { value: number }>;
        const back = answered('screw-preload', { ...inputs, torque: torque!.value, prevailingTorque: 0.1 }).outputs as Record<string, { value: number }>;
        expect(back['preload']!.value / preload!.value).toBeCloseTo(1, 9);
        expect(back['utilisation']!.value).toBeCloseTo(utilisation, 9);
      }),
    );
  });

  test('a nut that grips wants its running torque on top', () => {
    expect(number('screw-tightening', { ...screw, prevailingTorque: 0.3 }, 'torque') - number('screw-tightening', screw, 'torque')).toBeCloseTo(0.3, 12);
    expect(problem('screw-preload', { ...screw, torque: 0.2, prevailingTorque: 0.3 })).toMatchObject({ name: 'torque', wanted: 'at least the 0.3 N·m that the thread takes before it clamps' });
  });

  test('the parts make up the whole', () => {
    const { torque, threadTorque, headTorque } = answered('screw-tightening', screw).outputs as Record<string, { value: number }>;
    expect(threadTorque!.value + headTorque!.value).toBeCloseTo(torque!.value, 12);
  });

  test('a size without a cap screw wants its head, and a head wider than its hole', () => {
    expect(problem('screw-tightening', { ...screw, size: 'M3.5' })).toMatchObject({ name: 'headDiameter', given: 'nothing', wanted: expect.stringContaining('no socket cap screw of M3.5') });
    expect(problem('screw-tightening', { ...screw, size: 'M3.5', headDiameter: '6 mm' })).toMatchObject({ name: 'holeDiameter' });
    expect(problem('screw-tightening', { ...screw, headDiameter: '3 mm' })).toMatchObject({ name: 'headDiameter', wanted: 'more than the hole of 0.0034 m' });
    expect(number('screw-tightening', { ...screw, size: 'M3.5', headDiameter: '6 mm', holeDiameter: '3.9 mm' }, 'torque')).toBeGreaterThan(0);
  });

  test('a screw that yields is told, and one that yields at the high end of the scatter', () => {
    const warnings = (torque: number): string => answered('screw-preload', { ...screw, torque }).warnings.join(' ');
    expect(warnings(1)).toBe('');
    expect(warnings(2)).toMatch(/high end of the scatter/);
    expect(warnings(2.4)).toMatch(/95\.\d % of the yield strength; 90 % is usual/);
    expect(warnings(3)).toMatch(/stretches for good/);
  });

  test.each([
    ['M3.7', /next to it are M3\.5 and M4/], ['M4x3', /ISO 261 has M4, M4x0\.5/], ['three', /such as M3 or M4x0\.5/],
  ])('the size "%s" is refused in every calculation that asks for one', (size, wanted) => {
    for (const [id, inputs] of [
      ['thread', {}], ['screw-strength', { propertyClass: '8.8' }], ['screw-tightening', { ...screw }], ['screw-preload', { ...screw, torque: 1 }],
      ['thread-engagement', { engagement: 0.006, propertyClass: '8.8', internalShearStrength: 2e8 }], ['set-screw-hold', { seatingTorque: 1, shaftDiameter: 0.005, count: 1 }], ['threadlock', { class: 'low' }],
    ] as const) {
      const found = problem(id, { ...inputs, size });
      expect(found).toMatchObject({ name: 'size', given: `"${size}"` });
      expect(found.wanted).toMatch(wanted);
    }
  });

  test.each([[{ propertyClass: '8' }, 'propertyClass'], [{ threadFriction: -0.1 }, 'threadFriction'], [{ utilisation: 0 }, 'utilisation'], [{ utilisation: 1.1 }, 'utilisation'], [{ headFriction: undefined }, 'headFriction']])('names the input that is wrong: %o', (change, name) => {
    expect(problem('screw-tightening', { ...screw, ...change }).name).toBe(name);
  });

  test('stainless screws have no proof load', () => {
    expect(value('screw-strength', { size: 'M4', propertyClass: 'A2-70' }, 'proofForce')).toBeUndefined();
    expect(answered('screw-strength', { size: 'M4', propertyClass: 'A2-70' }).warnings.join(' ')).toMatch(/proofForce/);
  });
});

describe('a thread that holds', () => {
  const tapped = { size: 'M3', engagement: '6 mm', propertyClass: '12.9', internalShearStrength: '200 MPa' };

  test('its weakest way is the one that counts, and from the needed length on the screw breaks (law)', () => {
    fc.assert(
      fc.property(anySize, anyClass, fc.double({ min: 1e-3, max: 0.1, noNaN: true }), fc.double({ min: 1e6, max: 2e9, noNaN: true }), (size, propertyClass, engagement, internalShearStrength) => {
        const inputs = { size, propertyClass, engagement, internalShearStrength };
        const outputs = answered('thread-engagement', inputs).outputs as Record<string, { value: number }>;
        const [bolt, internal, external] = [outputs['boltBreakingForce']!.value, outputs['strippingForceInternal']!.value, outputs['strippingForceExternal']!.value];
        expect(outputs['holdingForce']!.value).toBe(Math.min(bolt, internal, external));
        expect({ bolt, internal, external }[String(outputs['critical']!.value)]).toBe(outputs['holdingForce']!.value);
        const needed = outputs['engagementNeeded']!.value;
        expect(value('thread-engagement', { ...inputs, engagement: needed * 1.001 }, 'critical')).toBe('bolt');
        expect(value('thread-engagement', { ...inputs, engagement: needed * 0.999 }, 'critical')).not.toBe('bolt');
      }),
    );
  });

  test('a thread that strips first is told', () => {
    expect(answered('thread-engagement', { ...tapped, engagement: '2 mm' }).warnings.join(' ')).toMatch(/strips before the screw breaks/);
    expect(answered('thread-engagement', { ...tapped, engagement: '20 mm', load: 1000 }).warnings).toEqual([]);
    expect(answered('thread-engagement', { ...tapped, load: 20_000 }).warnings.join(' ')).toMatch(/The load is more than the thread holds/);
    expect(number('thread-engagement', { ...tapped, load: 1000 }, 'margin')).toBeCloseTo(number('thread-engagement', tapped, 'holdingForce') / 1000, 12);
    expect(answered('thread-engagement', { ...tapped, load: 0 }).warnings.join(' ')).toMatch(/margin is left out: there is no load/);
  });

  test('sizes that do not overlap are refused', () => expect(problem('thread-engagement', { ...tapped, screwMajorDiameter: '2 mm' }).wanted).toMatch(/must let the threads overlap/));
});

describe('pins, circlips and nuts', () => {
  const pin = { diameter: '2 mm', shearStrength: '1050 MPa', planes: 2 };
  test('a cross pin wants its shaft, thicker than itself', () => {
    expect(problem('pin-shear', { ...pin, torque: 3 })).toMatchObject({ name: 'shaftDiameter', given: 'nothing' });
    expect(problem('pin-shear', { ...pin, torque: 3, shaftDiameter: '1 mm' })).toMatchObject({ name: 'shaftDiameter' });
    expect(problem('pin-shear', { ...pin, planes: 3 })).toMatchObject({ name: 'planes' });
    expect(number('pin-shear', { ...pin, planes: 1 }, 'capacity') * 2).toBeCloseTo(number('pin-shear', pin, 'capacity'), 6);
    expect(answered('pin-shear', { ...pin, torque: 30, shaftDiameter: '6 mm' }).warnings).toEqual(['The torque shears the pin.']);
    expect(answered('pin-shear', { ...pin, torque: 0, shaftDiameter: '6 mm' }).outputs).not.toHaveProperty('margin');
  });

  test('the groove of a circlip is no groove at the diameter of its shaft, and a load too large is told', () => {
    const groove = { seatDiameter: '10 mm', grooveDiameter: '9.6 mm', shoulder: '1 mm', yieldStrength: '400 MPa' };
    expect(problem('circlip', { ...groove, grooveDiameter: '10 mm' })).toMatchObject({ name: 'grooveDiameter' });
    expect(answered('circlip', { ...groove, load: 5000 }).warnings).toEqual(['The thrust is more than the groove bears.']);
    expect(answered('circlip', { ...groove, shoulder: '0.5 mm' }).outputs).not.toHaveProperty('capacity');
    expect(number('circlip', { ...groove, load: 1000 }, 'margin')).toBeCloseTo(number('circlip', groove, 'capacity') / 1000, 12);
  });

  test('an insert nut is measured, kept or thrown away', () => {
    const verdict = (inputs: Readonly<Record<string, unknown>>): unknown => value('insert-nut', { size: 'M3', ...inputs }, 'verdict');
    expect(verdict({ removal: 2 })).toBe('measure');
    expect(verdict({ removal: 2, torqueOff: 0.08 })).toBe('keep');
    expect(verdict({ removal: 2, torqueOff: 0.079 })).toBe('discard');
    expect(verdict({ removal: 1, torqueOff: 0.1 })).toBe('discard');
    expect(verdict({ removal: 6, torqueOff: 0.3 })).toBe('discard');
    expect(verdict({ removal: 2, torqueOff: 0.1, temperature: '121 °C' })).toBe('discard');
  });
});

describe('a threadlocker', () => {
  const lock = { class: 'medium', size: 'M3' };
  test('counts as no lock until it has cured', () => {
    expect(number('threadlock', { ...lock, cureTime: '24 h' }, 'breakaway')).toBeCloseTo((12 * 3) / 26 / 8, 9);
    const wet = answered('threadlock', { ...lock, cureTime: '23 h' });
    expect(wet.outputs).not.toHaveProperty('breakaway');
    expect(wet.warnings.join(' ')).toMatch(/counts as no lock/);
    expect(number('threadlock', { ...lock, cureTime: '12 h' }, 'cureShare')).toBeCloseTo(0.5, 12);
    expect(number('threadlock', { ...lock, cureTime: '100 h' }, 'cureShare')).toBe(1);
  });
  test('may never cure in the cold, and promises nothing when too hot', () => {
    const cold = answered('threadlock', { ...lock, cureTemperature: '4 °C', cureTime: '1000 h' });
    expect(cold.outputs).not.toHaveProperty('cureTimeNeeded');
    expect(cold.warnings.join(' ')).toMatch(/may never cure/);
    const hot = answered('threadlock', { ...lock, temperature: '151 °C' });
    expect(hot.outputs).not.toHaveProperty('breakaway');
    expect(hot.warnings.join(' ')).toMatch(/over its highest temperature of 150 °C/);
  });
  test('says what it must not touch', () => {
    const { keepAwayFrom } = answered('threadlock', lock).outputs;
    expect(JSON.stringify(keepAwayFrom)).toMatch(/polycarbonate.*nylon insert nuts.*bearings/);
  });
});

describe('fits', () => {
  test('a bearing in aluminium comes loose when warm; the same metal never does', () => {
    const fit = { nominal: '22 mm', interference: '10 µm', outerMaterial: 'aluminium 7075', innerMaterial: 'bearing steel', temperature: '80 °C' };
    expect(answered('fit-when-warm', fit).warnings.join(' ')).toMatch(/It is loose at that temperature/);
    expect(answered('fit-when-warm', { ...fit, innerMaterial: 'aluminium 7075' }).warnings.join(' ')).toMatch(/both expand alike/);
    expect(answered('fit-when-warm', { ...fit, interference: '-1 µm' }).warnings.join(' ')).toMatch(/loose at room temperature already/);
    expect(number('fit-when-warm', { ...fit, temperature: '-10 °C' }, 'interferenceThen')).toBeGreaterThan(10e-6);
  });
  test('a carbon tube shrinks in the warmth, so no warming lets a part drop into it', () => {
    expect(problem('warm-to-fit', { nominal: 0.02, interference: 1e-5, clearanceWanted: 5e-6, housingMaterial: 'carbon along the fibre' }).wanted).toMatch(/expansion must be positive/);
  });
  test('every value of a material has its source', () => {
    expect(JSON.stringify(answered('material', { name: 'POM' }).outputs['sources'])).toMatch(/expansion: data sheets/);
    expect(answered('material', { name: 'carbon tube' }).warnings.join(' ')).toMatch(/poissonsRatio, expansion, swell, shearStrength: left out/);
  });
});
