import data from '../data/rotor-cases.json' with { type: 'json' };
import type { Check } from './check.ts';

interface RotorCase {
  readonly id: string;
  readonly name: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expect: Readonly<Record<string, { readonly value: number; readonly tol: number; readonly mode: string }>>;
  readonly source: string;
  readonly provenance: string;
}

const cases = data.cases as unknown as readonly RotorCase[];

/** Blade loads from summed mass points and a numerical potential, autorotation from time integration and roots of the quartic. */
export const rotorCases: readonly Check[] = cases.flatMap(({ id, name, inputs, expect, source, provenance }) =>
  Object.entries(expect).map(
    ([output, { value, tol, mode }]): Check => ({
      calculation: id,
      title: `${name}: ${output}`,
      source: { document: source, place: provenance, kind: 'independent route' },
      inputs,
      output,
      expected: value,
      tolerance: tol,
      mode: mode === 'rel' ? 'relative' : 'absolute',
    }),
  ),
);
