import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bearingSize, bearingSizes, clearanceLost, meanDiameterSpeed, regreaseInterval, regreaseMass, rollerClutchPressure, rollerClutchTorque, type GreaseDuty } from '../../src/bearings/index.ts';

const rpm = Math.PI / 30;
const hours = 3600;

describe('fresh grease', () => {
  const duty: GreaseDuty = { kind: 'deep-groove', bore: 0.045, speed: 1800 * rpm, temperature: 343.15, verticalShaft: false };
  const interval = (change: Partial<GreaseDuty>): number => regreaseInterval({ ...duty, ...change })!;

  // independent route: the rule of a public lubrication guide worked elsewhere
  test('of a 6309 at 1800 rpm', () => expect(interval({}) / hours).toBeCloseTo(9794.4265, 3));
  test('of a bore of 8 mm at 12,000 rpm, either way round', () => {
    expect(interval({ bore: 0.008, speed: 12_000 * rpm }) / hours).toBeCloseTo(3804.7896, 3);
    expect(interval({ bore: 0.008, speed: -12_000 * rpm }) / hours).toBeCloseTo(3804.7896, 3);
  });
  test.each([['needle', 0.5], ['thrust-ball', 0.1]] as const)('of a %s bearing comes at %d of that time', (kind, share) => expect(interval({ kind }) / interval({})).toBeCloseTo(share, 12));
  test.each([[343.15 + 15, 0.5], [343.15 + 30, 0.25], [343.15 - 15, 2], [343.15 - 60, 2], [343.15 - 7.5, Math.SQRT2]])('at %d K comes at %d of that time', (temperature, share) => expect(interval({ temperature }) / interval({})).toBeCloseTo(share, 12));
  test('comes twice as often on a vertical shaft', () => expect(interval({ verticalShaft: true }) / interval({})).toBeCloseTo(0.5, 12));
  test('has no interval at a speed too high for the rule', () => expect(regreaseInterval({ ...duty, speed: 20_000 * rpm })).toBeUndefined());
  test.each([{ bore: 0 }, { speed: 0 }, { bore: Number.NaN }])('is refused for %o', (change) => expect(() => regreaseInterval({ ...duty, ...change })).toThrow(/positive bore and a speed other than zero/));

  // by hand: 0.005·22·7 = 0.77 g
  test('weighs 0.77 g for 22 by 7 mm', () => expect(regreaseMass(0.022, 0.007)).toBeCloseTo(0.77e-3, 12));
  test.each([[0, 1], [1, 0]])('has no mass for %d by %d m', (outer, width) => expect(() => regreaseMass(outer, width)).toThrow(/must be positive/));
});

describe('warmth in a bearing', () => {
  // published: bearing catalogue, equations 9.6 and 9.7
  test('takes 9 µm from a bearing of 40 by 80 mm with 10 K', () => {
    const { racewayDiameter, loss } = clearanceLost(0.04, 0.08, 10, 12.5e-6);
    expect(racewayDiameter).toBeCloseTo(0.072, 12);
    expect(loss).toBeCloseTo(9e-6, 12);
  });
  test('gives clearance when the outer ring is the warmer one', () => expect(clearanceLost(0.04, 0.08, -10, 12.5e-6).loss).toBeCloseTo(-9e-6, 12));
  test.each([[0, 1], [0.02, 0.02]])('is refused for %d by %d m', (bore, outer) => expect(() => clearanceLost(bore, outer, 1, 1e-5)).toThrow(/0 < bore < outer/));
});

describe('speed factor n·dm', () => {
  test('is 375,000 mm·rpm of 5 by 10 mm at 50,000 rpm, either way round', () => {
    expect(meanDiameterSpeed(0.005, 0.01, 50_000 * rpm) * 1000 / rpm).toBeCloseTo(375_000, 6);
    expect(meanDiameterSpeed(0.005, 0.01, -50_000 * rpm)).toBeGreaterThan(0);
  });
  test.each([[0, 0.01, 1], [0.01, 0.01, 1], [0.01, Infinity, 1]])('is refused for %d by %d m', (bore, outer, speed) => expect(() => meanDiameterSpeed(bore, outer, speed)).toThrow(/0 < bore < outer/));
  test('is refused at no speed that is a number', () => expect(() => meanDiameterSpeed(0.005, 0.01, Number.NaN)).toThrow(/speed must be finite/));
});

