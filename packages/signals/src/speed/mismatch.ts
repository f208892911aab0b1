import type { ReadyFamily } from './comb.ts';
import type { Course } from './course.ts';
import type { Ear } from './explain.ts';
import type { Mismatch } from './hearing.ts';
import { explainRatio, withoutOthers, type Free } from './hypotheses.ts';
import { meanPower, poolFrames, type Pooled } from './look.ts';
import { mendPath } from './refine.ts';
import { groups } from './scores.ts';
import { standingLines, tellable } from './standing.ts';
import { meanSpeed } from './straighten.ts';

/** Range of the last search for the ratio of a free group, as far as a low line alone may leave it open, and its step, logarithm. */
const ratioReach = 3e-3;
const ratioStep = 1e-5;

/** Frames by which the slip is followed, one after the other, s, and how far it may stray from the ratio at which it is found, logarithm. */
const slipSpans: readonly number[] = [0.5, 1];
const slipReach = 5e-3;
/** How far its mean may still be off then, for loud lines are broad. */
const slipLeft = 1e-3;

/** A ratio to the last digit, or the mean of a slip; and what would explain it. */
export function mismatchOf(free: Free, { pooled, speed, turns }: Course, families: readonly ReadyFamily[], { comb, rate, straighten }: Ear): Mismatch {
  const alone = withoutOthers(pooled, speed, families.filter(({ family }) => family.group !== free.group));
  const own = standingLines(alone, speed * free.factor, families, [free.group], rate).map(({ order }) => order);
  const factor = free.factor * sharpest(alone, own.map((order) => order * speed * free.factor), ratioReach);
  // A line is as wide as two parts of its frame; together they are sharper.
  const deviation = 0.3 / (Math.max(1, ...own) * speed * pooled.span * Math.sqrt(Math.max(1, own.length)));
  const explained = explainRatio(pooled, speed, { group: free.group, factor }, comb);
  const others = standingLines(pooled, speed, families, groups.filter((group) => group !== free.group), rate);
  const orders = own.map((order) => order * factor).filter((order) => others.every((other) => (Math.abs(other.order - order) - order * slipReach) * speed > tellable));
  if (!explained.slip || orders.length === 0) return { group: free.group, factor, deviation, ...explained };
  // Teeth are exact; a slip comes and goes, and its lines are highest where it turns back. Made even in its own angle they stand at its mean.
  const slipped = slipSpans.reduce((path, span) => mendPath(path, straighten, rate, orders, span, slipReach), turns);
  const slipSpeed = meanSpeed(slipped, rate);
  const mean = (slipSpeed / speed) * sharpest(poolFrames(straighten(slipped), rate), orders.map((order) => order * slipSpeed), slipLeft);
  return { group: free.group, factor: factor * mean, deviation, ...explained };
}

/** Factor near 1 by which lines must be moved to stand highest, all together. */
function sharpest(pooled: Pooled, frequencies: readonly number[], reach: number): number {
  let best = { sum: -Infinity, factor: 1 };
  for (let log = -reach; log <= reach; log += ratioStep) {
    const factor = Math.exp(log);
    const sum = frequencies.reduce((all, frequency) => {
      const at = (frequency * factor) / pooled.binWidth;
      const bin = Math.min(pooled.bins - 2, Math.floor(at));
      const here = meanPower(pooled, bin);
      // Logarithms: a loud line has its top where it is highest, and still does not outvote the others.
      return all + Math.log1p(here + (at - bin) * (meanPower(pooled, bin + 1) - here));
    }, 0);
    if (sum > best.sum) best = { sum, factor };
  }
  return best.factor;
}
