/**
 * The way in to every part and every module of the largest demo machine, and to 60 parts of an invented one of 2,000 parts
 * and 3,000 joints, among them all of the case that most others hang on. Nothing is remembered from one to the next. One
 * line of JSON.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { reach } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';
import { printed, spreadOf, timesOf, type Spread } from './timing/cpu.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

const wall = ({ median }: Spread): number => median.wall;

/** Several times to each goal, and of all goals the one in the middle, the one of which five in a hundred take longer, and the slowest by name. */
function reachAll(machine: Machine, goals: readonly string[], rounds: number) {
  const found = goals.map((goal) => ({ goal, ...reach(machine, [goal]) }));
  const times = Array.from({ length: rounds }, () => goals.map((goal) => timesOf(() => {
    if (reach({ ...machine }, [goal]).goals.length === 0) throw new Error('nothing was reached');
  })));
  const sorted = goals.map((goal, at) => ({ goal, spread: spreadOf(times.map((round) => round[at]!)) })).toSorted((a, b) => wall(a.spread) - wall(b.spread));
  const at = (share: number) => {
    const { goal, spread } = sorted[Math.floor(share * (sorted.length - 1))]!;
    return { goal, ...printed(spread) };
  };
  return {
    goals: goals.length, proven: found.filter(({ proven }) => proven).length, cut: found.filter(({ cut }) => cut).length, ways: found.reduce((sum, { ways }) => sum + ways.length, 0), steps: found.reduce((sum, { ways }) => sum + (ways[0]?.undo.length ?? 0), 0),
    middle: at(0.5), p95: at(0.95), slowest: at(1),
  };
}

const bigParts = [...big.parts.keys()];
const some = bigParts.filter((id, index) => index % 50 === 7 || id.startsWith('m0/'));
console.log(JSON.stringify({
  name: 'reach',
  whimbrel: { joints: whimbrel.joints.size, reach: reachAll(whimbrel, [...whimbrel.parts.keys(), ...whimbrel.modules.keys()], 7) },
  big: { allParts: big.parts.size, joints: big.joints.size, reach: reachAll(big, some, 1) },
}));
