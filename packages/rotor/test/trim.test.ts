import { describe, expect, test } from 'vitest';
import { HoverSolver, TrimSolver, bladeElements, forwardFlightPower, inflowUnevenness, naca0012, pitchInTipPathPlane, realRotor, type Flapping, type Section, type SteadyFlight, type TrimModel } from '../src/index.ts';
import { Disc, UNKNOWNS } from '../src/forward/disc.ts';
import { solveLinear } from '../src/forward/solve-linear.ts';

const radius = 0.775;
const speed = 184;
const tipSpeed = speed * radius;
const air = { density: 1.225, kinematicViscosity: 1.46e-5, speedOfSound: 340.3, climbRate: 0 };
const flapping: Flapping = { inertia: 0.043, frequencyRatio: 1.03, cosine: 0, sine: 0 };
const model: TrimModel = { azimuths: 36, inducedFactor: 1.08, unevenness: 1, roughness: 1.1, tipLoss: true };
const elements = (section: Section, rootCutout = 0.14, count = 20) => bladeElements({ blades: 2, radius, rootCutout, chord: [{ r: 0, value: 0.062 }], twist: [], section }, count);
const solver = (section: Section = naca0012()): TrimSolver => new TrimSolver(elements(section), air, flapping, model);
const flight = (airspeed: number, changes: Partial<SteadyFlight> = {}): SteadyFlight => ({ speed, weight: 51, drag: 0.5 * 1.225 * airspeed ** 2 * 0.018, airspeed, climbRate: 0, ...changes });

