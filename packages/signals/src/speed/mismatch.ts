import type { LineComb, ReadyFamily } from './comb.ts';
import type { Mismatch } from './hearing.ts';
import { explainRatio, withoutOthers, type Free } from './hypotheses.ts';
import { meanPower, type Pooled } from './look.ts';
import { standingLines } from './standing.ts';

/** Range of the last search for the ratio of a free group, as far as a low line alone may leave it open, and its step, logarithm. */
const ratioReach = 3e-3;
const ratioStep = 1e-5;

/** A ratio to the last digit, and what would explain it. */
export function mismatchOf(free: Free, pooled: Pooled, speed: number, families: readonly ReadyFamily[], comb: LineComb, rate: number): Mismatch {
  const alone = withoutOthers(pooled, speed, families.filter(({ family }) => family.group !== free.group));
  const own = standingLines(alone, speed * free.factor, families, [free.group], rate);
  let best = { sum: -Infinity, factor: free.factor };
  for (let log = -ratioReach; log <= ratioReach; log += ratioStep) {
    const factor = free.factor * Math.exp(log);
    const sum = own.reduce((all, { order }) => {
      const at = (order * speed * factor) / pooled.binWidth;
      const bin = Math.min(pooled.bins - 2, Math.floor(at));
      const here = meanPower(alone, bin);
      // Logarithms: a loud line has its top where it is highest, and still does not outvote the others.
      return all + Math.log1p(here + (at - bin) * (meanPower(alone, bin + 1) - here));
    }, 0);
    if (sum > best.sum) best = { sum, factor };
  }
  // A line is as wide as two parts of its frame; together they are sharper.
  const highest = Math.max(1, ...own.map(({ order }) => order));
  const deviation = 0.3 / (highest * speed * pooled.span * Math.sqrt(Math.max(1, own.length)));
  return { group: free.group, factor: best.factor, deviation, ...explainRatio(pooled, speed, { group: free.group, factor: best.factor }, comb) };
}
