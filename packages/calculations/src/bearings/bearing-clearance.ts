import { clearanceLost } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthInput, lengthOutput } from '../specs.ts';

export const bearingClearance = defineCalculation({
  id: 'bearing-clearance',
  title: 'Clearance that warmth takes from a bearing',
  section: 'Bearings',
  summary: 'Radial clearance lost when the inner ring runs warmer than the outer ring.',
  inputs: {
    bore: lengthInput('Bore', 'd', 40),
    outer: lengthInput('Outside diameter', 'D', 80),
    temperatureDifference: { kind: 'number', title: 'Inner ring warmer than the outer ring by', symbol: '\\Delta T', unit: 'K', shown: 'K', difference: true, min: -500, max: 500, example: 10 },
    expansion: { kind: 'number', title: 'Expansion of the rings by heat, per kelvin', symbol: '\\alpha', unit: '1/K', shown: '1/K', above: 0, max: 0.001, default: 12.5e-6, example: 12.5e-6 },
  },
  outputs: {
    racewayDiameter: lengthOutput('Raceway of the outer ring, about', 'D_e'),
    clearanceLoss: { ...lengthOutput('Radial clearance lost; negative is gained', '\\delta'), shown: 'µm' },
  },
  formulas: [
    { output: 'racewayDiameter', tex: String.raw`D_e = \frac{4D + d}{5}` },
    { output: 'clearanceLoss', tex: String.raw`\delta = \alpha\,\Delta T\,D_e` },
  ],
  source: 'Public bearing catalogue, equations 9.6 and 9.7.',
  validity: ['Ball bearings of usual make. What fits press in or out comes on top: about 70 to 90 % of an interference on the ring (from memory).'],
  compute: ({ bore, outer, temperatureDifference, expansion }) => {
    if (outer <= bore) throw new CalculationError('outer', `${outer} m`, `more than the bore of ${bore} m`);
    const { racewayDiameter, loss } = clearanceLost(bore, outer, temperatureDifference, expansion);
    return { outputs: { racewayDiameter, clearanceLoss: loss }, warnings: [] };
  },
});
