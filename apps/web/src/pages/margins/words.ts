import type { Margin, MarginWord } from '@rotorwright/figures';

export const marginWords: Readonly<Record<MarginWord, string>> = { exceeded: 'exceeded', tight: 'tight', holds: 'holds', unknown: 'not assessed' };

/** In the order in which they want to be read. */
export const wordOrder: readonly MarginWord[] = ['exceeded', 'tight', 'holds', 'unknown'];

/** Entries that would make margins known, those that many wait for first. */
export function missingEntries(all: readonly Margin[]): readonly (readonly [path: string, count: number])[] {
  const counts = new Map<string, number>();
  for (const { value, improve } of all) if (value === undefined) for (const path of improve) counts.set(path, (counts.get(path) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1]);
}
