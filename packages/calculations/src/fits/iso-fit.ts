import { isoFit as limitsOfFit } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { refusing } from '../refuse.ts';
import { lengthInput, lengthOutput } from '../specs.ts';

const letters = ['d', 'e', 'ef', 'f', 'fg', 'g', 'h', 'js', 'j', 'k', 'm', 'n', 'p', 'r', 's', 't', 'u', 'v', 'x', 'y', 'z', 'za', 'zb', 'zc'];
const grades = [4, 5, 6, 7, 8, 9, 10, 11];
const shaftCodes = letters.flatMap((letter) => grades.map((grade) => `${letter}${grade}`));
const holeCodes = shaftCodes.map((code) => code.toUpperCase());

const clearanceOutput = (title: string, symbol: string) => ({ ...lengthOutput(title, symbol), shown: 'µm' }) as const;

export const isoFit = defineCalculation({
  id: 'iso-fit',
  title: 'Fit of a shaft in a hole',
  section: 'Joints and fits',
  summary: 'Limits of size of a hole and a shaft, and how loose or tight they are together.',
  inputs: {
    nominal: { ...lengthInput('Nominal diameter', 'D', 8), min: 0.001, max: 0.12 },
    hole: { kind: 'choice', title: 'Tolerance of the hole', choices: holeCodes, example: 'H7' },
    shaft: { kind: 'choice', title: 'Tolerance of the shaft', choices: shaftCodes, example: 'g6' },
  },
  outputs: {
    holeMin: lengthOutput('Smallest hole', 'D_\\mathrm{min}'),
    holeMax: lengthOutput('Largest hole', 'D_\\mathrm{max}'),
    shaftMin: lengthOutput('Smallest shaft', 'd_\\mathrm{min}'),
    shaftMax: lengthOutput('Largest shaft', 'd_\\mathrm{max}'),
    clearanceMin: clearanceOutput('Least clearance; negative is interference', 'c_\\mathrm{min}'),
    clearanceMax: clearanceOutput('Largest clearance; negative is interference', 'c_\\mathrm{max}'),
    interferenceMax: clearanceOutput('Largest interference; negative is clearance', 'I_\\mathrm{max}'),
  },
  formulas: [
    { output: 'holeMin', tex: String.raw`D_\mathrm{min} = D + EI` },
    { output: 'holeMax', tex: String.raw`D_\mathrm{max} = D + ES` },
    { output: 'shaftMin', tex: String.raw`d_\mathrm{min} = D + ei` },
    { output: 'shaftMax', tex: String.raw`d_\mathrm{max} = D + es` },
    { output: 'clearanceMin', tex: String.raw`c_\mathrm{min} = EI - es` },
    { output: 'clearanceMax', tex: String.raw`c_\mathrm{max} = ES - ei` },
    { output: 'interferenceMax', tex: String.raw`I_\mathrm{max} = es - EI` },
  ],
  source: 'ISO 286-1:2010, tables 1 to 3 (from memory), checked against the tables of a public bearing catalogue.',
  validity: ['Diameters of 1 to 120 mm, grades 4 to 11, at 20 °C. Where the standard gives no such letter at that size, the code is refused.'],
  compute: ({ nominal, hole, shaft }) => {
    refusing('hole', hole, () => limitsOfFit(nominal, hole, 'h6'));
    const limits = refusing('shaft', shaft, () => limitsOfFit(nominal, hole, shaft));
    return { outputs: { ...limits, interferenceMax: -limits.clearanceMin }, warnings: [] };
  },
});
