import { bearingSize as sizeOf, bearingSizes } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { forceOutput, lengthOutput, speedOutput } from '../specs.ts';

const designations = [...new Set(Object.values(bearingSizes).flatMap((sizes) => sizes.map(({ designation }) => designation)))];
const speeds = ['greaseSpeed', 'oilSpeed', 'referenceSpeed', 'limitingSpeed'] as const;

export const bearingSize = defineCalculation({
  id: 'bearing-size',
  title: 'Sizes and ratings of small bearings',
  section: 'Bearings',
  summary: 'What stands behind the designation of a miniature, thin or thrust bearing.',
  inputs: {
    designation: { kind: 'choice', title: 'Designation', choices: designations, example: '608' },
    catalogue: { kind: 'choice', title: 'Whose catalogue', choices: ['first', 'second'], default: 'first', example: 'first' },
  },
  outputs: {
    bore: lengthOutput('Bore', 'd'),
    outer: lengthOutput('Outside diameter', 'D'),
    width: lengthOutput('Width, or height of a thrust bearing', 'B'),
    dynamicRating: forceOutput('Dynamic load rating', 'C'),
    staticRating: forceOutput('Static load rating', 'C_0'),
    greaseSpeed: speedOutput('Highest speed with grease', 'n_G'),
    oilSpeed: speedOutput('Highest speed with oil', 'n_O'),
    referenceSpeed: speedOutput('Reference speed', 'n_r'),
    limitingSpeed: speedOutput('Mechanical limit of speed', 'n_l'),
  },
  formulas: [
    { output: 'bore', tex: String.raw`d` },
    { output: 'outer', tex: String.raw`D` },
    { output: 'width', tex: String.raw`B` },
    { output: 'dynamicRating', tex: String.raw`C` },
    { output: 'staticRating', tex: String.raw`C_0` },
    { output: 'greaseSpeed', tex: String.raw`n_G` },
    { output: 'oilSpeed', tex: String.raw`n_O` },
    { output: 'referenceSpeed', tex: String.raw`n_r` },
    { output: 'limitingSpeed', tex: String.raw`n_l` },
  ],
  source: 'Public catalogues of two bearing makers and a public table of a seller of miniature thrust bearings; each value as printed.',
  validity: [
    'Open bearings unless the designation ends in ZZ; shields and seals change the width of some, and the speed.',
    'Two makers rate one size differently, by a quarter and more: take the figures of the maker of the part, and never mix those of two.',
    'Speeds hold for light loads: C/P of 12 and more, axial up to a fifth of the radial load.',
  ],
  compute: ({ designation, catalogue }) => {
    const found = sizeOf(designation, catalogue);
    if (found === undefined) throw new CalculationError('designation', `"${designation}"`, `one of the ${catalogue} catalogue: ${bearingSizes[catalogue].map((one) => one.designation).join(', ')}`);
    const { bore, outer, width, dynamicRating, staticRating } = found;
    const missing = speeds.filter((speed) => found[speed] === undefined);
    return {
      outputs: { bore, outer, width, dynamicRating, staticRating, ...Object.fromEntries(speeds.flatMap((speed) => (found[speed] === undefined ? [] : [[speed, found[speed]]]))) },
      warnings: [...(missing.length === 0 ? [] : [`${missing.join(', ')}: left out, for this table does not print them.`]), ...(found.caution === undefined ? [] : [found.caution])],
    };
  },
});
