/**
 * Yardstick K1: 2,000 hover solves, the collective for a thrust: 40 thrusts by 50 speeds, 60 elements, tip loss, a section
 * table by angle and Reynolds number. One line of JSON: the median CPU seconds of a warm run, and sums that tell whether
 * the work was done rightly.
 */
import { HoverSolver } from '@rotorwright/rotor';
import { inventedSection } from './shared/invented-section.ts';

const THRUSTS = 40;
const SPEEDS = 50;
const ELEMENTS = 60;
const RADIUS = 0.8;
const CUTOUT = 0.15 * RADIUS;

const width = (RADIUS - CUTOUT) / ELEMENTS;
const solver = new HoverSolver(
  {
    blades: 2,
    radius: RADIUS,
    rootCutout: CUTOUT,
    stations: Float64Array.from({ length: ELEMENTS }, (_, i) => CUTOUT + (i + 0.5) * width),
    chords: new Float64Array(ELEMENTS).fill(0.06),
    twist: new Float64Array(ELEMENTS),
    section: inventedSection(),
  },
  { density: 1.225, kinematicViscosity: 1.46e-5, climbRate: 0 },
  { swirl: false, tipLoss: true, rootLoss: false, dragInInflow: true, inducedFactor: 1, roughness: 1 },
);

function run(): readonly number[] {
  let [collectives, powers, lastThrust, point777] = [0, 0, 0, 0];
  for (let a = 0; a < THRUSTS; a++) {
    for (let b = 0; b < SPEEDS; b++) {
      const speed = ((1100 + (b * 900) / (SPEEDS - 1)) * Math.PI) / 30;
      const found = solver.forThrust(speed, 20 + (a * 80) / (THRUSTS - 1));
      if (found === undefined) throw new Error(`no solution at thrust ${a}, speed ${b}`);
      const power = found.inducedPower + found.profilePower;
      collectives += found.collective;
      powers += power;
      if (a === THRUSTS - 1 && b === 0) lastThrust = found.collective;
      if (a * SPEEDS + b === 777) point777 = power;
    }
  }
  return [collectives, powers, lastThrust, point777];
}

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Runs before the first that is timed: by then the engine has compiled what it will, on threads whose time counts as well. */
const WARMING = 10;
let check = run();
for (let i = 1; i < WARMING; i++) check = run();
const times = Array.from({ length: 15 }, () => {
  const start = cpuSeconds();
  check = run();
  return cpuSeconds() - start;
});
console.log(JSON.stringify({ k: 'K1', work: THRUSTS * SPEEDS, t: times.toSorted((a, b) => a - b)[times.length >> 1], check }));
