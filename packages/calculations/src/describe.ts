import { showQuantity } from '@rotorwright/units';
import type { Calculation, InputSpec, OutputSpec } from './calculation.ts';
import { wanted } from './read-inputs.ts';

/** A calculation in plain text: inputs, outputs, units, formula, source, validity. */
export function describe(calculation: Calculation): string {
  const { id, title, section, summary, inputs, outputs, formulas, source, validity } = calculation;
  return [
    `${id}: ${title} (${section})`,
    summary,
    '',
    'Inputs',
    ...Object.entries(inputs).flatMap(([name, spec]) => describeInput(name, spec, '  ')),
    '',
    'Outputs',
    ...Object.entries(outputs).map(([name, spec]) => `  ${name} [${spec.unit}]${form(spec)}: ${spec.title}`),
    '',
    'Formulas',
    ...formulas.map(({ output, tex }) => `  ${output}: ${tex}`),
    '',
    `Source: ${source}`,
    '',
    'Validity',
    ...validity.map((sentence) => `  ${sentence}`),
    '',
  ].join('\n');
}

function describeInput(name: string, spec: InputSpec, indent: string): string[] {
  const line = `${indent}${name}${spec.kind === 'number' ? ` [${spec.unit}]` : ''}: ${spec.title}${usual(spec)}`;
  const many = spec.kind === 'list' || spec.kind === 'map';
  const record = spec.kind === 'record' ? spec : many && spec.of.kind === 'record' ? spec.of : undefined;
  if (record === undefined) return [line, `${indent}  ${wanted(spec)}`];
  const fields = Object.entries(record.fields).flatMap(([field, own]) => describeInput(field, own, `${indent}  `));
  return [many ? `${line}; ${spec.kind === 'list' ? 'a list' : 'names of your choosing'}, each with` : line, ...fields];
}

function form({ list, map, text }: OutputSpec): string {
  return `${text ? ', text' : ''}${list ? ', a list' : ''}${map ? ', one for each name' : ''}`;
}

function usual(spec: InputSpec): string {
  if (spec.kind === 'number' && spec.default !== undefined) return `; ${showQuantity(spec.default, spec.shown, { significant: 6 })} when not given`;
  if ((spec.kind === 'choice' || spec.kind === 'text') && spec.default !== undefined) return `; ${spec.default} when not given`;
  return spec.optional ? '; may be left out' : '';
}
