import type { Command } from 'commander';
import { wordFinding, type Finding, type Severity } from '@rotorwright/machine';
import { planBuild, stackFindings } from '@rotorwright/build';
import { driveDirections, figures, threadSense } from '@rotorwright/figures';
import { findFile, homeOption, type FoundFile, type HomeOption } from '../machine-argument.ts';
import { painter, paragraph, type Ink, type Terminal } from '../terminal/index.ts';
import type { Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface CheckOptions extends HomeOption {
  readonly json?: true;
}

export function checkCommand(program: Command, act: Act): void {
  program
    .command('check')
    .summary('find every mistake in a machine file')
    .description('Reads a machine file and says all that is wrong with it, each with file, line, column and remedy.\nStatus 1 when there is an error or a warning.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option(...homeOption)
    .option('--json', 'the findings as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright check examples/whimbrel/machine.yaml')
    .action(act((terminal, [machine], options: CheckOptions) => check(terminal, machine, options)));
}

async function check(terminal: Terminal, argument: string | undefined, options: CheckOptions): Promise<Status> {
  const named = findFile(terminal, argument, options);
  const findings = allFindings(named);
  if (options.json) await terminal.write(`${JSON.stringify({ file: named.file, findings: findings.map((finding) => ({ ...finding, ...wordFinding(finding) })) })}\n`);
  else await terminal.write(`${[...findings.map((finding) => setOut(finding, named.file, terminal)), closing(named, findings)].join('\n')}\n`);
  return findings.some(({ severity }) => severity !== 'note') ? 1 : 0;
}

/** What the file itself, the drive and the plan have to say, in the order of the file. */
function allFindings({ machine, findings }: FoundFile): readonly Finding[] {
  if (machine === undefined) return findings;
  const set = figures(machine);
  const { drive } = set;
  const all = [...findings, ...set.findings, ...threadSense(machine, drive).findings, ...stackFindings(machine, driveDirections(machine, drive)), ...planBuild(machine).findings];
  const told = new Map(all.map((finding) => [`${finding.code} ${finding.path} ${JSON.stringify(finding.values)}`, finding]));
  return [...told.values()].toSorted((a, b) => (a.place?.line ?? 0) - (b.place?.line ?? 0) || (a.place?.column ?? 0) - (b.place?.column ?? 0));
}

const inks: Readonly<Record<Severity, Ink>> = { error: 'red', warning: 'yellow', note: 'dim' };

function setOut(finding: Finding, file: string, { columns, colour }: Terminal): string {
  const { problem, remedy } = wordFinding(finding);
  const where = finding.place === undefined ? file : `${file}:${finding.place.line}:${finding.place.column}`;
  const head = `${where} ${painter(colour)(inks[finding.severity], finding.severity)} ${finding.code}`;
  return [head, ...[problem, remedy].filter(Boolean).map((text) => `  ${paragraph(text, columns, '  ')}`)].join('\n');
}

function closing({ machine, file }: FoundFile, findings: readonly Finding[]): string {
  const count = (severity: Severity, word: string): string => {
    const number = findings.filter((finding) => finding.severity === severity).length;
    return `${number} ${word}${number === 1 ? '' : 's'}`;
  };
  return `${machine === undefined ? file : `${machine.name} (${file})`}: ${count('error', 'error')}, ${count('warning', 'warning')}, ${count('note', 'note')}.`;
}
