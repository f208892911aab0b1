import { centreDistances } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthOutput } from '../specs.ts';
import { basicInputs, gearStandard, gearTeeth, shiftInput } from './gear-specs.ts';

export const centreDistance = defineCalculation({
  id: 'centre-distance',
  title: 'Centre distance',
  section: 'Gears',
  summary: 'How far apart the axes of two gears stand, with and without profile shift.',
  inputs: {
    ...basicInputs,
    teeth1: gearTeeth('Teeth of gear 1', 'z_1', 17),
    teeth2: gearTeeth('Teeth of gear 2, or of the ring', 'z_2', 85),
    shift1: shiftInput('Profile shift of gear 1, in normal modules', 'x_1'),
    shift2: shiftInput('Profile shift of gear 2, in normal modules', 'x_2'),
    kind: { kind: 'choice', title: 'Mesh: two gears outside, or gear 1 inside ring 2', choices: ['external', 'internal'], default: 'external', example: 'external' },
  },
  outputs: { referenceCentreDistance: lengthOutput('With the reference circles touching', 'a_d'), zeroBacklashCentreDistance: lengthOutput('Without backlash', 'a_0') },
  formulas: [
    { output: 'referenceCentreDistance', tex: String.raw`a_d = \frac{m_n\,(z_2 \pm z_1)}{2\cos\beta}` },
    { output: 'zeroBacklashCentreDistance', tex: String.raw`a_0 = a_d\,\frac{\cos\alpha_t}{\cos\alpha_{wt}},\quad \mathrm{inv}\,\alpha_{wt} = \mathrm{inv}\,\alpha_t + 2\tan\alpha_n\,\frac{x_2 \pm x_1}{z_2 \pm z_1}` },
  ],
  source: `${gearStandard} (from memory), checked against published examples.`,
  validity: ['Involute gears on parallel axes. Upper signs for two external gears, lower ones for a ring.'],
  compute: (inputs) => {
    const { teeth1, teeth2, shift1, shift2, kind } = inputs;
    if (kind === 'internal' && teeth2 <= teeth1) throw new CalculationError('teeth2', String(teeth2), `more teeth than the pinion’s ${teeth1}`);
    return { outputs: { ...centreDistances(inputs, teeth1, teeth2, shift1, shift2, kind) }, warnings: [] };
  },
});
