import { chordMeasure } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthOutput } from '../specs.ts';
import { basicInputs, gearTeeth, shiftInput } from './gear-specs.ts';

export const gearChordal = defineCalculation({
  id: 'gear-chordal',
  title: 'Tooth calliper',
  section: 'Gears',
  summary: 'What a tooth calliper reads across one tooth at the reference circle, and how deep to set it.',
  inputs: {
    ...basicInputs,
    teeth: gearTeeth('Teeth', 'z', 20),
    shift: shiftInput('Profile shift, in normal modules', 'x'),
    tipHeight: { kind: 'number', title: 'Height of the tip over the reference circle; (1 + x) modules when not given', symbol: 'h_a', unit: 'm', shown: 'mm', min: -1, max: 1, optional: true },
  },
  outputs: { chord: lengthOutput('Chord across the tooth', '\\bar s'), height: lengthOutput('From the tip down to that chord', '\\bar h_a') },
  formulas: [
    { output: 'chord', tex: String.raw`\bar s = d\sin\frac{s}{d}` },
    { output: 'height', tex: String.raw`\bar h_a = h_a + \frac{d}{2}\left(1 - \cos\frac{s}{d}\right)` },
  ],
  source: 'Elements of Metric Gear Technology, page T-81, table 10-1 (worked example read); helical gears from memory.',
  validity: ['Without the allowance for backlash. Helical gears in the normal section, with d = m_n·z/cos³ β.'],
  compute: (inputs) => {
    const tipHeight = inputs.tipHeight ?? inputs.normalModule * (1 + inputs.shift);
    const { chord, height } = chordMeasure(inputs, tipHeight);
    if (!(chord > 0)) throw new CalculationError('shift', String(inputs.shift), 'a larger shift: nothing is left of the tooth');
    return { outputs: { chord, height }, warnings: [] };
  },
});
