import { defineCalculation } from '../define.ts';
import { forceInput, forceOutput, lengthInput, numberOutput, stressInput, stressOutput } from '../specs.ts';

export const holePressure = defineCalculation({
  id: 'hole-pressure',
  title: 'Pressure of a bolt in its hole',
  section: 'Joints and fits',
  summary: 'Force that a bolt or pin may press against the wall of its hole before the hole grows.',
  inputs: {
    diameter: lengthInput('Diameter of bolt or pin', 'd', 5),
    length: lengthInput('Length of the wall that it bears on, all walls together', 'l', 10),
    yieldStrength: stressInput('Yield strength of the wall', 'R_e', 505),
    force: { ...forceInput('Force', 'F', 3470), optional: true },
  },
  outputs: { capacity: forceOutput('Force at which the hole begins to grow', 'F_\\mathrm{max}'), pressure: stressOutput('Mean pressure', 'p'), margin: numberOutput('Capacity over force', 'S') },
  formulas: [
    { output: 'capacity', tex: String.raw`F_\mathrm{max} = R_e\,d\,l` },
    { output: 'pressure', tex: String.raw`p = \frac{F}{d\,l}` },
    { output: 'margin', tex: String.raw`S = \frac{F_\mathrm{max}}{F}` },
  ],
  source: 'Mean pressure on the projected area, held to the yield strength (common practice, no source).',
  validity: ['The bolt fits its hole. Left out: wear by small movements, tearing out towards an edge nearer than one and a half diameters.'],
  compute: ({ diameter, length, yieldStrength, force }) => {
    const capacity = yieldStrength * diameter * length;
    const loaded = force !== undefined && force > 0;
    return {
      outputs: { capacity, ...(force === undefined ? {} : { pressure: force / (diameter * length) }), ...(loaded ? { margin: capacity / force } : {}) },
      warnings: force === undefined ? ['pressure and margin are left out: force is not given.'] : loaded ? [] : ['margin is left out: there is no force.'],
    };
  },
});
