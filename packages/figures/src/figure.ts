import type { EntryPath } from '@rotorwright/machine';

/** What a figure was made from. A list stands for inputs that come in rows (stages of a train), a record for those that belong together (a blade). */
export type FigureInput =
  | { readonly figure: string }
  /** `as` says what was made of the entry on the way: "half of" a diameter. `with` are entries that it stands on besides. */
  | { readonly entry: EntryPath; readonly value: number | string; readonly unit: string; readonly as?: string; readonly with?: readonly EntryPath[] }
  /** A point, a row or a table of numbers, SI. */
  | { readonly entry: EntryPath; readonly table: readonly (number | readonly number[])[]; readonly unit: string; readonly as?: string; readonly with?: readonly EntryPath[] }
  | { readonly constant: number; readonly unit: string; readonly source: string }
  /** `names` say what each row is, where its number would not do. */
  | { readonly list: readonly Readonly<Record<string, FigureInput>>[]; readonly names?: readonly string[] }
  | { readonly record: Readonly<Record<string, FigureInput>> };

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
  /** Where tooth counts give one: a speed as exact part of the speed of the source, "7/58"; a ratio as it is, "58/7". */
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
