import { omissionRange, type ChanceRange, type WayOfWorking } from '@rotorwright/build';

/** Powers of ten at the two ends of the axis: 1 in 100,000 and certain. */
const lowest = -5;

/** Where a chance stands on an axis that is `width` long, each power of ten taking the same room; smaller ones stand at its left end. */
export function chanceAt(chance: number, width: number): number {
  const decades = chance > 0 ? Math.max(lowest, Math.log10(chance)) : lowest;
  return (1 - Math.min(0, decades) / lowest) * width;
}

export const ticks: readonly { readonly chance: number; readonly words: string }[] = [
  { chance: 1e-5, words: '1 in 10⁵' },
  { chance: 1e-3, words: '10³' },
  { chance: 1e-1, words: '10' },
];

/** Chance that at least one of some independent items is missed. */
export function missedRange(way: WayOfWorking, items: readonly number[]): ChanceRange {
  const ranges = items.map((length) => omissionRange(way, length));
  const any = (end: keyof ChanceRange): number => 1 - ranges.reduce((kept, range) => kept * (1 - range[end]), 1);
  return { low: any('low'), middle: any('middle'), high: any('high') };
}
