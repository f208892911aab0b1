import { beltTurnFrequency, passingFrequency } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { frequencyOutput, speedInput, teethInput } from '../specs.ts';

export const beltToothFrequency = defineCalculation({
  id: 'belt-tooth-frequency',
  title: 'Frequencies of a toothed belt',
  section: 'Drive',
  summary: 'How often belt teeth enter a pulley, and how often the belt comes round.',
  inputs: {
    pulleyTeeth: teethInput('Teeth of the pulley', 'z', 20),
    shaftSpeed: speedInput('Speed of its shaft', 'n', 8600),
    beltTeeth: { ...teethInput('Teeth of the belt', 'z_b', 480), optional: true },
  },
  outputs: { frequency: frequencyOutput('Tooth frequency', 'f_\\mathrm{t}'), beltFrequency: frequencyOutput('Turns of the belt', 'f_\\mathrm{b}') },
  formulas: [
    { output: 'frequency', tex: String.raw`f_\mathrm{t} = z\,\frac{|\omega|}{2\pi}` },
    { output: 'beltFrequency', tex: String.raw`f_\mathrm{b} = \frac{f_\mathrm{t}}{z_b}` },
  ],
  source: 'Definition.',
  validity: ['Toothed belts, which do not slip.'],
  compute: ({ pulleyTeeth, shaftSpeed, beltTeeth }) => {
    const frequency = passingFrequency(pulleyTeeth, shaftSpeed);
    return beltTeeth === undefined
      ? { outputs: { frequency }, warnings: ['beltFrequency is left out: it needs beltTeeth.'] }
      : { outputs: { frequency, beltFrequency: beltTurnFrequency(pulleyTeeth, shaftSpeed, beltTeeth) }, warnings: [] };
  },
});
