/**
 * The way in to every part and every module of the largest demo machine, and to 60 parts of an invented one of 2,000 parts
 * and 3,000 joints, among them all of the case that most others hang on; and the plan of each. Nothing is remembered from
 * one to the next. One line of JSON; times are those of the processor.
 */
import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { planBuild, reach } from '../../packages/build/dist/index.js';
import { bigMachine } from './machines/big-machine.ts';
import { cpuSeconds } from './timing/cpu.ts';

const { machine: whimbrel } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!whimbrel) throw new Error('the demo machine is refused');
const { machine: big } = bigMachine(100, 20_261_125);

const rounded = (seconds: number): number => Number((1000 * seconds).toFixed(1));

/** The least time of several to each goal, the worst by name. */
function reachAll(machine: Machine, goals: readonly string[], rounds: number) {
  const round = () => goals.map((goal) => {
    const start = cpuSeconds();
    const { proven, ways } = reach({ ...machine }, [goal]);
    return { goal, seconds: cpuSeconds() - start, proven, steps: ways[0]?.undo.length ?? 0 };
  });
  const others = Array.from({ length: rounds - 1 }, round);
  const found = round().map((last, at) => ({ ...last, seconds: Math.min(last.seconds, ...others.map((times) => times[at]!.seconds)) }));
  const sorted = found.toSorted((a, b) => a.seconds - b.seconds);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  return { goals: goals.length, proven: found.filter(({ proven }) => proven).length, steps: found.reduce((sum, { steps }) => sum + steps, 0), medianMs: rounded(at(0.5).seconds), p95Ms: rounded(at(0.95).seconds), worstMs: rounded(at(1).seconds), worst: at(1).goal };
}

/** The first plan of a process, and of those that follow the median and the least: the least is what a quiet machine takes. */
function planMs(machine: Machine, runs: number) {
  const times = Array.from({ length: runs }, () => {
    const start = cpuSeconds();
    if (planBuild({ ...machine }).steps.size === 0) throw new Error('the plan is empty');
    return cpuSeconds() - start;
  });
  const [first = 0, ...others] = times;
  return { planFirstMs: rounded(first), planMs: rounded(others.toSorted((a, b) => a - b)[others.length >> 1] ?? 0), planLeastMs: rounded(Math.min(...others)) };
}

const bigParts = [...big.parts.keys()];
const some = bigParts.filter((id, index) => index % 50 === 7 || id.startsWith('m0/'));
console.log(JSON.stringify({
  name: 'reach',
  whimbrel: { joints: whimbrel.joints.size, ...planMs(whimbrel, 40), ...reachAll(whimbrel, [...whimbrel.parts.keys(), ...whimbrel.modules.keys()], 3) },
  big: { allParts: big.parts.size, joints: big.joints.size, ...planMs(big, 6), ...reachAll(big, some, 1) },
}));
