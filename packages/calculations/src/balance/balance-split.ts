import { joinMasses, splitMass } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, degrees } from '../specs.ts';
import { massOutput, turnInput } from './balance-specs.ts';

export const balanceSplit = defineCalculation({
  id: 'balance-split',
  title: 'Sharing a balance mass between holes',
  section: 'Balance and vibration',
  summary: 'What to put into the two holes on either side of the angle where a correction mass belongs.',
  inputs: {
    mass: { kind: 'number', title: 'Correction mass', symbol: 'm_c', unit: 'kg', shown: 'g', min: 0, max: 1e6, example: 0.00742 },
    angle: turnInput('Angle of the correction mass', '\\alpha_c', 41.4),
    places: { kind: 'list', title: 'Angles of the holes, all at one radius', of: { kind: 'number', title: 'Angle', symbol: '\\alpha', unit: 'rad', shown: '°', min: -1e4, max: 1e4 }, atLeast: 2, example: [0, degrees(120), degrees(240)] },
    step: { kind: 'number', title: 'Smallest step of the masses at hand', symbol: '\\delta', unit: 'kg', shown: 'g', above: 0, max: 1e6, optional: true, example: 0.0005 },
  },
  outputs: {
    masses: { ...massOutput('Mass for each hole, in the order given', 'm_i'), list: true },
    rounded: { ...massOutput('The same in whole steps', 'm_i^*'), list: true },
    leftMass: massOutput('Unbalance that the rounding leaves, at the same radius', 'm_r'),
    leftAngle: angleOutput('Its angle', '\\alpha_r'),
  },
  formulas: [
    { output: 'masses', tex: String.raw`m_1 = m_c\,\frac{\sin(\alpha_2 - \alpha_c)}{\sin(\alpha_2 - \alpha_1)},\quad m_2 = m_c\,\frac{\sin(\alpha_c - \alpha_1)}{\sin(\alpha_2 - \alpha_1)}` },
    { output: 'rounded', tex: String.raw`m_i^* = \delta\left\lfloor \frac{m_i}{\delta} + \tfrac12 \right\rfloor` },
    { output: 'leftMass', tex: String.raw`m_r e^{i\alpha_r} = \sum_i m_i^* e^{i\alpha_i} - m_c e^{i\alpha_c}` },
    { output: 'leftAngle', tex: String.raw`\alpha_r` },
  ],
  source: 'Sum of vectors.',
  validity: ['All holes at the radius for which the correction mass holds. The two holes on either side of the mass must stand less than half a turn apart.'],
  compute: ({ mass, angle, places, step }) => {
    const masses = splitMass({ size: mass, angle }, places);
    if (masses === undefined) throw new CalculationError('places', JSON.stringify(places), 'holes on both sides of the correction mass, less than half a turn apart');
    if (step === undefined) return { outputs: { masses }, warnings: ['rounded, leftMass and leftAngle are left out: no step is given.'] };
    const rounded = masses.map((one) => Math.round(one / step) * step);
    const left = joinMasses([...rounded, -mass], [...places, angle]);
    return { outputs: { masses, rounded, leftMass: left.size, leftAngle: left.angle }, warnings: [] };
  },
});
