/**
 * The way in to every part and every module of the largest demo machine, and to 60 parts of an invented one of 2,000 parts
 * and 3,000 joints, among them all of the case that most others hang on; and the plan of each. Nothing is remembered from
 * one to the next. One line of JSON.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { planBuild, reach } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';
import { timesOf, type Times } from './timing/cpu.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

const rounded = (seconds: number): number => Number((1000 * seconds).toFixed(1));
const byCpu = (a: Times, b: Times): number => a.cpu - b.cpu;
const byWall = (a: Times, b: Times): number => a.wall - b.wall;
const inMs = ({ cpu, wall }: Times) => ({ cpuMs: rounded(cpu), wallMs: rounded(wall) });

/** The least of several times, of the processor and of the wall each. */
const least = (times: readonly Times[]): Times => ({ cpu: Math.min(...times.map(({ cpu }) => cpu)), wall: Math.min(...times.map(({ wall }) => wall)) });
const median = (times: readonly Times[]): Times => ({ cpu: times.toSorted(byCpu)[times.length >> 1]!.cpu, wall: times.toSorted(byWall)[times.length >> 1]!.wall });

/** The least time of several to each goal, the worst by name. */
function reachAll(machine: Machine, goals: readonly string[], rounds: number) {
  const found = goals.map((goal) => ({ goal, ...reach(machine, [goal]) }));
  const times = Array.from({ length: rounds }, () => goals.map((goal) => timesOf(() => {
    if (reach({ ...machine }, [goal]).goals.length === 0) throw new Error('nothing was reached');
  })));
  const sorted = goals.map((goal, at) => ({ goal, ...least(times.map((round) => round[at]!)) })).toSorted(byCpu);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  return {
    goals: goals.length, proven: found.filter(({ proven }) => proven).length, ways: found.reduce((sum, { ways }) => sum + ways.length, 0), steps: found.reduce((sum, { ways }) => sum + (ways[0]?.undo.length ?? 0), 0),
    median: inMs(at(0.5)), p95: inMs(at(0.95)), worst: { goal: at(1).goal, ...inMs(at(1)) },
  };
}

/** The first plan of a process, and of those that follow the median and the least: the least is what a quiet machine takes. */
function planTimes(machine: Machine, runs: number) {
  const [first, ...others] = Array.from({ length: runs }, () => timesOf(() => {
    if (planBuild({ ...machine }).steps.size === 0) throw new Error('the plan is empty');
  }));
  return { first: inMs(first!), median: inMs(median(others)), least: inMs(least(others)) };
}

const bigParts = [...big.parts.keys()];
const some = bigParts.filter((id, index) => index % 50 === 7 || id.startsWith('m0/'));
console.log(JSON.stringify({
  name: 'reach',
  whimbrel: { joints: whimbrel.joints.size, plan: planTimes(whimbrel, 60), reach: reachAll(whimbrel, [...whimbrel.parts.keys(), ...whimbrel.modules.keys()], 3) },
  big: { allParts: big.parts.size, joints: big.joints.size, plan: planTimes(big, 6), reach: reachAll(big, some, 1) },
}));
