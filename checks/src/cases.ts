import type { Check, CheckValue } from './check.ts';

/** Inputs of one calculation with several of its outputs, worked by somebody else. */
export interface Case {
  readonly id: string;
  readonly name: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expect: Readonly<Record<string, { readonly value: CheckValue; readonly tol: number; readonly mode: string }>>;
  readonly source: string;
  readonly provenance: string;
}

/** One check for each output of each case. */
export const checksOf = (cases: readonly Case[]): readonly Check[] =>
  cases.flatMap(({ id, name, inputs, expect, source, provenance }) =>
    Object.entries(expect).map(
      ([output, { value, tol, mode }]): Check => ({
        calculation: id,
        title: `${name}: ${output}`,
        source: { document: source, place: provenance, kind: provenance === 'published' ? 'published' : 'independent route' },
        inputs,
        output,
        expected: value,
        tolerance: tol,
        mode: mode === 'rel' ? 'relative' : 'absolute',
      }),
    ),
  );
