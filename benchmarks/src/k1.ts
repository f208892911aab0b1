/**
 * Yardstick K1: 2,000 hover solves, the collective for a thrust: 40 thrusts by 50 speeds, 60 elements, tip loss, a section
 * table by angle and Reynolds number. One line of JSON: the median CPU seconds of a warm run, and sums that tell whether
 * the work was done rightly.
 */
import { HoverSolver, type SectionTable } from '@rotorwright/rotor';

const THRUSTS = 40;
const SPEEDS = 50;
const ELEMENTS = 60;
const RADIUS = 0.8;
const CUTOUT = 0.15 * RADIUS;

/** An invented section: straight lift that gives way to that of a plate, at 2° and six Reynolds numbers. */
function section(): SectionTable {
  const reynolds = Float64Array.from({ length: 6 }, (_, j) => 5e4 * 2 ** j);
  const angles = 181;
  const coefficients = new Float64Array(reynolds.length * angles * 2);
  reynolds.forEach((number, j) => {
    const stall = 10 + 1.5 * j;
    const cd0 = 0.0095 * (4e5 / number) ** 0.35;
    for (let i = 0; i < angles; i++) {
      const degrees = -180 + 2 * i;
      const reversed = Math.abs(degrees) > 90;
      const folded = degrees > 90 ? degrees - 180 : degrees < -90 ? degrees + 180 : degrees;
      const angle = (folded * Math.PI) / 180;
      const attached = 1 / (1 + Math.exp((Math.abs(folded) - stall) / 2));
      const straight = 5.9 * (reversed ? 0.7 : 1) * angle;
      coefficients[2 * (j * angles + i)] = attached * straight + (1 - attached) * 1.15 * Math.sin(2 * angle);
      coefficients[2 * (j * angles + i) + 1] = attached * (cd0 + 0.012 * straight ** 2) + (1 - attached) * (1.9 * Math.sin(angle) ** 2 + cd0);
    }
  });
  return { kind: 'table', thickness: 0.12, angles, reynolds, coefficients };
}

const width = (RADIUS - CUTOUT) / ELEMENTS;
const solver = new HoverSolver(
  {
    blades: 2,
    radius: RADIUS,
    rootCutout: CUTOUT,
    stations: Float64Array.from({ length: ELEMENTS }, (_, i) => CUTOUT + (i + 0.5) * width),
    chords: new Float64Array(ELEMENTS).fill(0.06),
    twist: new Float64Array(ELEMENTS),
    section: section(),
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

let check = run();
const times = Array.from({ length: 9 }, () => {
  const start = cpuSeconds();
  check = run();
  return cpuSeconds() - start;
});
console.log(JSON.stringify({ k: 'K1', work: THRUSTS * SPEEDS, t: times.toSorted((a, b) => a - b)[times.length >> 1], check }));
