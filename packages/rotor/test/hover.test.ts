import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HoverSolver, bladeElements, naca0012, powerBand, realRotor, thrustSolidity, type BladeShape, type Flow, type MomentumModel } from '../src/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const degree = Math.PI / 180;

const shape: BladeShape = { blades: 2, radius: 0.8, rootCutout: 0.14, chord: [{ r: 0, value: 0.06 }], twist: [], section: naca0012() };
const air: Flow = { density: 1.225, kinematicViscosity: 1.46e-5, speedOfSound: 340.3, climbRate: 0 };
const speed = 160;
const solver = (changes: Partial<BladeShape> = {}, flow: Partial<Flow> = {}, model: Partial<MomentumModel> = {}): HoverSolver =>
  new HoverSolver(bladeElements({ ...shape, ...changes }), { ...air, ...flow }, { ...realRotor, ...model });

/** Nothing but lift and the momentum of each ring. */
const bare: Partial<MomentumModel> = { tipLoss: false, rootLoss: false, inducedFactor: 1, roughness: 1 };
const lawful = { kind: 'polar', thickness: 0, liftSlope: 5.73, cd0: 0, cd2: 0 } as const;

describe('hover', () => {
  test('the collective found for a thrust gives that thrust (law)', () => {
    fc.assert(
      fc.property(between(5, 110), between(110, 210), (thrust, atSpeed) => {
        const found = solver().forThrust(atSpeed, thrust);
        if (found === undefined) return;
        expect(found.thrust / thrust).toBeCloseTo(1, 6);
        expect(solver().atCollective(atSpeed, found.collective)!.thrust / thrust).toBeCloseTo(1, 5);
      }),
      { numRuns: 40 },
    );
  });

  test('where a solver comes from does not change where it ends (law)', () => {
    const warm = solver();
    for (const thrust of [20, 90, 35, -30, 60]) {
      const [after, fresh] = [warm.forThrust(speed, thrust)!, solver().forThrust(speed, thrust)!];
      expect(after.collective).toBeCloseTo(fresh.collective, 8);
      expect(after.torque).toBeCloseTo(fresh.torque, 6);
    }
  });

  test('a symmetric rotor turned over gives the same thrust the other way for the same torque (law)', () => {
    const [up, down] = [solver().forThrust(speed, 50)!, solver().forThrust(speed, -50)!];
    expect(down.collective).toBeCloseTo(-up.collective, 8);
    expect(down.torque).toBeCloseTo(up.torque, 8);
    expect(solver().atCollective(speed, 0)!.thrust).toBeCloseTo(0, 6);
  });

  test('thrust goes with the density and with the square of the speed where the section asks for neither Reynolds nor Mach number (law)', () => {
    const at = (density: number, atSpeed: number) =>
      new HoverSolver(bladeElements({ ...shape, section: lawful }), { density, kinematicViscosity: 1.46e-5, climbRate: 0 }, realRotor).atCollective(atSpeed, 8 * degree)!;
    const once = at(1.225, speed);
    expect(at(2.45, speed).thrust / once.thrust).toBeCloseTo(2, 9);
    expect(at(1.225, 2 * speed).thrust / once.thrust).toBeCloseTo(4, 6);
    expect(at(1.225, 2 * speed).torque / once.torque).toBeCloseTo(4, 6);
  });

  test('without drag and losses, the power of a lightly loaded rotor is that of its momentum theory, C_T λ summed over the rings (independent route: small angles in closed form)', () => {
    // λ(x) = (σa/16)(√(1 + 32θx/σa) − 1); C_T = ∫(σa/2)(θx² − λx)dx
    const pitch = 1 * degree;
    const elements = { blades: 2, radius: 1, rootCutout: 0, chord: [{ r: 0, value: 0.02 * Math.PI }], section: lawful };
    const sigmaA = 0.04 * 5.73;
    let [thrust, power] = [0, 0];
    const parts = 4000;
    for (let i = 0; i < parts; i++) {
      const x = (i + 0.5) / parts;
      const inflow = (sigmaA / 16) * (Math.sqrt(1 + (32 * pitch * x) / sigmaA) - 1);
      const ring = ((sigmaA / 2) * (pitch * x * x - inflow * x)) / parts;
      thrust += ring;
      power += ring * inflow;
    }
    const found = solver(elements, {}, { ...bare, swirl: false }).atCollective(100, pitch)!;
    const scale = 1.225 * Math.PI * 100 ** 2;
    expect(found.thrust / scale / thrust).toBeCloseTo(1, 3);
    expect(found.torque / scale / power).toBeCloseTo(1, 3);
    expect(found.profilePower).toBe(0);
  });

  test('tip loss, drag and a real wake each cost power at the same thrust (law)', () => {
    const power = (model: Partial<MomentumModel>): number => solver({}, {}, { ...bare, ...model }).forThrust(speed, 50)!.torque * speed;
    const least = power({});
    for (const cost of [{ tipLoss: true }, { rootLoss: true }, { inducedFactor: 1.1 }, { roughness: 1.3 }]) expect(power(cost)).toBeGreaterThan(least);
  });

  test('a climb asks for about weight times climb rate more, less what the slower wake saves (law: momentum theory lies between half and all of it)', () => {
    const thrust = 50;
    const hovering = solver().forThrust(speed, thrust)!.torque * speed;
    const climbing = solver({}, { climbRate: 3 }).forThrust(speed, thrust)!.torque * speed;
    expect((climbing - hovering) / (thrust * 3)).toBeGreaterThan(0.5);
    expect((climbing - hovering) / (thrust * 3)).toBeLessThan(1);
  });

  test('more than the rotor can give is not given', () => {
    const most = solver().highestThrust(speed)!;
    expect(solver().forThrust(speed, most.thrust * 1.05)).toBeUndefined();
    expect(solver().forThrust(speed, most.thrust * 0.97)!.thrust / most.thrust).toBeCloseTo(0.97, 5);
  });

  test('stall shows on the blade before the thrust ends', () => {
    const stalling = solver();
    expect(stalling.forThrust(speed, 40)).toBeDefined();
    expect(stalling.stations().stalledFraction).toBe(0);
    stalling.atCollective(speed, 22 * degree);
    expect(stalling.stations().stalledFraction).toBeGreaterThan(0.3);
  });

  test('the lift along the blade sums up to the thrust (law)', () => {
    const rotor = solver();
    const { thrust } = rotor.forThrust(speed, 50)!;
    const sum = rotor.stations().lift.reduce((total, lift) => total + lift, 0);
    expect((2 * sum * (0.8 - 0.14)) / 60 / thrust).toBeCloseTo(1, 6);
  });
});

