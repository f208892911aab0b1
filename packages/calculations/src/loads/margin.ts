import { defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

const amount = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, example }) as const;

export const margin = defineCalculation({
  id: 'margin',
  title: 'Margin',
  section: 'Loads and margins',
  summary: 'What a part bears over what it sees. Below 1 it is exceeded, however little.',
  inputs: {
    capacity: amount('What it bears', 'C', 7780),
    demand: { ...amount('What it sees, in the same unit', 'D', 3470), above: 0 },
  },
  outputs: { margin: numberOutput('Margin', 'S') },
  formulas: [{ output: 'margin', tex: String.raw`S = \frac{C}{D}` }],
  source: 'Definition.',
  validity: ['It says nothing about a part that is worn, bent, or not as the file has it.'],
  compute: ({ capacity, demand }) => (demand > 0 ? { outputs: { margin: capacity / demand }, warnings: [] } : { outputs: {}, warnings: ['margin is left out: there is no load.'] }),
});
