/**
 * Yardstick K6: ten million stacks of twelve toleranced lengths, and three exact order statistics of their gaps.
 * One line of JSON: the median CPU seconds of a warm run, and the three gaps that tell whether the work was done rightly.
 */
import { simulateStack, type StackMember } from '@rotorwright/mechanics';

const SAMPLES = 10_000_000;
const NOMINAL = 0.15;

/** A length about 0, but the first, which carries the nominal gap. */
const member = (index: number, reach: number, spread: StackMember['spread'], at = 0): StackMember => ({ sense: index % 2 === 0 ? 1 : -1, least: at - reach, most: at + reach, spread });

const halfWidths = [0.02, 0.03, 0.01, 0.015, 0.025, 0.005];
/** Normal and even spread in turn; the limits of the normal ones lie at three standard deviations. */
const members = [0.01, 0.015, 0.02, 0.012, 0.008, 0.025].flatMap((deviation, index) => [
  member(index, 3 * deviation, 'normal', index === 0 ? NOMINAL : 0),
  member(index, halfWidths[index]!, 'uniform'),
]);

const run = (): readonly number[] => simulateStack(members, { samples: SAMPLES, random: Int32Array.of(11, 22, 33, 44), shares: [0.00135, 0.5, 0.99865] }).quantiles;

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

let check = run();
const times = Array.from({ length: 5 }, () => {
  const start = cpuSeconds();
  check = run();
  return cpuSeconds() - start;
});
if (!check.every((value) => value > 0)) throw new Error('nothing was computed');
console.log(JSON.stringify({ k: 'K6', work: SAMPLES, t: times.toSorted((a, b) => a - b)[times.length >> 1], check }));
