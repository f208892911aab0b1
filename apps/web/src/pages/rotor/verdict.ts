import type { FigureSet } from '@rotorwright/figures';
import type { MarkState } from '../../sheet/index.ts';

/** Capacity over demand from which on it holds, and below which it is exceeded. */
const HOLDS = 1.25;

export function markOf(margin: number | undefined): MarkState {
  if (margin === undefined) return 'unknown';
  return margin < 1 ? 'exceeded' : margin < HOLDS ? 'tight' : 'holds';
}

/** Rounded down: 0.996 is never 1.00. */
export const roundedDown = (margin: number): string => (Math.floor(margin * 100 + 1e-9) / 100).toFixed(2);

/** The margins of this sheet: figure, and what the header calls it. */
export const verdicts = [
  ['power-in-hand hover', 'power'],
  ['thrust-reserve main', 'thrust'],
  ['tail-margin full-power', 'tail at full power'],
] as const;

/** The least of them; undefined where one is not known and none of the others is exceeded. */
export function worstOf(set: Pick<FigureSet, 'get'>): number | undefined {
  const margins = verdicts.map(([name]) => set.get(name)?.value);
  const least = Math.min(...margins.map((margin) => margin ?? Infinity));
  return least < 1 || margins.every((margin) => margin !== undefined) ? least : undefined;
}
