import type { EntryPath } from '@rotorwright/machine';
import type { LoadCaseId } from './load-cases.ts';

/** holds: from 1.25; tight: from 1; exceeded: below 1, however little; unknown: not assessed, which never counts as a pass. */
export type MarginWord = 'holds' | 'tight' | 'exceeded' | 'unknown';

/** From this margin on a part holds; between 1 and it, it is tight. Common practice, no source. */
export const HOLDS_FROM = 1.25;

/** What one part bears over what it sees. Its numbers are figures like others, with their working. */
export interface Margin {
  /** Name of the figure: `margin pin-shear tail-case/cross-pin`. */
  readonly name: string;
  /** "Cross pin of the tail pinion, shear". */
  readonly title: string;
  /** Thing, coupling, shaft, rotor or limit. */
  readonly of: string;
  /** Module copy of a thing. */
  readonly module?: string;
  /** Names of the figures. */
  readonly capacity: string;
  readonly demand: string;
  readonly value?: number;
  readonly word: MarginWord;
  /** The load case that governs; absent where the load is the same in all. */
  readonly loadCase?: LoadCaseId;
  /** Sentences. */
  readonly leavesOut: readonly string[];
  /** Entries that would make it known; or, where it is known, better. */
  readonly improve: readonly EntryPath[];
  /** Why it is not assessed, where no entry would help. */
  readonly reason?: string;
}

/** Nothing is rounded into safety: 0.9999 is exceeded. */
export function wordOf(value: number | undefined): MarginWord {
  if (value === undefined) return 'unknown';
  return value < 1 ? 'exceeded' : value < HOLDS_FROM ? 'tight' : 'holds';
}

/** A margin as it is read, with as many digits as its size wants, rounded towards danger: 0.996 is never shown as 1.00. */
export function showMargin(value: number): string {
  const digits = value < 10 ? (value < 1.25 && value >= 0.9 ? 3 : 2) : value < 100 ? 1 : 0;
  const cut = Math.floor(value * 10 ** digits) / 10 ** digits;
  return cut >= 1000 ? '> 1,000' : cut.toFixed(digits);
}