describe('trim', () => {
  test('shaft power is what thrust, induced speed, drag of the blades, drag of the fuselage and climb take (law: balance of energy)', () => {
    for (const [airspeed, climbRate] of [[8, 0], [15, 0], [20, 2], [28, 0]] as const) {
      const given = flight(airspeed, { climbRate });
      const found = solver().solveFlight(given)!;
      const induced = found.thrust * found.inducedRatio * tipSpeed;
      const sum = induced + found.profilePower + given.drag * airspeed + given.weight * climbRate;
      // The inflow is not even over the disc, and the mean of the loads is not that of the radii.
      expect(found.power / sum).toBeCloseTo(1, 1.7);
    }
  });

  test('where a sweep comes from does not change where it ends (law)', () => {
    const warm = solver();
    for (const airspeed of [2, 5, 8, 11, 30, 12]) {
      const [after, fresh] = [warm.solveFlight(flight(airspeed))!, solver().solveFlight(flight(airspeed))!];
      expect(after.collective).toBeCloseTo(fresh.collective, 7);
      expect(after.power / fresh.power).toBeCloseTo(1, 6);
    }
  });

  test('along and across the leaning shaft the forces balance: T = W cos α + D sin α, H = W sin α − D cos α (law)', () => {
    for (const [airspeed, climbRate] of [[0, 0], [0, 3], [6, 0], [18, 2], [30, 0], [45, 0]] as const) {
      const given = flight(airspeed, { climbRate });
      const { thrust, backwardForce, discTilt, advanceRatio } = solver().solveFlight(given)!;
      const [c, s] = [Math.cos(discTilt), Math.sin(discTilt)];
      expect(thrust).toBeCloseTo(given.weight * c + given.drag * s, 9);
      expect(Math.abs(backwardForce - given.weight * s + given.drag * c), `${airspeed} m/s`).toBeLessThan(1e-6 * given.weight);
      expect(advanceRatio).toBeCloseTo((airspeed * c - climbRate * s) / tipSpeed, 12);
    }
  });

  test('every slope of the residuals with every unknown is that of differences (independent route: central differences)', () => {
    const straight = { kind: 'polar', thickness: 0, liftSlope: 5.73, cd0: 0.012, cd2: 0.3 } as const;
    const disc = new Disc(elements(straight), { density: 1.225, kinematicViscosity: 1.46e-5, climbRate: 0 }, { ...flapping, cosine: 0.02, sine: -0.01 }, { ...model, tipLoss: false });
    const course = { speed, weight: 51, drag: 6, ahead: 0.2, up: 0.01, leans: true };
    const at = Float64Array.from([0.12, 0.01, -0.05, 0.01, 0.02, 0.15]);
    const width = UNKNOWNS + 1;
    const residuals = (unknowns: Float64Array): readonly number[] => {
      disc.pass(course, unknowns, false);
      return at.reduce<number[]>((all, _, row) => [...all, -disc.system[row * width + UNKNOWNS]!], []);
    };
    disc.pass(course, at, true);
    const slopes = disc.system.slice();
    for (let k = 0; k < UNKNOWNS; k++) {
      const [more, less] = [1e-5, -1e-5].map((step) => residuals(at.map((value, index) => (index === k ? value + step : value))));
      for (let row = 0; row < UNKNOWNS; row++) {
        const differences = (more![row]! - less![row]!) / 2e-5;
        expect(Math.abs(slopes[row * width + k]! - differences), `residual ${row} with unknown ${k}`).toBeLessThan(1e-6 * (1 + Math.abs(differences)));
      }
    }
  });

  test('a rotor that is held to the flow of a flight gives what the flight did (independent route: five unknowns for six)', () => {
    for (const airspeed of [0, 12, 30]) {
      const flown = solver().solveFlight(flight(airspeed))!;
      const throughRatio = (airspeed / tipSpeed) * Math.sin(flown.discTilt);
      const held = solver().solve({ speed, thrust: flown.thrust, advanceRatio: flown.advanceRatio, throughRatio })!;
      expect(held.power / flown.power).toBeCloseTo(1, 6);
      for (const angle of ['collective', 'cyclicCos', 'cyclicSin', 'coning'] as const) expect(held[angle]).toBeCloseTo(flown[angle], 7);
    }
  });

  test('a sweep whose steps are long and whose tilt outruns its advance ratio finds what single flights find (regression: it went over to stalled blades)', () => {
    const coarse = () => new TrimSolver(bladeElements({ blades: 2, radius: 0.8, rootCutout: 0.14, chord: [{ r: 0, value: 0.06 }], twist: [], section: naca0012() }, 12), air, { inertia: 0.05, frequencyRatio: 1, cosine: 0, sine: 0 }, { ...model, azimuths: 16 });
    const at = (airspeed: number): SteadyFlight => ({ speed: 180, weight: 49, drag: 0.5 * 1.225 * airspeed ** 2 * 0.02, airspeed, climbRate: 0 });
    const warm = coarse();
    for (const airspeed of [37.03, 41.14, 45.26, 49.37, 53.49]) {
      expect(warm.solveFlight(at(airspeed))!.power / coarse().solveFlight(at(airspeed))!.power).toBeCloseTo(1, 5);
    }
  });

  test('with straight lift, no drag, no cutout and even inflow at rest it is the closed form (independent route: pitchInTipPathPlane at μ = 0)', () => {
    const lawful = { kind: 'polar', thickness: 0, liftSlope: 5.73, cd0: 0, cd2: 0 } as const;
    const bare = new TrimSolver(elements(lawful, 0, 80), { density: 1.225, kinematicViscosity: 1.46e-5, climbRate: 0 }, { ...flapping, frequencyRatio: 1 }, { ...model, inducedFactor: 1, roughness: 1, tipLoss: false });
    const found = bare.solve({ speed, thrust: 51, advanceRatio: 0, throughRatio: 0 })!;
    const thrustCoefficient = 51 / (1.225 * Math.PI * radius ** 2 * tipSpeed ** 2);
    const inflowRatio = Math.sqrt(thrustCoefficient / 2);
    const closed = pitchInTipPathPlane({ solidity: (2 * 0.062) / (Math.PI * radius), liftSlope: 5.73, thrustCoefficient, advanceRatio: 0, inflowRatio, coning: 0 });
    expect(found.inducedRatio).toBeCloseTo(inflowRatio, 8);
    expect(found.collective / closed.collective).toBeCloseTo(1, 2);
    expect(found.cyclicCos).toBeCloseTo(0, 9);
    expect(found.cyclicSin).toBeCloseTo(0, 9);
  });

  test('near the power of the energy method, given the drag of the blades at rest (independent route: forwardFlightPower, within 8 %)', () => {
    const solidity = (2 * 0.062) / (Math.PI * radius);
    const atRest = solver().solveFlight(flight(0))!.profilePower;
    const dragCoefficient = (8 * atRest) / (solidity * 1.225 * Math.PI * radius ** 2 * tipSpeed ** 3);
    for (const airspeed of [10, 15, 20]) {
      const found = solver().solveFlight(flight(airspeed))!;
      const sum = forwardFlightPower({ blades: 2, radius, chord: 0.062, speed, mass: 51 / 9.80665, dragArea: 0.018, climbRate: 0, density: 1.225, dragCoefficient, inducedFactor: 1.15, profileGrowth: 4.65 }, airspeed);
      expect(found.power / sum.power).toBeGreaterThan(0.92);
      expect(found.power / sum.power).toBeLessThan(1.08);
    }
  });

  test('a machine far too heavy or too fast has no trim', () => {
    expect(solver().solveFlight(flight(20, { weight: 2000 }))).toBeUndefined();
    expect(solver().solveFlight(flight(80))).toBeUndefined();
  });

  test('fast flight with a drag law and no cutout is trimmed: reversed flow lifts like any other, and drag that comes back through the tilt converges (regression)', () => {
    const straight = { kind: 'polar', thickness: 0, liftSlope: 5.73, cd0: 0.012, cd2: 0.3 } as const;
    const powers = [0.3, 0.33, 0.36, 0.39, 0.42].map((ratio) => {
      const airspeed = ratio * tipSpeed;
      const bare = new TrimSolver(elements(straight, 0), { density: 1.225, kinematicViscosity: 1.46e-5, climbRate: 0 }, { ...flapping, frequencyRatio: 1 }, { ...model, roughness: 1 });
      return bare.solveFlight(flight(airspeed))!.power;
    });
    // Smooth: each lies near the middle of its neighbours, a little below.
    for (let i = 1; i < powers.length - 1; i++) expect(Math.abs(powers[i]! / ((powers[i - 1]! + powers[i + 1]!) / 2) - 0.99)).toBeLessThan(0.01);
  });

  test('at rest it takes the power of hover once the unevenness of its inflow is counted (independent route: HoverSolver, within 1.5 %)', () => {
    for (const weight of [30, 51, 80]) {
      const blades = elements(naca0012());
      const hovering = { ...realRotor, inducedFactor: model.inducedFactor, roughness: model.roughness };
      const unevenness = inflowUnevenness(blades, air, hovering, speed, weight)!;
      const { power } = new TrimSolver(blades, air, flapping, { ...model, unevenness }).solveFlight(flight(0, { weight }))!;
      expect(unevenness).toBeGreaterThan(1.1);
      const { torque } = new HoverSolver(blades, air, hovering).forThrust(speed, weight)!;
      expect(Math.abs(power / (torque * speed) - 1)).toBeLessThan(0.015);
    }
    expect(inflowUnevenness(elements(naca0012()), air, realRotor, speed, 3000)).toBeUndefined();
  });

  test('mean induced speed is κ times that of momentum theory, at rest and in fast flight (closed form)', () => {
    const forced = new TrimSolver(elements(naca0012()), air, flapping, { ...model, inducedFactor: 1.2 });
    const coefficient = 51 / (1.225 * Math.PI * radius ** 2 * tipSpeed ** 2);
    expect(forced.solve({ speed, thrust: 51, advanceRatio: 0, throughRatio: 0 })!.inducedRatio).toBeCloseTo(1.2 * Math.sqrt(coefficient / 2), 8);
    expect(forced.solve({ speed, thrust: 51, advanceRatio: 0.3, throughRatio: 0 })!.inducedRatio / ((1.2 * coefficient) / (2 * 0.3))).toBeCloseTo(1, 3);
  });

  test('the tip path leans as it is asked to, at the price of hub moments and cyclic (law)', () => {
    const leaning = new TrimSolver(elements(naca0012()), air, { ...flapping, cosine: 0.02 }, model);
    const [level, leant] = [solver().solveFlight(flight(10))!, leaning.solveFlight(flight(10))!];
    expect(Math.abs(leant.cyclicCos - level.cyclicCos) + Math.abs(leant.cyclicSin - level.cyclicSin)).toBeGreaterThan(0.01);
  });
});

test('a linear system is solved, and one without a solution is told (by hand)', () => {
  const solution = new Float64Array(2);
  // 2y = 4, x + y = 5
  expect(solveLinear(Float64Array.from([0, 2, 4, 1, 1, 5]), solution)).toBe(true);
  expect([...solution]).toEqual([3, 2]);
  expect(solveLinear(Float64Array.from([1, 1, 1, 1, 1, 2]), solution)).toBe(false);
});
