import { spanMeasure, spannedTeethFor } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthOutput, numberOutput } from '../specs.ts';
import { basicInputs, gearStandard, gearTeeth, shiftInput } from './gear-specs.ts';
import { touchWarnings } from './touch.ts';

export const gearSpan = defineCalculation({
  id: 'gear-span',
  title: 'Span over teeth',
  section: 'Gears',
  summary: 'What a plate micrometer reads over several teeth.',
  inputs: {
    ...basicInputs,
    teeth: gearTeeth('Teeth', 'z', 20),
    shift: shiftInput('Profile shift, in normal modules', 'x'),
    spannedTeeth: { kind: 'number', title: 'Teeth between the anvils; chosen when not given', symbol: 'k', unit: '-', shown: '-', whole: true, min: 1, max: 50_000, optional: true },
  },
  outputs: { spannedTeeth: numberOutput('Teeth between the anvils', 'k'), span: lengthOutput('Span', 'W_k') },
  formulas: [
    { output: 'spannedTeeth', tex: String.raw`k = \left\lfloor \frac{z}{\pi}\left(\frac{\tan\alpha_{vt}}{\cos^2\beta_b} - \frac{2x\tan\alpha_n}{z} - \mathrm{inv}\,\alpha_t\right) + 1 \right\rfloor` },
    { output: 'span', tex: String.raw`W_k = m_n\cos\alpha_n\left[\pi\left(k - \tfrac12\right) + z\,\mathrm{inv}\,\alpha_t + 2x\tan\alpha_n\right]` },
  ],
  source: `${gearStandard} (from memory), checked against published examples.`,
  validity: ['Without the allowance for backlash. The anvils must touch on the involute, and on a helical gear the face must be wide enough.'],
  compute: (inputs) => {
    const spannedTeeth = inputs.spannedTeeth ?? spannedTeethFor(inputs);
    if (spannedTeeth >= inputs.teeth) throw new CalculationError('spannedTeeth', String(spannedTeeth), `fewer than the gear’s ${inputs.teeth} teeth`);
    const { span, contactDiameter } = spanMeasure(inputs, spannedTeeth);
    if (!(span > 0)) throw new CalculationError('shift', String(inputs.shift), 'a larger shift: nothing is left between the anvils');
    return { outputs: { spannedTeeth, span }, warnings: touchWarnings('The anvils', contactDiameter, inputs) };
  },
});
