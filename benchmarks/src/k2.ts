/**
 * Yardstick K2: 100 trims in forward flight: 20 advance ratios by 5 thrusts, 20 elements by 36 azimuths, linear inflow,
 * flapping to the first harmonic. One line of JSON: the median CPU seconds of a warm run, and sums that tell whether the
 * work was done rightly.
 */
import { TrimSolver } from '@rotorwright/rotor';
import { inventedSection } from './shared/invented-section.ts';

const RATIOS = 20;
const THRUSTS = 5;
const ELEMENTS = 20;
const RADIUS = 0.8;
const CUTOUT = 0.15 * RADIUS;
const SPEED = (1500 * Math.PI) / 30;
const DENSITY = 1.225;
const DRAG_AREA = 0.015;

const width = (RADIUS - CUTOUT) / ELEMENTS;
const solver = new TrimSolver(
  {
    blades: 2,
    radius: RADIUS,
    rootCutout: CUTOUT,
    stations: Float64Array.from({ length: ELEMENTS }, (_, i) => CUTOUT + (i + 0.5) * width),
    chords: new Float64Array(ELEMENTS).fill(0.06),
    twist: new Float64Array(ELEMENTS),
    section: inventedSection(),
  },
  { density: DENSITY, kinematicViscosity: 1.46e-5, climbRate: 0 },
  { inertia: 0.05, frequencyRatio: Math.sqrt(1.1), cosine: -0.01, sine: 0.005 },
  { azimuths: 36, inducedFactor: 1, unevenness: 1, roughness: 1, tipLoss: false },
);

function run(): readonly number[] {
  const sums = [0, 0, 0, 0, 0, 0];
  let last = 0;
  for (let b = 0; b < THRUSTS; b++) {
    for (let a = 0; a < RATIOS; a++) {
      const ratio = 0.02 + (a * 0.23) / (RATIOS - 1);
      const thrust = 30 + 10 * b;
      const airspeed = ratio * SPEED * RADIUS;
      const tilt = Math.atan((0.5 * DENSITY * airspeed ** 2 * DRAG_AREA) / thrust);
      const found = solver.solve({ speed: SPEED, thrust, advanceRatio: ratio * Math.cos(tilt), throughRatio: ratio * Math.sin(tilt) });
      if (found === undefined) throw new Error(`no trim at ratio ${a}, thrust ${b}`);
      const values = [found.collective, found.cyclicCos, found.cyclicSin, found.inducedRatio, found.coning, found.power];
      values.forEach((value, k) => void (sums[k]! += value));
      last = found.power;
    }
  }
  return [...sums, last];
}

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Runs before the first that is timed: by then the engine has compiled what it will, on threads whose time counts as well. */
const WARMING = 25;
let check = run();
for (let i = 1; i < WARMING; i++) check = run();
const times = Array.from({ length: 25 }, () => {
  const start = cpuSeconds();
  check = run();
  return cpuSeconds() - start;
});
console.log(JSON.stringify({ k: 'K2', work: RATIOS * THRUSTS, t: times.toSorted((a, b) => a - b)[times.length >> 1], check }));
