import { defineCalculation } from '../define.ts';
import { numberOutput, speedInput, speedOutput } from '../specs.ts';

const wholeNumber = { kind: 'number', unit: '-', shown: '-', whole: true } as const;

export const shaftSpeed = defineCalculation({
  id: 'shaft-speed',
  title: 'Speed of a shaft',
  section: 'Drive',
  summary: 'Speed of a shaft from the exact ratio to the shaft that turns it.',
  inputs: {
    ratioNumerator: { ...wholeNumber, title: 'Ratio, above the line; negative when the shafts turn against each other', symbol: 'p', example: 1 },
    ratioDenominator: { ...wholeNumber, title: 'Ratio, below the line', symbol: 'q', min: 1, example: 5 },
    sourceSpeed: speedInput('Speed of the shaft that turns it', 'n_0', 14_600),
  },
  outputs: {
    speed: speedOutput('Speed; negative when it turns left-handed about its axis', 'n'),
    ratio: numberOutput('Ratio to the shaft that turns it', 'i'),
  },
  formulas: [
    { output: 'ratio', tex: String.raw`i = \frac{p}{q}` },
    { output: 'speed', tex: String.raw`n = \frac{p}{q}\,n_0` },
  ],
  source: 'Definition: speeds multiply along a train.',
  validity: ['No slip: gears, toothed belts, clutches that grip.'],
  compute: ({ ratioNumerator, ratioDenominator, sourceSpeed }) => ({
    outputs: { speed: (sourceSpeed * ratioNumerator) / ratioDenominator, ratio: ratioNumerator / ratioDenominator },
    warnings: [],
  }),
});
