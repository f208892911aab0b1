import { helixPush as push } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

export const helixPush = defineCalculation({
  id: 'helix-push',
  title: 'Which way a helical gear pushes',
  section: 'Gears',
  summary: 'Direction of the force that a helical mesh puts on a gear along its axis: 1 along the axis, −1 against it.',
  inputs: {
    hand: { kind: 'choice', title: 'Hand of the helix', choices: ['right', 'left'], example: 'right' },
    turns: { kind: 'choice', title: 'The gear turns right-handed about its axis, or left-handed', choices: ['right-handed', 'left-handed'], example: 'right-handed' },
    role: { kind: 'choice', title: 'The gear drives, or is driven', choices: ['driver', 'driven'], example: 'driver' },
  },
  outputs: { push: numberOutput('Push: 1 along the axis, −1 against it', 's') },
  formulas: [{ output: 'push', tex: String.raw`s = h\,\omega\,r` }],
  source: 'The force on a tooth is square to it, and on the gear that drives opposes the motion.',
  validity: ['h, ω and r are 1 for a right-hand helix, right-handed rotation, and the gear that drives; else −1.', 'While power flows from the engine; braking turns the push round.'],
  compute: ({ hand, turns, role }) => ({ outputs: { push: push(hand, turns === 'right-handed' ? 1 : -1, role) }, warnings: [] }),
});
