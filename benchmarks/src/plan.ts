/**
 * The plan of the largest demo machine, and of an invented one of 2,000 parts and 3,000 joints: the first of the process, and
 * warm. Nothing is remembered of a machine from one to the next. One line of JSON.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { planBuild } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';
import { inMs, printed, timesOf, warmTimes } from './timing/cpu.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

function plan(machine: Machine): void {
  if (planBuild({ ...machine }).steps.size === 0) throw new Error('the plan is empty');
}

const first = inMs(timesOf(() => plan(whimbrel)));
console.log(JSON.stringify({
  name: 'plan',
  whimbrel: { joints: whimbrel.joints.size, first, warm: printed(warmTimes(() => plan(whimbrel), 101, 100)) },
  big: { allParts: big.parts.size, joints: big.joints.size, warm: printed(warmTimes(() => plan(big), 7, 2)) },
}));
