import type { Check, CheckValue, Source } from './check.ts';

/** Title, calculation, inputs, output, expected value in SI, tolerance and its mode. */
export type Row = readonly [title: string, calculation: string, inputs: Readonly<Record<string, unknown>>, output: string, expected: CheckValue, tolerance: number, mode: Check['mode']];

/** Checks of one source, a row each. */
export const sourced = (source: Source, rows: readonly Row[]): readonly Check[] =>
  rows.map(([title, calculation, inputs, output, expected, tolerance, mode]) => ({ calculation, title, source, inputs, output, expected, tolerance, mode }));
