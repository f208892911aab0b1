/**
 * What holds what in the largest demo machine, and in an invented one of 2,000 parts and 3,000 joints: chains, fault trees
 * and single points of every hazard; and what each part's loss brings about. One line of JSON.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { hazardChance, holds, missing, pairsOf } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';
import { printed, warmTimes } from './timing/cpu.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

/** What a run finds is looked at, so that none is left out. */
function warm(run: () => number, runs: number) {
  return printed(warmTimes(() => {
    if (!(run() > 0)) throw new Error('nothing was found');
  }, runs, runs));
}

const points = (machine: Machine): number => [...holds({ ...machine }).hazards.values()].reduce((sum, { singlePoints }) => sum + singlePoints.length, 0);
const measured = (machine: Machine, runs: number) => {
  const held = holds(machine);
  const all = [...held.hazards.values()];
  return {
    parts: machine.parts.size, joints: machine.joints.size, hazards: all.length, events: held.events.size, gates: Object.keys(held.graph.losses.book.gates).length, singlePoints: points(machine),
    holds: warm(() => points(machine), runs),
    pairs: warm(() => all.reduce((sum, hazard) => sum + pairsOf(hazard).length, 1), runs),
    chances: warm(() => all.filter((hazard) => hazardChance(held, hazard) !== undefined).length + 1, runs),
    missing: warm(() => missing(held, [all[0]?.singlePoints[0]?.step ?? '']).comesOff.length, runs),
  };
};
console.log(JSON.stringify({ name: 'holds', whimbrel: measured(whimbrel, 51), big: measured(big, 5) }));
