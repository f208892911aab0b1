import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dutyForSpeed,
  electricSpeed,
  enduranceSpeed,
  forwardFlightPower,
  fuelFlow,
  inducedSpeed,
  packCurrent,
  packEndurance,
  pitchForThrustCoefficient,
  pitchInTipPathPlane,
  rangeSpeed,
  tailThrustNeeded,
  thrustCoefficientAtPitch,
  type ElectricDrive,
  type FlyingRotor,
} from '../src/index.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const rotor: FlyingRotor = { blades: 2, radius: 0.8, chord: 0.06, speed: 157, mass: 5, dragArea: 0.018, climbRate: 0, density: 1.225, dragCoefficient: 0.012, inducedFactor: 1.15, profileGrowth: 4.65 };

describe('forward flight', () => {
  test('the induced speed is that of hover at rest, and falls to T/(2ρA·V) far beyond it (law)', () => {
    fc.assert(
      fc.property(between(0.1, 30), between(0, 40), (square, along) => {
        const v = inducedSpeed(square, along, 0);
        expect(v * Math.sqrt(along ** 2 + v ** 2)).toBeCloseTo(square, 8);
      }),
    );
    expect(inducedSpeed(9, 0, 0)).toBeCloseTo(3, 10);
    expect(inducedSpeed(9, 300, 0)).toBeCloseTo(9 / 300, 5);
  });

  test('the farthest flight is faster than the longest, and no speed beside either does better (law)', () => {
    const [longest, farthest] = [enduranceSpeed(rotor)!, rangeSpeed(rotor)!];
    expect(farthest).toBeGreaterThan(longest);
    const power = (airspeed: number): number => forwardFlightPower(rotor, airspeed).power;
    for (const step of [-0.1, 0.1]) {
      expect(power(longest + step)).toBeGreaterThan(power(longest));
      expect(power(farthest + step) / (farthest + step)).toBeGreaterThan(power(farthest) / farthest);
    }
  });

  test('the pitch found balances thrust and rolling moment (independent route: quadrature over the disc)', () => {
    const [solidity, liftSlope, thrustCoefficient, advanceRatio, inflowRatio, coning] = [0.05, 5.7, 0.004, 0.2, 0.03, 0.02];
    const { collective, cyclicCos, cyclicSin } = pitchInTipPathPlane({ solidity, liftSlope, thrustCoefficient, advanceRatio, inflowRatio, coning });
    let [thrust, roll, pitch] = [0, 0, 0];
    const [turns, parts] = [72, 400];
    for (let turn = 0; turn < turns; turn++) {
      const azimuth = ((turn + 0.5) * 2 * Math.PI) / turns;
      for (let part = 0; part < parts; part++) {
        const x = (part + 0.5) / parts;
        const across = x + advanceRatio * Math.sin(azimuth);
        const through = inflowRatio + advanceRatio * coning * Math.cos(azimuth);
        const load = ((collective + cyclicCos * Math.cos(azimuth) + cyclicSin * Math.sin(azimuth)) * across ** 2 - through * across) / (turns * parts);
        thrust += ((solidity * liftSlope) / 2) * load;
        roll += load * x * Math.sin(azimuth);
        pitch += load * x * Math.cos(azimuth);
      }
    }
    expect(thrust).toBeCloseTo(thrustCoefficient, 7);
    expect(roll).toBeCloseTo(0, 6);
    expect(pitch).toBeCloseTo(0, 6);
  });
});

describe('tail rotor', () => {
  test('pitch and thrust coefficient are each other’s inverse, either way round (law)', () => {
    fc.assert(
      fc.property(between(-0.5, 0.5), between(0.02, 0.3), (pitch, solidity) => {
        const thrust = thrustCoefficientAtPitch({ solidity, liftSlope: 5.73 }, pitch);
        expect(pitchForThrustCoefficient({ solidity, liftSlope: 5.73 }, thrust)).toBeCloseTo(pitch, 10);
      }),
    );
  });

  test('a fin that hides half the thrust doubles what the rotor must give (law)', () => {
    expect(tailThrustNeeded(4, 1, 0.9, 0.5)).toBeCloseTo(2 * tailThrustNeeded(4, 1, 0.9, 0), 12);
  });
});

const drive: ElectricDrive = { speedConstant: 54, resistance: 0.02, noLoadCurrent: 2, openVoltage: 44, packResistance: 0.03, ratio: 10, gearEfficiency: 0.95 };

describe('electric drive', () => {
  test('the duty that holds the speed of a duty is that duty (law)', () => {
    fc.assert(
      fc.property(between(0.2, 1), between(0, 2e-4), between(0, 3), (duty, coefficient, constant) => {
        const speed = electricSpeed(drive, { coefficient, constant }, duty);
        if (speed === undefined) return;
        expect(dutyForSpeed(drive, speed, coefficient * speed ** 2 + constant)).toBeCloseTo(duty, 9);
      }),
    );
  });

  test('a load that outweighs the current of a stalled motor is not turned', () => {
    expect(electricSpeed(drive, { coefficient: 0, constant: 1e3 }, 1)).toBeUndefined();
    expect(dutyForSpeed(drive, 200, 1e3)).toBeUndefined();
  });
});

describe('endurance', () => {
  const openVoltage = [
    { charge: 0, voltage: 38 },
    { charge: 0.3, voltage: 43 },
    { charge: 1, voltage: 50 },
  ];

  test('the charge runs out when the clock says so (independent route: stepped in time)', () => {
    const profile = [{ power: 800, share: 3 }, { power: 1600, share: 1 }];
    const pack = { capacity: 18_000, resistance: 0.03, openVoltage, startCharge: 0.95, endCharge: 0.15 };
    let [charge, time] = [pack.startCharge, 0];
    const step = 0.05;
    while (charge > pack.endCharge) {
      const voltage = charge > 0.3 ? 43 + ((charge - 0.3) * 7) / 0.7 : 38 + (charge * 5) / 0.3;
      charge -= (step * (0.75 * packCurrent(voltage, 0.03, 800)! + 0.25 * packCurrent(voltage, 0.03, 1600)!)) / pack.capacity;
      time += step;
    }
    expect(packEndurance(profile, pack)!.time).toBeCloseTo(time, 0);
  });

  test('a power beyond V²/4R cannot be given, even once at the end (law)', () => {
    const pack = { capacity: 18_000, resistance: 0.3, openVoltage, startCharge: 1, endCharge: 0 };
    expect(packEndurance([{ power: 38 ** 2 / 1.2 - 1, share: 1 }], pack)).toBeDefined();
    expect(packEndurance([{ power: 38 ** 2 / 1.2 + 1, share: 1 }], pack)).toBeUndefined();
  });

  test('fuel: half the time at twice the power burns as the mean does (by hand)', () => {
    expect(fuelFlow([{ power: 1000, share: 1, specificConsumption: 2e-7 }, { power: 2000, share: 1, specificConsumption: 2e-7 }])).toBeCloseTo(3e-4, 12);
  });

  test('misuse is refused', () => {
    expect(() => packEndurance([{ power: 1, share: 1 }], { capacity: 1, resistance: 0, openVoltage, startCharge: 0.5, endCharge: 0.5 })).toThrow('endCharge');
    expect(() => packEndurance([{ power: 0, share: 1 }], { capacity: 1, resistance: 0, openVoltage, startCharge: 1, endCharge: 0 })).toThrow('power');
  });
});