describe('shape', () => {
  test('the solidity of a constant chord is b·c/(πR), that of a chord falling to nothing at the tip a quarter of its root’s (by hand: 3∫(1 − x)x² dx = 1/4)', () => {
    expect(thrustSolidity({ ...shape, radius: 1, chord: [{ r: 0, value: 0.1 }] })).toBeCloseTo(0.2 / Math.PI, 12);
    expect(thrustSolidity({ ...shape, radius: 1, chord: [{ r: 0, value: 0.1 }, { r: 1, value: 1e-12 }] })).toBeCloseTo(0.05 / Math.PI, 6);
  });

  test('a shape that is none is refused', () => {
    expect(() => bladeElements({ ...shape, rootCutout: 0.8 })).toThrow('rootCutout');
    expect(() => bladeElements({ ...shape, chord: [] })).toThrow('chord');
    expect(() => bladeElements({ ...shape, twist: [{ r: 0.5, value: 0 }, { r: 0.5, value: 0 }] })).toThrow('ascend');
  });
});

test('the band is as wide as its parts (by hand: 100 W of drag, 50 W of lift: ±20 ±3.5 W)', () => {
  const band = powerBand({ profilePower: 100, inducedPower: 50 });
  expect(band.low).toBeCloseTo(126.5, 9);
  expect(band.high).toBeCloseTo(173.5, 9);
  expect(powerBand({ profilePower: 100, inducedPower: 50 }, 360 / Math.PI).high).toBeCloseTo(174.5, 9);
});
