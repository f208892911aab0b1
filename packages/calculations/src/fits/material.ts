import { materials } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { stressOutput } from '../specs.ts';

const properties = ['density', 'youngsModulus', 'shearModulus', 'poissonsRatio', 'expansion', 'swell', 'shearStrength'] as const;

export const material = defineCalculation({
  id: 'material',
  title: 'Properties of a material',
  section: 'Joints and fits',
  summary: 'Density, stiffness and expansion of a built-in material, each with its source.',
  inputs: { name: { kind: 'choice', title: 'Material', choices: materials.map(({ name }) => name), example: 'aluminium 7075' } },
  outputs: {
    density: { title: 'Density', symbol: '\\rho', unit: 'kg/m³', shown: 'kg/m³' },
    youngsModulus: { ...stressOutput('Young’s modulus', 'E'), shown: 'GPa' },
    shearModulus: { ...stressOutput('Shear modulus', 'G'), shown: 'GPa' },
    poissonsRatio: { title: 'Poisson’s ratio', symbol: '\\nu', unit: '-', shown: '-' },
    expansion: { title: 'Expansion by heat, per kelvin', symbol: '\\alpha', unit: '1/K', shown: '1/K' },
    swell: { title: 'Growth from dry to soaked, per length', symbol: 's_w', unit: '-', shown: '%' },
    shearStrength: stressOutput('Shear strength', '\\tau'),
    sources: { title: 'Where each comes from', symbol: 's', unit: '-', shown: '-', text: true, list: true },
  },
  formulas: [
    { output: 'density', tex: String.raw`\rho` },
    { output: 'youngsModulus', tex: String.raw`E` },
    { output: 'shearModulus', tex: String.raw`G` },
    { output: 'poissonsRatio', tex: String.raw`\nu` },
    { output: 'expansion', tex: String.raw`\alpha` },
    { output: 'swell', tex: String.raw`s_w` },
    { output: 'shearStrength', tex: String.raw`\tau` },
    { output: 'sources', tex: String.raw`s` },
  ],
  source: 'The documents that the output named sources lists.',
  validity: ['At room temperature. A machine file may give its own values under materials.', 'Carbon and plastics differ by make: measure what matters.'],
  compute: ({ name }) => {
    const found = materials.find((one) => one.name === name);
    if (found === undefined) throw new CalculationError('name', name, 'a built-in material');
    const missing = properties.filter((property) => found[property] === undefined);
    const known = properties.flatMap((property) => (found[property] === undefined ? [] : [[property, found[property]] as const]));
    return {
      outputs: { ...Object.fromEntries(known.map(([property, { value }]) => [property, value])), sources: known.map(([property, { source }]) => `${property}: ${source}`) },
      warnings: missing.length === 0 ? [] : [`${missing.join(', ')}: left out, for the table has none.`],
    };
  },
});
