import { leastPinDiameter, pinMeasure } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthInput, lengthOutput } from '../specs.ts';
import { basicInputs, gearStandard, gearTeeth, shiftInput } from './gear-specs.ts';
import { touchWarnings } from './touch.ts';

export const gearOverPins = defineCalculation({
  id: 'gear-over-pins',
  title: 'Size over pins',
  section: 'Gears',
  summary: 'What a micrometer reads over two pins laid in opposite gaps.',
  inputs: {
    ...basicInputs,
    teeth: gearTeeth('Teeth', 'z', 20),
    shift: shiftInput('Profile shift, in normal modules', 'x'),
    pinDiameter: lengthInput('Diameter of the pins', 'd_p', 1.7),
  },
  outputs: { overPins: lengthOutput('Size over pins', 'M') },
  formulas: [
    { output: 'overPins', tex: String.raw`M = \frac{d_b}{\cos\varphi}\left\{\begin{matrix}1 & z\text{ even}\\ \cos\frac{\pi}{2z} & z\text{ odd}\end{matrix}\right\} + d_p,\quad \mathrm{inv}\,\varphi = \mathrm{inv}\,\alpha_t + \frac{d_p}{z\,m_n\cos\alpha_n} + \frac{2x\tan\alpha_n}{z} - \frac{\pi}{2z}` },
  ],
  source: `${gearStandard} (from memory), checked against published examples.`,
  validity: ['External gears, without the allowance for backlash. On a helical gear of odd tooth count balls are meant, not pins.'],
  compute: (inputs) => {
    const least = leastPinDiameter(inputs);
    if (inputs.pinDiameter <= least) throw new CalculationError('pinDiameter', `${inputs.pinDiameter} m`, `above ${least} m: thinner pins fall between the flanks`);
    const { overPins, contactDiameter } = pinMeasure(inputs, inputs.pinDiameter);
    return { outputs: { overPins }, warnings: touchWarnings('The pins', contactDiameter, inputs) };
  },
});
