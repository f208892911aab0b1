import { meanDiameterSpeed } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthInput, numberOutput, rpm, speedInput } from '../specs.ts';

/** 1 mm·rpm */
const perMillimetre = rpm(1) / 1000;
/** From here on preload wants study, and from there on grease is at its end. */
const preloadMark = 500_000 * perMillimetre;
const greaseMark = 700_000 * perMillimetre;

export const bearingSpeed = defineCalculation({
  id: 'bearing-speed',
  title: 'Speed factor of a bearing',
  section: 'Bearings',
  summary: 'How fast a bearing turns for its size, n·dm, and how near that is to a limit.',
  inputs: {
    bore: lengthInput('Bore', 'd', 5),
    outer: lengthInput('Outside diameter', 'D', 10),
    speed: speedInput('Speed', 'n', 50_000),
    limit: { kind: 'number', title: 'Limit of n·dm; 500,000 mm·rpm is a usual mark', symbol: 'A_\\mathrm{max}', unit: 'm·rad/s', shown: 'mm·rpm', above: 0, default: preloadMark, example: preloadMark },
    speedLimit: { ...speedInput('Speed limit of the bearing from its table', 'n_\\mathrm{max}', 50_000), above: 0, optional: true },
  },
  outputs: {
    meanDiameterSpeed: { title: 'Speed factor n·dm', symbol: 'A', unit: 'm·rad/s', shown: 'mm·rpm' },
    ratioToLimit: numberOutput('Speed factor over its limit', 'r'),
    ratioToSpeedLimit: numberOutput('Speed over the bearing’s own limit', 'r_n'),
  },
  formulas: [
    { output: 'meanDiameterSpeed', tex: String.raw`A = |n|\,\frac{d + D}{2}` },
    { output: 'ratioToLimit', tex: String.raw`r = \frac{A}{A_\mathrm{max}}` },
    { output: 'ratioToSpeedLimit', tex: String.raw`r_n = \frac{|n|}{n_\mathrm{max}}` },
  ],
  source: 'Definition. Marks of two bearing catalogues: preload wants study over 500,000 mm·rpm; over 700,000 a ball bearing is very fast for grease.',
  validity: ['Limits of tables hold for light loads, C/P of 12 and more, and an axial load of up to a fifth of the radial one.', 'Contact seals, a vertical shaft, heat and a turning outer ring lower them.'],
  compute: ({ bore, outer, speed, limit, speedLimit }) => {
    if (outer <= bore) throw new CalculationError('outer', `${outer} m`, `more than the bore of ${bore} m`);
    const factor = meanDiameterSpeed(bore, outer, speed);
    return {
      outputs: { meanDiameterSpeed: factor, ratioToLimit: factor / limit, ...(speedLimit === undefined ? {} : { ratioToSpeedLimit: Math.abs(speed) / speedLimit }) },
      warnings: [
        ...(speedLimit === undefined ? ['ratioToSpeedLimit is left out: speedLimit is not given.'] : []),
        ...(factor > greaseMark ? ['Over 700,000 mm·rpm: very fast for grease.'] : factor > preloadMark ? ['Over 500,000 mm·rpm: preload and play want study.'] : []),
      ],
    };
  },
});
