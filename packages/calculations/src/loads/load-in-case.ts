import { defineCalculation } from '../define.ts';

const number = (title: string, symbol: string, value: number, example: number) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, max: 100, default: value, example }) as const;

export const loadInCase = defineCalculation({
  id: 'load-in-case',
  title: 'Load in a load case',
  section: 'Loads and margins',
  summary: 'A load of hover, carried over to a harder moment: by how much harder the blades work, and by how much faster they turn.',
  inputs: {
    load: { kind: 'number', title: 'The load as it is in hover', symbol: 'L_0', unit: '-', shown: '-', min: 0, example: 12.5 },
    factor: number('By how much harder the blades work', 'n', 1, 2),
    exponent: number('Power of that: 1 for thrust, 1.5 for torque', 'e', 1, 1.5),
    speedRatio: number('Speed over that of hover; loads grow with its square', 'k', 1, 1.1),
  },
  outputs: { load: { title: 'The load in this case, in the same unit', symbol: 'L', unit: '-', shown: '-' } },
  formulas: [{ output: 'load', tex: String.raw`L = L_0\,n^e\,k^2` }],
  source: 'Momentum theory: the induced power of a rotor grows with the thrust to the power 3/2 (Gessow and Myers, from memory). Centrifugal and air forces grow with the square of the speed.',
  validity: ['For torque an upper estimate: only the induced part grows so, the profile part less, until the blades stall.', 'At another speed the pitch of the blades is taken as it was.'],
  compute: ({ load, factor, exponent, speedRatio }) => ({ outputs: { load: load * factor ** exponent * speedRatio ** 2 }, warnings: [] }),
});
