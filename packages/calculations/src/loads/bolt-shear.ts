import { screwStrength } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { classInput, sizeInput, threadOf } from '../joints/screw-specs.ts';
import { countInput, forceOutput } from '../specs.ts';

export const boltShear = defineCalculation({
  id: 'bolt-shear',
  title: 'Shear of a bolt',
  section: 'Joints and fits',
  summary: 'Force across a bolt that shears it.',
  inputs: {
    size: sizeInput('M5'),
    propertyClass: classInput,
    planes: { ...countInput('Planes of shear', 'p', 2), max: 2 },
  },
  outputs: { capacity: forceOutput('Force that shears it, all planes together', 'F_s') },
  formulas: [{ output: 'capacity', tex: String.raw`F_s = p\,\frac{\tau_B}{R_m}\,R_m\,A_s` }],
  source: 'Strength ISO 898-1 and ISO 3506-1, ratio of shear to tensile strength VDI 2230-1 (from memory).',
  validity: ['The thread lies in the plane of shear: on the safe side where it is the shank.', 'Breaking, once. Left out: bending of a bolt with play, and what swings at every turn, which wants several times as much.'],
  compute: ({ size, propertyClass, planes }) => {
    const { stressArea, diameter } = threadOf(size);
    const { shearRatio, tensileStrength } = screwStrength(propertyClass, diameter);
    return { outputs: { capacity: planes * shearRatio * tensileStrength * stressArea }, warnings: [] };
  },
});
