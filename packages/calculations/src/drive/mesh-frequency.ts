import { passingFrequency, toothHunting } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { frequencyOutput, speedInput, teethInput } from '../specs.ts';

export const meshFrequency = defineCalculation({
  id: 'mesh-frequency',
  title: 'Mesh frequency',
  section: 'Drive',
  summary: 'How often teeth come into mesh, and how often the same pair does when the mate is known.',
  inputs: {
    teeth: teethInput('Teeth', 'z', 17),
    shaftSpeed: speedInput('Speed of its shaft', 'n', 14_600),
    mateTeeth: { ...teethInput('Teeth of the mate', 'z_2', 85), optional: true },
  },
  outputs: { frequency: frequencyOutput('Mesh frequency', 'f_\\mathrm{m}'), huntingFrequency: frequencyOutput('Frequency at which the same teeth meet', 'f_\\mathrm{ht}') },
  formulas: [
    { output: 'frequency', tex: String.raw`f_\mathrm{m} = z\,\frac{|\omega|}{2\pi}` },
    { output: 'huntingFrequency', tex: String.raw`f_\mathrm{ht} = f_\mathrm{m}\,\frac{\gcd(z, z_2)}{z\,z_2}` },
  ],
  source: 'Definition.',
  validity: ['Shafts that stay in place: not for the planets of a planetary gear.'],
  compute: ({ teeth, shaftSpeed, mateTeeth }) => {
    const frequency = passingFrequency(teeth, shaftSpeed);
    return mateTeeth === undefined
      ? { outputs: { frequency }, warnings: ['huntingFrequency is left out: it needs mateTeeth.'] }
      : { outputs: { frequency, huntingFrequency: frequency * toothHunting(teeth, mateTeeth).huntingFrequencyRatio }, warnings: [] };
  },
});
