import { defineCalculation } from '../define.ts';
import { frequencyOutput, numberOutput } from '../specs.ts';

export const frequencySeparation = defineCalculation({
  id: 'frequency-separation',
  title: 'How far a natural frequency lies from what shakes',
  section: 'Loads and margins',
  summary: 'Of all that turns in a machine, what comes nearest to one natural frequency, and how near.',
  inputs: {
    frequency: { kind: 'number', title: 'Natural frequency', symbol: 'f', unit: 'Hz', shown: 'Hz', above: 0, max: 1e6, example: 36 },
    orders: {
      kind: 'list',
      title: 'What shakes',
      atLeast: 1,
      of: {
        kind: 'record',
        title: 'Order',
        fields: {
          speed: { kind: 'number', title: 'Speed of the shaft', symbol: 'n', unit: 'rad/s', shown: 'rpm' },
          order: { kind: 'number', title: 'Times a turn', symbol: 'k', unit: '-', shown: '-', above: 0, max: 1000, default: 1 },
        },
      },
      example: [{ speed: 185, order: 1 }, { speed: 185, order: 2 }, { speed: 900, order: 1 }],
    },
  },
  outputs: { separation: numberOutput('Distance to the nearest, as a share of the natural frequency', 's'), nearest: frequencyOutput('The nearest', 'f_n') },
  formulas: [
    { output: 'nearest', tex: String.raw`f_n = \frac{k_i\,|n_i|}{2\pi} \text{ nearest to } f` },
    { output: 'separation', tex: String.raw`s = \left|\frac{f_n}{f} - 1\right|` },
  ],
  source: 'Definition.',
  validity: ['How strongly it is shaken, and how well it is damped, is not in it: near is not yet harmful, far is safe.'],
  compute: ({ frequency, orders }) => {
    const shakes = orders.map(({ speed, order }) => (order * Math.abs(speed)) / (2 * Math.PI));
    const nearest = shakes.reduce((best, each) => (Math.abs(each - frequency) < Math.abs(best - frequency) ? each : best));
    return { outputs: { nearest, separation: Math.abs(nearest / frequency - 1) }, warnings: [] };
  },
});