describe('the tables of bearings', () => {
  test.each(['first', 'second'] as const)('of the %s maker name each bearing once, each larger outside than inside, with sane ratings', (maker) => {
    const sizes = bearingSizes[maker];
    expect(new Set(sizes.map(({ designation }) => designation)).size).toBe(sizes.length);
    for (const size of sizes) {
      expect(size.bore).toBeGreaterThan(0.002);
      expect(size.outer).toBeGreaterThan(size.bore);
      expect(size.outer).toBeLessThan(0.04);
      expect(size.width).toBeLessThan(size.outer);
      // A radial bearing of this size bears more moving than at rest.
      if (size.kind === 'deep-groove') expect(size.dynamicRating / size.staticRating).toBeGreaterThan(1.5);
      expect(size.source).toMatch(/public/);
      for (const speed of [size.greaseSpeed, size.oilSpeed, size.referenceSpeed, size.limitingSpeed]) if (speed !== undefined) expect(speed / rpm).toBeGreaterThan(5000);
      if (size.oilSpeed !== undefined) expect(size.oilSpeed).toBeGreaterThan(size.greaseSpeed!);
    }
  });

  // published: two makers' catalogues
  test('two makers rate one size differently', () => {
    expect(bearingSize('608', 'first')!.dynamicRating).toBe(3300);
    expect(bearingSize('608', 'second')!.dynamicRating).toBe(3450);
    expect(bearingSize('MR115 ZZ', 'first')).toMatchObject({ bore: 0.005, outer: 0.011, width: 0.004, staticRating: 276 });
    expect(bearingSize('MR115 ZZ', 'first')).not.toHaveProperty('oilSpeed');
    expect(bearingSize('MR115 ZZ', 'second')).toBeUndefined();
  });

  test('ratings of miniature thrust bearings carry a caution', () => {
    const unsure = bearingSizes.first.filter(({ caution }) => caution !== undefined);
    expect(unsure.map(({ designation }) => designation)).toEqual(['F3-8M', 'F4-9M', 'F4-10M', 'F5-10M', 'F5-12M', 'F6-12M']);
    expect(bearingSize('F3-8M', 'first')!.dynamicRating).toBeCloseTo(88 * 9.80665, 9);
  });
});

describe('a one-way clutch', () => {
  const clutch = { rollers: 6, rollerDiameter: 0.002, rollerLength: 0.005, shaftDiameter: 0.01, wedgeAngle: (8 * Math.PI) / 180, youngsModulus: 208e9, poissonsRatio: 0.3 };

  // independent route: half width of the contact and peak pressure, Shigley's Mechanical Engineering Design, 9th ed., equations 3-73 and 3-74 (from memory)
  test('presses as Hertz has it', () => {
    const force = 1 / (6 * 0.005 * Math.tan((4 * Math.PI) / 180));
    const halfWidth = Math.sqrt(((2 * force) / (Math.PI * 0.005)) * ((2 * 0.91) / 208e9 / (1 / 0.002 + 1 / 0.01)));
    expect(rollerClutchPressure(clutch, 1) / ((2 * force) / (Math.PI * halfWidth * 0.005))).toBeCloseTo(1, 9);
  });

  test('torque and pressure are each other’s inverse, and torque grows as the square (law)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 100, noNaN: true }), (torque) => {
        expect(rollerClutchTorque(clutch, rollerClutchPressure(clutch, torque)) / torque).toBeCloseTo(1, 9);
        expect(rollerClutchPressure(clutch, 4 * torque) / rollerClutchPressure(clutch, torque)).toBeCloseTo(2, 9);
      }),
    );
  });

  test('presses not at all without torque', () => expect(rollerClutchPressure(clutch, 0)).toBe(0));

  test.each([
    [{ rollers: 5.5 }, /whole number/], [{ rollers: 0 }, /whole number/], [{ rollerDiameter: 0 }, /diameters and length/], [{ rollerLength: 0 }, /diameters and length/], [{ shaftDiameter: 0 }, /diameters and length/],
    [{ wedgeAngle: 0 }, /wedgeAngle/], [{ wedgeAngle: Math.PI / 2 }, /wedgeAngle/], [{ youngsModulus: 0 }, /youngsModulus/], [{ poissonsRatio: -0.1 }, /poissonsRatio/], [{ poissonsRatio: 0.6 }, /poissonsRatio/],
  ])('that cannot be is refused: %o', (change, message) => {
    expect(() => rollerClutchTorque({ ...clutch, ...change }, 1e9)).toThrow(message);
    expect(() => rollerClutchPressure({ ...clutch, ...change }, 1)).toThrow(message);
  });
  test('is not asked for a negative torque or pressure', () => {
    expect(() => rollerClutchPressure(clutch, -1)).toThrow(/torque must not be negative/);
    expect(() => rollerClutchTorque(clutch, 0)).toThrow(/pressure must be positive/);
  });
});
