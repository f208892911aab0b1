import type { LineGroup, ReadyFamily } from './comb.ts';
import { lineEvidence } from './evidence.ts';
import { meanPower, type Pooled } from './look.ts';
import type { FollowedLine } from './phasors.ts';
import { densityOf } from './whiten.ts';

/** A line that stands higher out of the noise counts for no more. */
const mostPower = 30;
/** Lines this far apart are two in frames of half a second, Hz. */
export const tellable = 6;

/** Lines of some groups that stand out of the noise, with the noise around them. */
export function standingLines(pooled: Pooled, speed: number, families: readonly ReadyFamily[], some: readonly LineGroup[], rate: number): readonly FollowedLine[] {
  const weigh = lineEvidence(pooled.independent * pooled.parts.length, 0.4, 40);
  return families.filter(({ family }) => some.includes(family.group)).flatMap(({ lines, faint }) => [...lines, ...faint]).flatMap(({ order }) => {
    const bin = Math.round((order * speed) / pooled.binWidth);
    if (bin < 1 || bin >= 0.92 * (pooled.bins - 1)) return [];
    return weigh(meanPower(pooled, bin)) > 0.5 ? [{ order, noise: densityOf(pooled, bin, rate) }] : [];
  });
}

/** Orders of the engine's lines that stand at the start, and that short frames can tell from those of others. */
export function engineAlone(pooled: Pooled, speed: number, families: readonly ReadyFamily[], rate: number): readonly number[] {
  const start = { ...pooled, parts: pooled.parts.slice(0, 1) };
  const others = standingLines(pooled, speed, families, ['main', 'tail', 'mesh'], rate);
  return standingLines(start, speed, families, ['engine'], rate).map(({ order }) => order).filter((order) => others.every((other) => Math.abs(other.order - order) * speed > tellable));
}

/** How far lines stand out of the noise in all. */
export const standing = (pooled: Pooled, speed: number, orders: readonly number[]): number =>
  orders.reduce((sum, order) => sum + Math.min(mostPower, meanPower(pooled, binOf(pooled, order * speed))), 0);

/** How far lines stand out of the noise in each part of the recording, over the most that they do in one. */
export function sharesOf(pooled: Pooled, speed: number, orders: readonly number[]): readonly number[] {
  const beyond = pooled.parts.map((part) => orders.reduce((sum, order) => sum + Math.min(mostPower, part[binOf(pooled, order * speed)]!) - 1, 0));
  const most = Math.max(...beyond);
  return beyond.map((each) => (most > 0 ? each / most : 0));
}

const binOf = ({ bins, binWidth }: Pooled, frequency: number): number => Math.min(bins - 1, Math.round(frequency / binWidth));
