import data from '../data/swashplate-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';
import type { Check, Source } from './check.ts';
import { sourced } from './rows.ts';

const swashplates = checksOf(data.cases as unknown as readonly Case[]);

const degree = Math.PI / 180;
const millimetre = 1e-3;

/** Two cranks in one plane, 40 and 80 mm, 100 mm apart, a coupler of 120 mm. */
const planar = {
  input: { pivot: [0, 0, 0], axis: [0, 0, 1], arm: [0.04, 0, 0] },
  output: { pivot: [0.1, 0, 0], axis: [0, 0, 1], arm: [0.08, 0, 0] },
  rodLength: 0.12,
  angle: 40 * degree,
};

const planarChecks: readonly Check[] = [
  {
    calculation: 'pushrod', title: 'Planar four-bar, both assemblies', inputs: planar, output: 'outputAngles', expected: [-98.01 * degree, 57.33 * degree], tolerance: 0.006 * degree, mode: 'absolute',
    source: { document: 'Norton, Design of Machinery', place: 'Example 4-1 (from memory)', kind: 'published' },
  },
];

/** Two arms of 20 mm, 100 mm apart, the second one higher by `height`, and a rod that makes them a parallelogram seen from above. */
const parallelogram = (height: number) => ({
  input: { pivot: [0, 0, 0], axis: [0, 0, 1], arm: [0.02, 0, 0] },
  output: { pivot: [0.1, 0, height], axis: [0, 0, 1], arm: [0.02, 0, 0] },
  rodLength: Math.hypot(0.1, height),
  angle: 90 * degree,
});
const lean = Math.atan(0.3);
const parallel = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['arms of 20 mm, rod and pivots of 100 mm, first arm at 90°: 5 cos φ + 1 = sin φ, so φ = 90° or cos φ = −5/13', 'pushrod', parallelogram(0), 'outputAngles', [Math.atan2(-12, -5), 90 * degree], 1e-9, 'absolute'],
  ['a parallelogram turns alike; crossed, with the rod along (12, −5): (12, −5)·(−1, 0)/((12, −5)·(12, −5)/13) = −12/13', 'pushrod', parallelogram(0), 'ratios', [-12 / 13, 1], 1e-9, 'relative'],
  ['30 mm higher: the rod leans by atan(30/100) at the first ball', 'pushrod', parallelogram(0.03), 'rodAngles1', [lean, lean], 1e-9, 'relative'],
  ['30 mm higher: and as much at the second', 'pushrod', parallelogram(0.03), 'rodAngles2', [lean, lean], 1e-9, 'relative'],
  ['100 mm of rod reach', 'pushrod', parallelogram(0), 'reachable', 1, 0, 'absolute'],
  ['150 mm of rod are longer than 100 + 20 + 20 mm', 'pushrod', { ...parallelogram(0), rodLength: 0.15 }, 'reachable', 0, 0, 'absolute'],
]);

/** A spatial four-bar whose output was also found by a simulation of bodies; two digits printed. */
const spatial = (angle: number, printed: number, other: number): Check => {
  const [arm, distance, cone] = [201.6318 * millimetre, 403.1627 * millimetre, 7.294 * degree];
  const source: Source = { document: 'Public data file to Cremasco Coelho, Mechanism and Machine Theory 142 (2025) 106163', place: `input at ${angle}°; the other assembly computed`, kind: 'published' };
  return {
    calculation: 'pushrod', title: `Spatial four-bar, input at ${angle}°`, source,
    inputs: {
      input: { pivot: [0, 0, 0], axis: [0.009243, -0.951003, 0.309043], arm: [-0.379646, 0.400777, 0.833815].map((part) => part * arm) },
      output: { pivot: [0.524328, 0.835662, -0.163552].map((part) => part * distance), axis: [1, 0, 0], arm: [-Math.sin(cone) * arm, Math.cos(cone) * arm, 0] },
      rodLength: 0.35,
      angle: angle * degree,
    },
    output: 'outputAngles',
    expected: [printed, other].toSorted((a, b) => a - b),
    // Half of the last digit printed.
    tolerance: 0.006,
    mode: 'absolute',
  };
};

/** A link that stands 30 mm aside and 40 mm up: a triangle of 3, 4, 5. */
const linkChecks: readonly Check[] = ([['length', 0.05, 'the triangle 3, 4, 5'], ['seen', 0.014, '50 − 2·18'], ['engaged', 0.008, '(30 + 36 − 50)/2'], ['turnsEngaged', 8 / 0.45, '8 mm at a pitch of 0.45 mm']] as const).map(([output, expected, place]): Check => ({
  calculation: 'link-length', title: 'A link whose balls stand 30 mm and 40 mm apart', inputs: { from: [0, 0, 0], to: [0.03, 0, 0.04], rod: 0.03, end: 0.018, thread: 'M2.5' }, output, expected, tolerance: 1e-12, mode: 'relative',
  source: { document: 'Geometry of a rod with two ends', place, kind: 'by hand' },
}));

/** 0.5 N·m at 45° are K = 1 N·m. */
const duty = { moment: 0.5, pitch: '45 °', blades: 2, lowest: '0 °' };
const servoChecks = sourced({ document: 'Worked by hand in the title: τ = Σ K·sin θ·cos θ·∂θ/∂α', kind: 'by hand' }, [
  ['two blades at 45°, half a radian a radian: 2 · ½ · 0.5', 'servo-torque', { ...duty, highest: '45 °', collectiveGain: 0.5 }, 'torque', 0.5, 1e-12, 'relative'],
  ['15° of cyclic: one blade up, the other down, and both turn the servo the same way: 2 · ½ sin 30°', 'servo-torque', { ...duty, highest: '0 °', cyclic: '15 °', cosineGain: 1 }, 'torque', 0.5, 1e-12, 'relative'],
  ['… collective then weighs nothing, for they cancel', 'servo-torque', { ...duty, highest: '0 °', cyclic: '15 °', collectiveGain: 1 }, 'torque', 0, 1e-12, 'absolute'],
  ['four blades at 45° weigh twice as much', 'servo-torque', { ...duty, blades: 4, highest: '45 °', collectiveGain: 0.5 }, 'torque', 1, 1e-12, 'relative'],
]);

export const controlCases: readonly Check[] = [...servoChecks, ...swashplates, ...planarChecks, ...parallel, ...linkChecks, spatial(0, 1.71, 3.094954), spatial(-60, 1.16, -2.497995), spatial(-120, 1.63, -1.832086), spatial(-180, 2.42, -1.80103)];
