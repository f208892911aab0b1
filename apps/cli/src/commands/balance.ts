import type { Command } from 'commander';
import { answer, isCalcProblem } from '@rotorwright/calculations';
import { trialsOf, type EntryBody, type Trial } from '@rotorwright/logbook';
import { balanceOf, bladeOrder, figures, holesWords, trialProblems, trialWords, verdictOf, type BalanceSummary, type Figure, type FigureSet, type Move } from '@rotorwright/figures';
import type { Point } from '@rotorwright/machine';
import { showNumber, showQuantity } from '@rotorwright/units';
import { bookOf, findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { readQuantityOption } from '../read-option.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { enter } from './enter.ts';
import { readJson } from '../read-json.ts';

interface BalanceOptions extends HomeOption {
  readonly wanted?: string;
  readonly track?: string;
  readonly record?: string;
  readonly by?: string;
  readonly of?: string;
  readonly note?: string;
  readonly json?: true;
}

export function balanceCommand(program: Command, act: Act): void {
  program
    .command('balance')
    .summary('say where the centre of mass is, and what to move')
    .description('Says where the centre of mass lies, with the tank full and empty, what to move or\nwhat weight to fix, what spinning parts may be out of balance, and what was read to\nbalance them. With --record and --by, puts readings on record.\nStatus 1 when the centre leaves its limits.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--wanted <place>', 'where the centre is wanted, ahead of the mast axis: "2 mm"; default: the middle of its limits')
    .option('--track <height>', 'how much higher one blade flies at its tip: "4 mm"; answers with turns of its link')
    .option('--record <file>', 'put readings on record: {"calculation": "balance-single-plane", "inputs": {…}} in a file, or - for standard input')
    .option('--by <name>', 'who took the readings')
    .option('--of <id>', 'what turned, by its id under balance.spun')
    .option('--note <text>', 'anything worth keeping with them')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright balance examples/whimbrel/machine.yaml --wanted "2 mm"\n  rotorwright balance whimbrel --record readings.json --of fan --by Maren')
    .action(act((terminal, [machine], options: BalanceOptions) => show(terminal, machine, options)));
}

async function show(terminal: Terminal, argument: string | undefined, options: BalanceOptions): Promise<Status> {
  const wantedCentre = readQuantityOption('--wanted', options.wanted, 'm', '2 mm');
  const higher = readQuantityOption('--track', options.track, 'm', '4 mm');
  const named = findMachine(terminal, argument, options);
  const set = figures(named.machine, wantedCentre === undefined ? {} : { wantedCentre });
  const summary = balanceOf(set);
  if (options.record !== undefined) await record(terminal, named, options.record, options);
  else if (options.by ?? options.of ?? options.note) throw new WrongInput('--by, --of and --note go with --record FILE.');
  const trials = trialsOf(await bookOf(terminal, named.id, options));
  const ahead = set.get('centre-ahead')!;
  if (options.json) {
    const { bodies, whole, ...rest } = summary;
    const shown = set.all.filter(({ name, calculation }) => calculation === 'mass-properties' || name === 'hanging-tilt' || name.startsWith('tip-gram ') || name.startsWith('track-turns '));
    // The parts that a figure was made from stand in its working: rotorwright figures --open NAME.
    const short = (key: string, each: unknown): unknown => (key === 'inputs' ? undefined : each);
    const { massless, placeless, overweight } = bodies;
    await terminal.write(`${JSON.stringify({ id: named.id, parts: whole.length, ...rest, figures: shown, massless, placeless, overweight, trials: trials.map(({ number, at, by, body }) => ({ entry: number, at, by, calculation: body.calculation, readings: body.inputs, of: body.of, note: body.note, found: trialWords(body) })) }, short)}\n`);
  } else {
    const paint = painter(terminal.colour);
    if (higher !== undefined) await terminal.write(`${trackLine(set, higher, terminal)}\n\n`);
    const title = `${paint('bold', named.machine.name)}: ${ahead.value === undefined ? 'the centre of mass is not known' : `centre of mass ${aheadWords(ahead.value)}`}`;
    await terminal.write(`${[title, ...centreLines(terminal, summary, ahead), ...moveLines(terminal, summary), ...massLines(terminal, summary), ...spunLines(terminal, summary, set.all), ...trialLines(terminal, trials)].join('\n\n')}\n`);
  }
  return sayFindings(terminal, named, set.findings.filter(({ code, path }) => code === 'limit/exceeded' && path === summary.limit?.path));
}

/** @throws WrongInput when the readings cannot be taken; nothing is recorded then */
async function record(terminal: Terminal, { id, machine }: NamedMachine, file: string, { by, of, note, ...options }: BalanceOptions): Promise<void> {
  if (by === undefined) throw new WrongInput('Say who took the readings: --by NAME.');
  const json = await readJson(terminal, file);
  if (typeof json !== 'object' || json === null || Array.isArray(json)) throw new WrongInput('The readings must be a JSON object {"calculation", "inputs"}.');
  const { calculation, inputs, ...unknown } = json as Readonly<Record<string, unknown>>;
  if (Object.keys(unknown).length > 0) throw new WrongInput(`The readings hold ${Object.keys(unknown).slice(0, 5).join(', ')}; they may hold calculation and inputs only.`);
  if (typeof calculation !== 'string' || typeof inputs !== 'object' || inputs === null) throw new WrongInput('The readings must name a calculation and its inputs: {"calculation": "balance-single-plane", "inputs": {…}}.');
  const readings = { calculation, inputs: inputs as Readonly<Record<string, unknown>>, ...(of === undefined ? {} : { of }) };
  const problems = trialProblems(machine, readings);
  if (problems.length > 0) throw new WrongInput(`Nothing was recorded. ${problems.join(' ')}`);
  const entry = await enter(terminal, id, by, { kind: 'balanced', version: 1, ...readings, ...(note === undefined ? {} : { note }) } as EntryBody, options);
  if (options.json) return;
  terminal.say(`Entry ${entry.number} by ${entry.by}: ${trialWords(readings)}.`);
  const answered = answer(calculation, inputs);
  if (calculation === 'blade-match' && !isCalcProblem(answered)) bladeOrder(readings.inputs, answered).forEach((line, index) => terminal.say(paragraph(`${index + 1}. ${line}`, terminal.columns, '   ')));
}

function trialLines({ columns }: Terminal, trials: readonly Trial[]): readonly string[] {
  if (trials.length === 0) return [];
  const rows = trials.map(({ number, at, by, body }) => [String(number), at.slice(0, 10), by, body.of ?? 'blades', body.calculation, [trialWords(body), body.note].filter(Boolean).join('; ')]);
  return [`Readings in the book, the latest first:\n${table([{ title: '#', right: true }, { title: 'when' }, { title: 'who', breaks: true }, { title: 'of', breaks: true }, { title: 'by' }, { title: 'what followed', breaks: true }], rows, columns)}`];
}

/** What to do to the link of the blade that flies higher. */
function trackLine(set: FigureSet, higher: number, { columns }: Terminal): string {
  const turns = set.all.find(({ calculation }) => calculation === 'blade-tracking');
  if (turns?.value === undefined) return paragraph(`Turns of the link are not known${turns === undefined ? ': the file places no blades' : `; it wants ${turns.missing.join(', ')}`}.`, columns);
  const all = turns.value * Math.abs(higher) * 1000;
  return paragraph(`Track: turn the pitch link of the blade that flies ${mm(Math.abs(higher))} higher by ${showNumber(all, { significant: 2 })} turns towards less pitch, or that of each blade by half of it, one up and one down, which keeps collective. Stop the rotor before you touch a link; look again before you change anything else.`, columns);
}

const mm = (length: number): string => showQuantity(length, 'mm', { decimals: 1 });
const value = ({ value: known, shown, missing }: Figure): string => (known === undefined ? (missing.length > 0 ? `wants ${missing.join(', ')}` : 'cannot') : showQuantity(known, shown, { significant: 3 }));
const aheadWords = (ahead: number): string => (mm(ahead) === mm(0) ? 'on the mast axis' : `${mm(Math.abs(ahead))} ${ahead > 0 ? 'ahead of' : 'behind'} the mast axis`);

function centreLines({ columns }: Terminal, { fillings, limit, range, unaccounted, bodies }: BalanceSummary, ahead: Figure): readonly string[] {
  if (ahead.value === undefined) return [paragraph(`It wants ${ahead.missing.join(', ')}. Weigh a module and give its mass and place, or those of its parts.`, columns)];
  const rows = fillings.map((filling) => [filling.title, filling.figure.value === undefined ? 'unknown' : aheadWords(filling.figure.value), verdictOf(filling)]);
  const { min, max } = limit?.window ?? {};
  return [
    table([{ title: 'centre of mass' }, { title: 'where' }, { title: 'limits' }], rows, columns),
    paragraph(limit ? `Limits: ${min === undefined ? '' : `from ${mm(min)} `}${max === undefined ? '' : `to ${mm(max)} `}ahead of the mast axis; aft of that it is tail-heavy, forward of it nose-heavy${limit.source === undefined ? '' : `; ${limit.source}`}.` : 'The file sets the centre no limits: write limits: {centre: {of: centre-ahead, at-least: -5 mm, at-most: 10 mm}}.', columns),
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
    ...spun.filter(({ spun: { places } }) => places !== undefined).map(({ spun: { title, places } }) => paragraph(`${title}: ${holesWords(places!).join(' ')}`, columns)),
    ...(tips.length === 0 ? [] : [tips.map((tip) => `${tip.title}: ${value(tip)}.`).join('\n')]),
    paragraph('Trial runs: rotorwright calc balance-single-plane, balance-two-plane, balance-four-run; two blades: blade-match; holes: balance-split; keep the readings with --record. Path of the tips: --track.', columns),
  ];
}

const grams = (mass: number): string => showQuantity(mass, 'g', { significant: 4 });
