import type { ReadyFamily } from './comb.ts';
import type { Course } from './course.ts';
import type { Ear } from './explain.ts';
import type { Mismatch } from './hearing.ts';
import { explainRatio, withoutOthers, type Free } from './hypotheses.ts';
import { meanPower } from './look.ts';
import { mendPath } from './refine.ts';
import { standingLines } from './standing.ts';
import { meanSpeed } from './straighten.ts';

/** Range of the last search for the ratio of a free group, as far as a low line alone may leave it open, and its step, logarithm. */
const ratioReach = 3e-3;
const ratioStep = 1e-5;

/** Frames by which the slip is followed, one after the other, s, and how far it may stray from the ratio at which it is found, logarithm. */
const slipSpans: readonly number[] = [0.5, 1];
const slipReach = 6e-3;

/** A ratio to the last digit, or the mean of a slip; and what would explain it. */
export function mismatchOf(free: Free, { pooled, speed, turns }: Course, families: readonly ReadyFamily[], { comb, rate, straighten }: Ear): Mismatch {
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
  const explained = explainRatio(pooled, speed, { group: free.group, factor: best.factor }, comb);
  // Teeth are exact; a slip comes and goes, and its lines are highest where it turns back.
  const orders = own.map(({ order }) => order * best.factor);
  const slipped = explained.slip && orders.length > 0 ? slipSpans.reduce((path, span) => mendPath(path, straighten, rate, orders, span, slipReach), turns) : turns;
  return { group: free.group, factor: (best.factor * meanSpeed(slipped, rate)) / speed, deviation, ...explained };
}
