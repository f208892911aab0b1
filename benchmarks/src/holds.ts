/**
 * What holds what in the largest demo machine, and in an invented one of 2,000 parts and 3,000 joints: chains, fault trees
 * and single points of every hazard; and what each part's loss brings about. One line of JSON.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { hazardChance, holds, missing, pairsOf } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';
import { medianCpuSeconds } from './timing/cpu.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

/** Median of processor time in ms; what a run finds is looked at, so that none is left out. */
function cpuMs(run: () => number): number {
  return Number((1000 * medianCpuSeconds(() => {
    if (!(run() > 0)) throw new Error('nothing was found');
  })).toFixed(2));
}

const points = (machine: Machine): number => [...holds({ ...machine }).hazards.values()].reduce((sum, { singlePoints }) => sum + singlePoints.length, 0);
const measured = (machine: Machine) => {
  const held = holds(machine);
  const all = [...held.hazards.values()];
  return {
    parts: machine.parts.size, joints: machine.joints.size, hazards: all.length, events: held.events.size, gates: Object.keys(held.graph.losses.book.gates).length, singlePoints: points(machine),
    holdsMs: cpuMs(() => points(machine)),
    pairsMs: cpuMs(() => all.reduce((sum, hazard) => sum + pairsOf(hazard).length, 1)),
    chancesMs: cpuMs(() => all.filter((hazard) => hazardChance(held, hazard) !== undefined).length + 1),
    missingMs: cpuMs(() => missing(held, [all[0]?.singlePoints[0]?.step ?? '']).comesOff.length),
  };
};
console.log(JSON.stringify({ name: 'holds', whimbrel: measured(whimbrel), big: measured(big) }));
