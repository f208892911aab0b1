import { defineCalculation } from '../define.ts';
import { lengthOutput } from '../specs.ts';

export const vibrationLevel = defineCalculation({
  id: 'vibration-level',
  title: 'Velocity, way and acceleration of a vibration',
  section: 'Balance and vibration',
  summary: 'What a vibration of one frequency is in the other two ways of saying it.',
  inputs: {
    velocity: { kind: 'number', title: 'Peak velocity', symbol: '\\hat v', unit: 'm/s', shown: 'mm/s', min: 0, max: 1e3, example: 0.00508 },
    frequency: { kind: 'number', title: 'Frequency', symbol: 'f', unit: 'Hz', shown: 'Hz', above: 0, max: 1e6, example: 25 },
  },
  outputs: {
    displacement: lengthOutput('Way from peak to peak', '2\\hat s'),
    acceleration: { title: 'Peak acceleration', symbol: '\\hat a', unit: 'm/s²', shown: 'm/s²' },
    gravities: { title: 'The same in multiples of 9.80665 m/s²', symbol: '\\hat a/g', unit: '-', shown: '-' },
    effectiveVelocity: { title: 'Effective (rms) velocity', symbol: 'v_\\mathrm{eff}', unit: 'm/s', shown: 'mm/s' },
  },
  formulas: [
    { output: 'displacement', tex: String.raw`2\hat s = \frac{\hat v}{\pi f}` },
    { output: 'acceleration', tex: String.raw`\hat a = 2\pi f\,\hat v` },
    { output: 'gravities', tex: String.raw`\frac{\hat a}{g}` },
    { output: 'effectiveVelocity', tex: String.raw`v_\mathrm{eff} = \frac{\hat v}{\sqrt2}` },
  ],
  source: 'Harmonic motion; g as the 3rd General Conference on Weights and Measures fixed it (from memory).',
  validity: ['One frequency alone. 1 inch a second is 25.4 mm/s.'],
  compute: ({ velocity, frequency }) => {
    const acceleration = 2 * Math.PI * frequency * velocity;
    return { outputs: { displacement: velocity / (Math.PI * frequency), acceleration, gravities: acceleration / 9.80665, effectiveVelocity: velocity * Math.SQRT1_2 }, warnings: [] };
  },
});
