import type { Calculation, InputSpec } from './calculation.ts';

/** Inputs with which a worksheet opens: the example of each spec, as JSON in SI. Inputs without one are left out. */
export function exampleInputs(calculation: Calculation): Readonly<Record<string, unknown>> {
  return exampleRecord(calculation.inputs);
}

function exampleRecord(fields: Readonly<Record<string, InputSpec>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([name, spec]) => {
      const value = example(spec);
      return value === undefined ? [] : [[name, value]];
    }),
  );
}

function example(spec: InputSpec): unknown {
  if (spec.kind !== 'record') return spec.example;
  const fields = exampleRecord(spec.fields);
  return Object.keys(fields).length > 0 ? fields : undefined;
}
