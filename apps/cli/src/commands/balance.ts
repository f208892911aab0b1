import type { Command } from 'commander';
import { balanceOf, figures, type BalanceSummary, type CentreWord, type Figure, type Move } from '@rotorwright/figures';
import type { Point } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { findMachine, homeOption, sayFindings, type HomeOption } from '../machine-argument.ts';
import { readQuantityOption } from '../read-option.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import type { Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface BalanceOptions extends HomeOption {
  readonly wanted?: string;
  readonly json?: true;
}

export function balanceCommand(program: Command, act: Act): void {
  program
    .command('balance')
    .summary('say where the centre of mass is, and what to move')
    .description('Says where the centre of mass lies, with the tank full and empty, what to move or\nwhat weight to fix, and what spinning parts may be out of balance.\nStatus 1 when the centre leaves its limits.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--wanted <place>', 'where the centre is wanted, ahead of the mast axis: "2 mm"; default: the middle of its limits')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright balance examples/whimbrel/machine.yaml --wanted "2 mm"')
    .action(act((terminal, [machine], options: BalanceOptions) => show(terminal, machine, options)));
}

async function show(terminal: Terminal, argument: string | undefined, options: BalanceOptions): Promise<Status> {
  const wantedCentre = readQuantityOption('--wanted', options.wanted, 'm', '2 mm');
  const named = findMachine(terminal, argument, options);
  const set = figures(named.machine, wantedCentre === undefined ? {} : { wantedCentre });
  const summary = balanceOf(set);
  const ahead = set.get('centre-ahead')!;
  if (options.json) {
    const { bodies, whole, ...rest } = summary;
    const shown = set.all.filter(({ name, calculation }) => calculation === 'mass-properties' || name === 'hanging-tilt' || name.startsWith('tip-gram '));
    // The parts that a figure was made from stand in its working: rotorwright figures --open NAME.
    const short = (key: string, each: unknown): unknown => (key === 'inputs' ? undefined : each);
    const { massless, placeless, overweight } = bodies;
    await terminal.write(`${JSON.stringify({ id: named.id, parts: whole.length, ...rest, figures: shown, massless, placeless, overweight }, short)}\n`);
  } else {
    const paint = painter(terminal.colour);
    const title = `${paint('bold', named.machine.name)}: ${ahead.value === undefined ? 'the centre of mass is not known' : `centre of mass ${aheadWords(ahead.value)}`}`;
    await terminal.write(`${[title, ...centreLines(terminal, summary, ahead), ...moveLines(terminal, summary), ...massLines(terminal, summary), ...spunLines(terminal, summary, set.all)].join('\n\n')}\n`);
  }
  return sayFindings(terminal, named, set.findings.filter(({ code, path }) => code === 'limit/exceeded' && path === summary.limit?.path));
}

const mm = (length: number): string => showQuantity(length, 'mm', { decimals: 1 });
const value = ({ value: known, shown, missing }: Figure): string => (known === undefined ? (missing.length > 0 ? `wants ${missing.join(', ')}` : 'cannot') : showQuantity(known, shown, { significant: 3 }));
const aheadWords = (ahead: number): string => (mm(ahead) === mm(0) ? 'on the mast axis' : `${mm(Math.abs(ahead))} ${ahead > 0 ? 'ahead of' : 'behind'} the mast axis`);
const words: Readonly<Record<CentreWord, string>> = { holds: 'holds', exceeded: 'exceeded', unknown: 'not assessed' };

