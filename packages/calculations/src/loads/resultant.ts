import { defineCalculation } from '../define.ts';
import { forceInput, forceOutput } from '../specs.ts';

export const resultant = defineCalculation({
  id: 'resultant',
  title: 'Force across and along, together',
  section: 'Loads and margins',
  summary: 'One force of a load across a shaft and a push along it.',
  inputs: { across: forceInput('Force across', 'F_r', 240), along: forceInput('Force along', 'F_a', 70) },
  outputs: { force: forceOutput('Force', 'F') },
  formulas: [{ output: 'force', tex: String.raw`F = \sqrt{F_r^2 + F_a^2}` }],
  source: 'Pythagoras.',
  validity: ['The two act at a right angle.'],
  compute: ({ across, along }) => ({ outputs: { force: Math.hypot(across, along) }, warnings: [] }),
});
