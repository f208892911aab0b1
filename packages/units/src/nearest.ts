import { listedUnits, usualSlips } from './table.ts';

/** Number of letters to add, drop, change or swap with a neighbour to make one word the other. */
export function editDistance(a: string, b: string): number {
  const from = [...a];
  const to = [...b];
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const change = from[i - 1] === to[j - 1] ? 0 : 1;
      let best = Math.min((last[j] as number) + 1, (row[j - 1] as number) + 1, (last[j - 1] as number) + change);
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) best = Math.min(best, (beforeLast[j - 2] as number) + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[to.length] as number;
}

/**
 * The listed unit that somebody most likely meant: a usual slip, else the same letters in another case, else the
 * fewest changed letters.
 *
 * @example nearestUnit('gr') // 'g'
 * @example nearestUnit('Mm') // 'mm'
 */
export function nearestUnit(text: string): string {
  const lower = text.toLowerCase();
  if (Object.hasOwn(usualSlips, lower)) return usualSlips[lower] as string;
  let nearest = 'mm';
  let least = Infinity;
  // A long text is no unit at all; comparing its first letters is enough and bounds the work.
  const word = lower.slice(0, 24);
  for (const unit of listedUnits) {
    for (const spelling of [unit.symbol, ...(unit.spellings ?? [])]) {
      const distance = editDistance(word, spelling.toLowerCase());
      if (distance < least) {
        least = distance;
        nearest = unit.symbol;
      }
    }
  }
  return nearest;
}
