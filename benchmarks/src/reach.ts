/**
 * The way in to every part of the largest demo machine, and to 40 parts of an invented one of 2,000 parts and 3,000
 * joints, with what comes apart told and proven; and the plan of each. One line of JSON.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { planBuild, reach } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

/** Times in ms of the way to each part; the first rounds only warm up. */
function reachAll(machine: Machine, goals: readonly string[], rounds: number): Readonly<Record<string, number>> {
  let [times, proven, steps]: [number[], number, number] = [[], 0, 0];
  for (let round = 0; round < rounds; round += 1) {
    [times, proven, steps] = [[], 0, 0];
    for (const goal of goals) {
      const start = performance.now();
      const found = reach(machine, [goal]);
      times.push(performance.now() - start);
      proven += found.proven ? 1 : 0;
      steps += found.ways[0]?.undo.length ?? 0;
    }
  }
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => Number((sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(2));
  return { parts: goals.length, proven, steps, medianMs: at(0.5), worstMs: at(1) };
}

function planMs(machine: Machine, runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    // A copy of the machine: nothing is remembered of it yet.
    if (planBuild({ ...machine }).steps.size === 0) throw new Error('the plan is empty');
    return performance.now() - start;
  });
  return Number((times.toSorted((a, b) => a - b)[runs >> 1] ?? 0).toFixed(1));
}

const bigParts = [...big.parts.keys()];
const some = bigParts.filter((_, index) => index % Math.floor(bigParts.length / 40) === 7);
console.log(JSON.stringify({
  name: 'reach',
  whimbrel: { joints: whimbrel.joints.size, ...reachAll(whimbrel, [...whimbrel.parts.keys()], 2), planMs: planMs(whimbrel, 9) },
  big: { allParts: big.parts.size, joints: big.joints.size, ...reachAll(big, some, 1), planMs: planMs(big, 3) },
}));
