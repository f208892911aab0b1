import { torsionModes as modesOfChain } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { frequencyOutput } from '../specs.ts';

/** More inertias than this are refused: a chain of a machine has a handful. */
const MOST = 100;

export const torsionModes = defineCalculation({
  id: 'torsion-modes',
  title: 'Torsional frequencies of a drive',
  section: 'Shafts and beams',
  summary: 'Natural frequencies and shapes of a chain of inertias with shafts between them, across gears.',
  inputs: {
    inertias: {
      kind: 'list',
      title: 'Moments of inertia along the chain',
      atLeast: 2,
      of: { kind: 'number', title: 'Moment of inertia', symbol: 'J', unit: 'kg·m²', shown: 'kg·m²', min: 1e-15, max: 1e9 },
      example: [2e-5, 6e-5, 0.09],
    },
    stiffnesses: {
      kind: 'list',
      title: 'Torsional stiffness from each inertia to the next, one fewer',
      atLeast: 1,
      of: { kind: 'number', title: 'Torsional stiffness', symbol: 'k', unit: 'N·m/rad', shown: 'N·m/rad', min: 1e-9, max: 1e15 },
      example: [400, 900],
    },
    speedRatios: {
      kind: 'list',
      title: 'Speed of each inertia over that of the first; a shaft turns with the inertia before it. 1 throughout when not given',
      optional: true,
      of: { kind: 'number', title: 'Speed over that of the first', symbol: 'r', unit: '-', shown: '-', min: -1e6, max: 1e6 },
      example: [1, 1, 0.2],
    },
  },
  outputs: {
    frequencies: { ...frequencyOutput('Natural frequencies, ascending', 'f_n'), list: true },
    modeShapes: { title: 'Angle of each inertia on its own shaft, a row for each frequency, the largest 1', symbol: '\\varphi_{n,i}', unit: '-', shown: '-', list: true },
  },
  formulas: [
    { output: 'frequencies', tex: String.raw`\left(K - \omega^2 M\right)\theta = 0,\quad M_i = r_i^2 J_i,\quad K_i = r_i^2 k_i,\quad f = \frac{\omega}{2\pi}` },
    { output: 'modeShapes', tex: String.raw`\varphi_{n,i} = r_i\,\theta_{n,i}` },
  ],
  source: 'Thomson, Theory of Vibration, sections 5.2 and 12.4 (example read, method from memory).',
  validity: [
    'A free chain without branches; its turning as a whole, at 0 Hz, is not listed.',
    'Left out: damping, backlash, slipping clutches, and the mass of the shafts, half of which may be added to the inertias at their ends.',
  ],
  compute: ({ inertias, stiffnesses, speedRatios = inertias.map(() => 1) }) => {
    const count = inertias.length;
    if (count > MOST) throw new CalculationError('inertias', `${count} of them`, `at most ${MOST}`);
    if (stiffnesses.length !== count - 1) throw new CalculationError('stiffnesses', `${stiffnesses.length} of them`, `one fewer than there are inertias: ${count - 1}`);
    if (speedRatios.length !== count) throw new CalculationError('speedRatios', `${speedRatios.length} of them`, `as many as there are inertias: ${count}`);
    // Squares of smaller ones would drown: no gear train comes near.
    const still = speedRatios.findIndex((ratio) => Math.abs(ratio) < 1e-6);
    if (still >= 0) throw new CalculationError(`speedRatios[${still}]`, String(speedRatios[still]), 'a ratio that is not 0, its size from 10⁻⁶ to 10⁶');
    if (Math.abs(speedRatios[0]! - 1) > 1e-12) throw new CalculationError('speedRatios[0]', String(speedRatios[0]), '1: speeds are given over that of the first inertia');
    const { angularFrequencies, shapes } = modesOfChain(inertias, stiffnesses, speedRatios);
    return { outputs: { frequencies: angularFrequencies.map((omega) => omega / (2 * Math.PI)), modeShapes: shapes }, warnings: [] };
  },
});
