import type { EntryPath } from '@rotorwright/machine';

/** What a figure was made from. A list stands for inputs that come in rows (stages of a train). */
export type FigureInput =
  | { readonly figure: string }
  | { readonly entry: EntryPath; readonly value: number | string; readonly unit: string }
  | { readonly constant: number; readonly unit: string; readonly source: string }
  | { readonly list: readonly Readonly<Record<string, FigureInput>>[] };

/** A number that shows its working. Value in SI; absent when it cannot be known, and then `missing` says what would make it known. */
export interface Figure {
  /** Stable name: `speed mast`, `tip-speed main`. Also what `limits` and measurements of the file refer to. */
  readonly name: string;
  readonly title: string;
  readonly value?: number;
  /** SI unit of value. */
  readonly unit: string;
  /** Display unit usual in the trade. */
  readonly shown: string;
  /** Exact ratio to the speed of the source, "7/58", where tooth counts give one. */
  readonly exact?: string;
  /** Catalogue id and the output of it that this is. */
  readonly calculation?: string;
  readonly output?: string;
  readonly inputs: Readonly<Record<string, FigureInput>>;
  readonly source: string;
  /** Entry paths (existing or to be written) and figure names without which it stays unknown. */
  readonly missing: readonly string[];
  readonly warnings: readonly string[];
}
