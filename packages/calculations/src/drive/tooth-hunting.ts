import { toothHunting as hunt } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput, teethInput } from '../specs.ts';

export const toothHunting = defineCalculation({
  id: 'tooth-hunting',
  title: 'Which teeth meet',
  section: 'Drive',
  summary: 'How many turns pass until the same two teeth meet again. Counts without a common factor share the wear among all teeth.',
  inputs: { teeth1: teethInput('Teeth of the pinion', 'z_1', 17), teeth2: teethInput('Teeth of the gear', 'z_2', 84) },
  outputs: {
    commonFactor: numberOutput('Greatest common factor of the tooth counts', 'g'),
    pinionTurnsToRepeat: numberOutput('Turns of the pinion until the same teeth meet', 'N_1'),
    huntingFrequencyRatio: numberOutput('Frequency of one pair of teeth over the mesh frequency', 'f_\\mathrm{ht}/f_\\mathrm{m}'),
  },
  formulas: [
    { output: 'commonFactor', tex: String.raw`g = \gcd(z_1, z_2)` },
    { output: 'pinionTurnsToRepeat', tex: String.raw`N_1 = \frac{z_2}{g}` },
    { output: 'huntingFrequencyRatio', tex: String.raw`\frac{f_\mathrm{ht}}{f_\mathrm{m}} = \frac{g}{z_1 z_2}` },
  ],
  source: 'Definition: one pair of teeth meets once in lcm(z1, z2) meshes.',
  validity: ['Any pair of toothed wheels.'],
  compute: ({ teeth1, teeth2 }) => ({ outputs: { ...hunt(teeth1, teeth2) }, warnings: [] }),
});
