import { multiplyRatios, ratio, ratioToNumber } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput, speedInput, speedOutput, teethInput } from '../specs.ts';

export const driveRatio = defineCalculation({
  id: 'drive-ratio',
  title: 'Ratio of a gear train',
  section: 'Drive',
  summary: 'Ratio of a train of meshes or belts from its tooth counts, and the speed that comes out.',
  inputs: {
    stages: {
      kind: 'list',
      title: 'Stages, from the input to the output',
      atLeast: 1,
      of: { kind: 'record', title: 'Stage', fields: { driver: teethInput('Teeth that drive', 'z_1', 17), driven: teethInput('Teeth that are driven', 'z_2', 85) } },
      example: [
        { driver: 17, driven: 85 },
        { driver: 54, driven: 11 },
      ],
    },
    inputSpeed: speedInput('Speed of the input', 'n_\\mathrm{in}', 14_600),
  },
  outputs: {
    ratio: numberOutput('Ratio, input speed over output speed', 'i'),
    outputSpeed: speedOutput('Speed of the output', 'n_\\mathrm{out}'),
  },
  formulas: [
    { output: 'ratio', tex: String.raw`i = \prod_k \frac{z_{2,k}}{z_{1,k}}` },
    { output: 'outputSpeed', tex: String.raw`n_\mathrm{out} = \frac{n_\mathrm{in}}{i}` },
  ],
  source: 'Definition: teeth in contact share one pitch-line velocity.',
  validity: ['Meshes, bevels and toothed belts, without slip. The sense of rotation is not followed.'],
  compute: ({ stages, inputSpeed }) => {
    const exact = stages.reduce((product, { driver, driven }) => multiplyRatios(product, ratio(driven, driver)), ratio(1));
    const value = ratioToNumber(exact);
    return { outputs: { ratio: value, outputSpeed: inputSpeed / value }, warnings: [] };
  },
});
