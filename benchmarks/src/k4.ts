/**
 * Yardstick K4: 200 sweeps of a tail boom of 60 beam elements, the lowest 8 modes with their shapes, assembly included.
 * One line of JSON: the median CPU seconds of a warm run, and sums that tell whether the work was done rightly.
 */
import { assembleBeam, beamModes, type Modes } from '@rotorwright/mechanics';
import { medianCpuSeconds } from './timing/cpu.ts';

const SWEEPS = 200;
const MODES = 8;
const ELEMENTS = 60;
/** Elements of the boom tube; the rest are the tail's thinner one. */
const BOOM = 48;

const positions = Float64Array.from({ length: ELEMENTS + 1 }, (_, node) => (node * 0.95) / ELEMENTS);

/** EI and mass per length of a tube, from diameter, wall, Young's modulus and density. */
const tube = (outer: number, wall: number, youngsModulus: number, density: number): readonly [number, number] => {
  const inner = outer - 2 * wall;
  return [(youngsModulus * Math.PI * (outer ** 4 - inner ** 4)) / 64, (density * Math.PI * (outer ** 2 - inner ** 2)) / 4];
};

function sweep(index: number): Modes {
  const bendingStiffness = new Float64Array(ELEMENTS);
  const massPerLength = new Float64Array(ELEMENTS);
  const [boomStiffness, boomMass] = tube(0.025, 0.0006 + 0.000004 * index, 70e9, 1600);
  const [tailStiffness, tailMass] = tube(0.02, 0.0015, 71e9, 2700);
  bendingStiffness.fill(boomStiffness, 0, BOOM).fill(tailStiffness, BOOM);
  massPerLength.fill(boomMass, 0, BOOM).fill(tailMass, BOOM);
  const { stiffness, mass } = assembleBeam(
    { positions, bendingStiffness, massPerLength },
    [{ node: 0, kind: 'clamped' }, { node: 24, kind: 'spring', stiffness: 2e5 }],
    [{ node: ELEMENTS, mass: 0.15, inertia: 5e-5 }],
  );
  return beamModes(stiffness, mass, MODES);
}

function run(): readonly number[] {
  const sums = new Float64Array(MODES);
  let last = sweep(0);
  for (let index = 0; index < SWEEPS; index++) {
    if (index > 0) last = sweep(index);
    for (let mode = 0; mode < MODES; mode++) sums[mode]! += last.angularFrequencies[mode]! / (2 * Math.PI);
  }
  // Deflection of the tip in the first mode, of node 31 in the eighth: the clamped node has no freedoms, so node n begins at 2n − 2.
  const freedoms = 2 * ELEMENTS;
  return [...sums, Math.abs(last.shapes[freedoms - 2]!), Math.abs(last.shapes[7 * freedoms + 60]!)];
}

let check: readonly number[] = [];
const t = medianCpuSeconds(() => {
  check = run();
});
if (!check.every((value) => value > 0)) throw new Error('nothing was computed');
console.log(JSON.stringify({ k: 'K4', work: SWEEPS, t, check }));
