import { tubeTwist } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput, lengthInput } from '../specs.ts';
import { checkBore, tubeInputs } from './tube.ts';

export const tubeTorsion = defineCalculation({
  id: 'tube-torsion',
  title: 'Twist of a tube',
  section: 'Shafts and beams',
  summary: 'How far a torque twists a round tube or bar, and the shear stress in it.',
  inputs: {
    torque: { kind: 'number', title: 'Torque', symbol: 'T', unit: 'N·m', shown: 'N·m', example: 0.9 },
    outer: { ...tubeInputs.outer, example: 0.006 },
    inner: { ...tubeInputs.inner, example: 0.005 },
    length: lengthInput('Length', 'l', 950),
    G: { kind: 'number', title: 'Shear modulus', symbol: 'G', unit: 'Pa', shown: 'GPa', above: 0, example: 26e9 },
  },
  outputs: {
    twist: angleOutput('Twist, with the sign of the torque', '\\varphi'),
    shearStress: { title: 'Shear stress at the outside, with the sign of the torque', symbol: '\\tau', unit: 'Pa', shown: 'MPa' },
    stiffness: { title: 'Torsional stiffness', symbol: 'k_t', unit: 'N·m/rad', shown: 'N·m/rad' },
  },
  formulas: [
    { output: 'stiffness', tex: String.raw`k_t = \frac{G I_p}{l},\quad I_p = \frac{\pi}{32}\left(D^4 - d^4\right)` },
    { output: 'twist', tex: String.raw`\varphi = \frac{T}{k_t}` },
    { output: 'shearStress', tex: String.raw`\tau = \frac{T D}{2 I_p}` },
  ],
  source: 'Saint-Venant torsion of a circular tube.',
  validity: ['Elastic, of one section and material. A thin wall may buckle before it yields; ends, pins and glued joints add twist of their own.'],
  compute: ({ torque, outer, inner, length, G }) => {
    checkBore(outer, inner);
    return { outputs: { ...tubeTwist(torque, outer, inner, length, G) }, warnings: [] };
  },
});