function centreLines({ columns }: Terminal, { fillings, limit, range, unaccounted, bodies }: BalanceSummary, ahead: Figure): readonly string[] {
  if (ahead.value === undefined) return [paragraph(`It wants ${ahead.missing.join(', ')}. Weigh a module and give its mass and place, or those of its parts.`, columns)];
  const rows = fillings.map(({ title, figure, word }) => [title, figure.value === undefined ? 'unknown' : aheadWords(figure.value), words[word]]);
  const { min, max } = limit?.window ?? {};
  return [
    table([{ title: 'centre of mass' }, { title: 'where' }, { title: 'limits' }], rows, columns),
    paragraph(limit ? `Limits: ${min === undefined ? '' : `from ${mm(min)} `}${max === undefined ? '' : `to ${mm(max)} `}ahead of the mast axis${limit.source === undefined ? '' : `; ${limit.source}`}.` : 'The file sets the centre no limits: write limits: {centre: {of: centre-ahead, at-least: -5 mm, at-most: 10 mm}}.', columns),
    ...(range && unaccounted !== undefined ? [paragraph(`${grams(unaccounted)} are nowhere in the file: at the tail they would put the centre ${aheadWords(range.aft.value ?? 0)}, at the nose ${aheadWords(range.fore.value ?? 0)}.`, columns)] : []),
    ...[...ahead.warnings, ...bodies.placeless.map(({ path }) => `Without a place: ${path}.`), ...bodies.massless.map((path) => `Without a mass: ${path}.`)].map((line) => paragraph(line, columns)),
  ];
}

function moveLines({ columns }: Terminal, { moves, ballast }: BalanceSummary): readonly string[] {
  const rows = [
    ...moves.map((move) => [`move ${move.movable.part}`, moveWords(move)]),
    ...ballast.map(({ place, figure }) => [`weight at ${place.id}`, figure.value === undefined ? figure.missing.length > 0 ? value(figure) : 'draws it the wrong way' : grams(figure.value)]),
  ];
  return rows.length === 0 ? [] : [`To bring it where it is wanted, one of:\n${table([{ title: 'what', breaks: true }, { title: 'how far, how much', breaks: true }], rows, columns)}`];
}

function moveWords({ figure, to, stop }: Move): string {
  if (figure.value === undefined) return value(figure);
  const way = `${mm(Math.abs(figure.value))} ${figure.value > 0 ? 'forward' : 'aft'}${to === undefined ? '' : `, to ${mm(to)}`}`;
  return stop === undefined ? way : `${way}: it stops at ${mm(stop.at)}, with the centre ${aheadWords(stop.centre)}`;
}

function massLines({ columns }: Terminal, { modules, whole }: BalanceSummary): readonly string[] {
  if (modules.length === 0) return [];
  const total = whole.reduce((sum, { mass }) => sum + mass, 0);
  const place = (at: Point): readonly string[] => at.map((coordinate) => showQuantity(coordinate, 'mm', { decimals: 0 }).replace(' mm', ''));
  const rows = modules.map(({ title, mass, centre, without }) => [title, grams(mass), ...place(centre), showQuantity(without, 'mm', { decimals: 1 })]);
  return [`From the rotor hub, in mm:\n${table([{ title: 'module', breaks: true }, { title: 'mass', right: true }, { title: 'ahead', right: true }, { title: 'left', right: true }, { title: 'up', right: true }, { title: 'without it', right: true }], [...rows, ['together', grams(total), '', '', '', '']], columns)}`];
}

function spunLines({ columns }: Terminal, { spun }: BalanceSummary, all: readonly Figure[]): readonly string[] {
  const rows = spun.map(({ spun: { title }, mass, unbalance, force, atRadius }) => [title, value(mass), value(unbalance), value(force), value(atRadius)]);
  const tips = all.filter(({ name, value: known }) => name.startsWith('tip-gram ') && known !== undefined);
  return [
    ...(rows.length === 0 ? [] : [`May be out of balance, by the grade that the file asks for:\n${table([{ title: 'what turns', breaks: true }, { title: 'mass', right: true }, { title: 'unbalance', right: true }, { title: 'force', right: true }, { title: 'as mass there', right: true }], rows, columns)}`]),
    ...(tips.length === 0 ? [] : [tips.map((tip) => `${tip.title}: ${value(tip)}.`).join('\n')]),
    paragraph('Trial runs: rotorwright calc balance-single-plane, balance-two-plane, balance-four-run; two blades: blade-match; path of the tips: blade-tracking.', columns),
  ];
}

const grams = (mass: number): string => showQuantity(mass, 'g', { significant: 4 });
