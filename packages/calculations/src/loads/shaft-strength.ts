import { shaftStress } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { checkBore, tubeInputs } from '../shafts/tube.ts';
import { stressOutput } from '../specs.ts';

const moment = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'N·m', shown: 'N·m', min: 0, max: 1e9, default: 0, example }) as const;

export const shaftStrength = defineCalculation({
  id: 'shaft-strength',
  title: 'Stress of a round shaft',
  section: 'Shafts and beams',
  summary: 'Stress at the outside of a shaft or tube that is twisted, bent and pulled at once.',
  inputs: {
    outer: { ...tubeInputs.outer, example: 0.012 },
    inner: { ...tubeInputs.inner, example: 0.007 },
    torque: moment('Torque', 'T', 14),
    bendingMoment: moment('Bending moment', 'M', 6),
    pull: { kind: 'number', title: 'Pull along it', symbol: 'N', unit: 'N', shown: 'N', min: 0, max: 1e9, default: 0, example: 120 },
  },
  outputs: {
    bending: stressOutput('Stress by bending', '\\sigma_b'),
    shear: stressOutput('Shear by the torque', '\\tau'),
    pull: stressOutput('Stress by the pull', '\\sigma_n'),
    equivalent: stressOutput('Equivalent stress', '\\sigma_v'),
  },
  formulas: [
    { output: 'bending', tex: String.raw`\sigma_b = \frac{32\,M D}{\pi\,(D^4 - d^4)}` },
    { output: 'shear', tex: String.raw`\tau = \frac{16\,T D}{\pi\,(D^4 - d^4)}` },
    { output: 'pull', tex: String.raw`\sigma_n = \frac{4N}{\pi\,(D^2 - d^2)}` },
    { output: 'equivalent', tex: String.raw`\sigma_v = \sqrt{(\sigma_b + \sigma_n)^2 + 3\tau^2}` },
  ],
  source: 'Beam theory and Saint-Venant torsion; distortion energy (von Mises).',
  validity: ['A plain round section. Cross holes, grooves, threads and steps double the stress and more where it swings.'],
  compute: ({ outer, inner, torque, bendingMoment, pull }) => {
    checkBore(outer, inner);
    return { outputs: { ...shaftStress(outer, inner, bendingMoment, torque, pull) }, warnings: [] };
  },
});
