import { referenceViscosity } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthInput, lengthOutput, numberOutput, speedInput } from '../specs.ts';

export const bearingViscosity = defineCalculation({
  id: 'bearing-viscosity',
  title: 'Viscosity that a bearing needs',
  section: 'Bearings',
  summary: 'How thick the oil of a bearing, or of its grease, must be while it runs, and how the given oil compares.',
  inputs: {
    bore: lengthInput('Bore', 'd', 8),
    outer: lengthInput('Outside diameter', 'D', 22),
    speed: speedInput('Speed', 'n', 12_000),
    viscosity: { kind: 'number', title: 'Viscosity of the oil at the temperature at which the bearing runs', symbol: '\\nu', unit: 'm²/s', shown: 'mm²/s', above: 0, optional: true, example: 20e-6 },
  },
  outputs: {
    pitchDiameter: lengthOutput('Mean diameter', 'D_{pw}'),
    referenceViscosity: { title: 'Viscosity for a viscosity ratio of 1', symbol: '\\nu_1', unit: 'm²/s', shown: 'mm²/s' },
    viscosityRatio: numberOutput('Viscosity ratio', '\\kappa'),
  },
  formulas: [
    { output: 'pitchDiameter', tex: String.raw`D_{pw} = \frac{d + D}{2}` },
    { output: 'referenceViscosity', tex: String.raw`\nu_1 = \frac{45000}{n^{0.83}\sqrt{D_{pw}}} \text{ below 1000 rpm, else } \frac{4500}{\sqrt{n\,D_{pw}}} \text{, with mm²/s, rpm and mm}` },
    { output: 'viscosityRatio', tex: String.raw`\kappa = \frac{\nu}{\nu_1}` },
  ],
  source: 'ISO 281:2007, 9.3.3.2 (from memory).',
  validity: ['Mineral oils; of a grease its base oil counts.', 'A maker’s diagram may ask for some 15 % less.'],
  compute: ({ bore, outer, speed, viscosity }) => {
    if (outer <= bore) throw new CalculationError('outer', `${outer} m`, `more than the bore of ${bore} m`);
    if (speed === 0) throw new CalculationError('speed', '0', 'a speed other than 0: a bearing at rest forms no film');
    const pitchDiameter = (bore + outer) / 2;
    const needed = referenceViscosity(speed, pitchDiameter);
    return {
      outputs: { pitchDiameter, referenceViscosity: needed, ...(viscosity === undefined ? {} : { viscosityRatio: viscosity / needed }) },
      warnings: viscosity === undefined ? ['viscosityRatio is left out: viscosity is not given.'] : [],
    };
  },
});
