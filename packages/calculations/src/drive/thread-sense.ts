import { threadTendency } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

const direction = { kind: 'choice', choices: ['along', 'against'] } as const;

export const threadSense = defineCalculation({
  id: 'thread-sense',
  title: 'Does torque tighten this thread?',
  section: 'Drive',
  summary: 'Whether the torque that passes through a thread on a turning shaft tightens or loosens it: 1 tightens, −1 loosens.',
  inputs: {
    hand: { kind: 'choice', title: 'Hand of the thread', choices: ['right', 'left'], default: 'right', example: 'right' },
    goesIn: { ...direction, title: 'The threaded part travels along the shaft’s axis, or against it, while it is screwed in', example: 'against' },
    turns: { kind: 'choice', title: 'The shaft turns right-handed about its axis, or left-handed', choices: ['right-handed', 'left-handed'], example: 'right-handed' },
    torqueLeavesBy: { kind: 'choice', title: 'Side of the thread by which the torque leaves, on its way to where it is used', choices: ['threaded-part', 'other-part'], example: 'threaded-part' },
  },
  outputs: {
    driven: numberOutput('While it is driven: 1 tightens, −1 loosens', 's_\\mathrm{driven}'),
    braking: numberOutput('While it brakes, or is turned from the far end', 's_\\mathrm{braking}'),
  },
  formulas: [
    { output: 'driven', tex: String.raw`s_\mathrm{driven} = -h\,d\,s\,o` },
    { output: 'braking', tex: String.raw`s_\mathrm{braking} = -s_\mathrm{driven}` },
  ],
  source: 'Definition of a right-hand thread, and torque balance: what the torque leaves by lags behind what it comes from.',
  validity: [
    'h, d, s and o are 1 for a right-hand thread, along the axis, right-handed rotation, and a torque that leaves by the threaded part; else −1.',
    'Only the torque through the thread itself counts: vibration loosens a thread of either hand.',
  ],
  compute: ({ hand, goesIn, turns, torqueLeavesBy }) => {
    const tendency = threadTendency({ hand, goesIn: goesIn === 'along' ? 1 : -1, turns: turns === 'right-handed' ? 1 : -1, torqueLeavesBy });
    return { outputs: { driven: tendency.driven === 'tightens' ? 1 : -1, braking: tendency.braking === 'tightens' ? 1 : -1 }, warnings: [] };
  },
});
