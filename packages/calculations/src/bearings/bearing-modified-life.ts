import { lifeModification, viscosityRatioRange } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

const mostModification = 50;

export const bearingModifiedLife = defineCalculation({
  id: 'bearing-modified-life',
  title: 'Lubrication and dirt in the life of a bearing',
  section: 'Bearings',
  summary: 'The factor by which lubrication and cleanliness change the fatigue life of a bearing.',
  inputs: {
    viscosityRatio: { kind: 'number', title: 'Viscosity ratio κ, as bearing-viscosity gives it', symbol: '\\kappa', unit: '-', shown: '-', min: viscosityRatioRange.least, example: 1 },
    contaminationRatio: { kind: 'number', title: 'Dirt factor times fatigue load limit over equivalent load, e_C·C_u/P', symbol: 'c', unit: '-', shown: '-', min: 0, example: 0.1 },
    kind: { kind: 'choice', title: 'Kind', choices: ['radial-ball', 'radial-roller', 'thrust-ball', 'thrust-roller'], default: 'radial-ball', example: 'radial-ball' },
  },
  outputs: { lifeModification: numberOutput('Life modification factor', 'a_\\mathrm{ISO}') },
  formulas: [
    {
      output: 'lifeModification',
      tex: String.raw`a_\mathrm{ISO} = \min\left(50,\ 0.1\left[1 - \left(2.5671 - \frac{1.9987}{\kappa^{0.071739}}\right)^{0.83} c^{1/3}\right]^{-9.3}\right) \text{ for a radial ball bearing and } \kappa \ge 1`,
    },
  ],
  source: 'ISO 281:2007, 9.3.3, equations 31 to 42 (from memory).',
  validity: [
    'κ from 0.1; over 4 it counts as 4. At most 50.',
    'Below κ = 1 the constants are 1.9987 and 0.19087, below 0.4 they are 2.2649 and 0.054381. Roller and thrust bearings have constants of their own.',
    'Dirt factor: 1 when extremely clean, 0.8 to 0.5 with seals and filled for life, 0.3 to 0.1 when dirt gets in (from memory). C_u stands in the bearing table; C_0/22 does for a ball bearing of this size (from memory).',
    'A figure that some makers print in its place is higher: it is not the standard’s.',
  ],
  compute: ({ viscosityRatio, contaminationRatio, kind }) => {
    const factor = lifeModification(viscosityRatio, contaminationRatio, kind);
    return {
      outputs: { lifeModification: factor },
      warnings: [
        ...(viscosityRatio > viscosityRatioRange.most ? [`κ counts as ${viscosityRatioRange.most}: more film does not lengthen life.`] : []),
        ...(viscosityRatio < 1 ? ['κ is below 1: metal touches metal. A grease with proven additives against wear is needed.'] : []),
        ...(factor === mostModification ? ['The factor is held at 50, the most that the standard allows.'] : []),
      ],
    };
  },
});
