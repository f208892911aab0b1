import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { validationReport } from '@rotorwright/checks';
import { showNumber } from '@rotorwright/units';

/** A line in a cell of a table. */
const cell = (text) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

const number = (value) => showNumber(value, { significant: 6 });

function valueText(value) {
  if (value === undefined) return 'none';
  if (typeof value === 'number') return number(value);
  if (typeof value === 'string') return value;
  if (!Array.isArray(value)) return Object.entries(value).map(([name, one]) => `${name}: ${number(one)}`).join('; ');
  const shown = value.slice(0, 4).map((one) => (Array.isArray(one) ? `(${valueText(one)})` : valueText(one)));
  return value.length > 4 ? `${shown.join('; ')}; … ${value.length} in all` : shown.join('; ');
}

/** Deviations of this size are rounding, which differs from machine to machine. */
const ROUNDING = 1e-9;

function deviationText({ deviation, mode }) {
  if (deviation === undefined) return 'none';
  if (Math.abs(deviation) < ROUNDING) return 'below 10⁻⁹';
  return mode === 'relative' ? `${number(deviation * 100)} %` : number(deviation);
}

const sourceText = ({ document, place }) => (place === undefined ? document : `${document}: ${place}`);

function section({ id, title, checks, uncheckedOutputs }) {
  return [
    `## ${title}`,
    '',
    `\`${id}\`, ${checks.length} checks.${uncheckedOutputs.length > 0 ? ` Outputs that no check covers: ${uncheckedOutputs.join(', ')}.` : ''}`,
    '',
    '| what is claimed | output | from where | source | expected | computed | deviation | holds |',
    '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...checks.map((check) => `| ${[check.title, check.output, check.source.kind, sourceText(check.source), `${valueText(check.expected)} ${check.unit === '-' ? '' : check.unit}`.trim(), valueText(check.computed), deviationText(check), check.holds ? 'yes' : `NO ${check.reason ?? ''}`.trim()].map(cell).join(' | ')} |`),
    '',
  ];
}

/**
 * The validation report as a page: what is unchecked stands on top.
 *
 * @param reports  of the checks room: every calculation, those without checks first
 */
export function validationPage(reports) {
  const checked = reports.filter(({ checks }) => checks.length > 0);
  const unchecked = reports.filter(({ checks }) => checks.length === 0);
  const all = reports.flatMap(({ checks }) => checks);
  const failing = all.filter(({ holds }) => !holds);
  const kinds = [...new Set(all.map(({ source }) => source.kind))].sort();
  return [
    '# Validation report',
    '',
    'Made by `npm test` and `npm run docs`; do not edit. Every value is in SI. The same report stands in the app: Worksheet, *Validation report*.',
    '',
    `${reports.length} calculations, ${all.length} checks: ${kinds.map((kind) => `${all.filter(({ source }) => source.kind === kind).length} ${kind}`).join(', ')}. ${failing.length === 0 ? 'All hold.' : `**${failing.length} do not hold.**`}`,
    '',
    '*Published*: a printed value, with its document. *Independent route*: worked another way. *Law*: symmetry, scaling, a limit. *By hand*: worked in the claim. *Common practice*: a figure of the trade without source. “From memory” stands where nobody has opened the document.',
    '',
    '## Not checked',
    '',
    ...(unchecked.length === 0 ? ['Every calculation has a check.'] : unchecked.map(({ id, title }) => `- **${title}** (\`${id}\`): no check at all.`)),
    ...failing.map((check) => `- **${check.calculation}, ${check.output}**: does not hold: ${check.title}.`),
    ...checked.filter(({ uncheckedOutputs }) => uncheckedOutputs.length > 0).map(({ id, uncheckedOutputs }) => `- \`${id}\`, single outputs: ${uncheckedOutputs.join(', ')}.`),
    '',
    ...checked.flatMap(section),
  ].join('\n');
}

/**
 * Runs every check and writes `docs/validation.md`.
 *
 * @returns  how many checks hold and do not
 */
export function writeValidationPage() {
  const reports = validationReport();
  writeFileSync(path.resolve(import.meta.dirname, '../docs/validation.md'), validationPage(reports));
  const all = reports.flatMap(({ checks }) => checks);
  return { passed: all.filter(({ holds }) => holds).length, failed: all.filter(({ holds }) => !holds).length };
}
