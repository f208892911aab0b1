import type { Command } from 'commander';
import { countMargins, figures, frequencyMap, margins, remedies, remedyWords, showMargin, working, workingLines, type LoadCaseId, type Margin, type Margins, type MarginWord } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption } from '../read-option.ts';
import { branch, painter, paragraph, table, type Ink, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface MarginsOptions extends HomeOption {
  readonly case?: string;
  readonly speed?: string;
  readonly altitude?: string;
  readonly warmer?: string;
  readonly json?: true;
}

export function marginsCommand(program: Command, act: Act): void {
  program
    .command('margins')
    .summary('say what each part bears over what it sees, tightest first')
    .description('Reckons the loads of hover, hard collective, a hard tail stop, overspeed, start and\nautorotation, and holds each part against the hardest of them.\nStatus 1 when a margin is below 1, however little. What is not assessed never counts\nas a pass: it is listed last, with the entry that would make it known.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('[of]', 'a part, joint, module, coupling, limit, or the name of a margin: these alone, and with their working where there is one')
    .option('--case <case>', 'one load case instead of the hardest of all')
    .option('--speed <speed>', 'speed of engine or motor instead of that of the file: "14600 rpm"')
    .option('--altitude <height>', 'pressure altitude of the air: "400 m"')
    .option('--warmer <difference>', 'air warmer than the standard atmosphere there by: "15 K"')
    .option(...homeOption)
    .option('--json', 'the margins as JSON')
    .addHelpText('after', '\nExamples:\n  rotorwright margins examples/whimbrel/machine.yaml\n  rotorwright margins examples/whimbrel/machine.yaml main-grip.A/blade-bolt')
    .action(act((terminal, [machine, of], options: MarginsOptions) => show(terminal, machine, of, options)));
}

async function show(terminal: Terminal, argument: string | undefined, of: string | undefined, options: MarginsOptions): Promise<Status> {
  const sourceSpeed = readQuantityOption('--speed', options.speed, 'rad/s', '14600 rpm');
  const altitude = readQuantityOption('--altitude', options.altitude, 'm', '400 m');
  const temperatureOffset = readQuantityOption('--warmer', options.warmer, 'K', '15 K');
  const named = findMachine(terminal, argument, options);
  const set = figures(named.machine, { ...(sourceSpeed !== undefined && { sourceSpeed }), ...(altitude !== undefined && { altitude }), ...(temperatureOffset !== undefined && { temperatureOffset }) });
  const found = margins(set, readCase(options.case));
  const chosen = of === undefined ? found.all : about(found, of);
  if (chosen.length === 0 && of !== undefined) throw new WrongInput(`${named.machine.name} has no margin of “${of}”. ${nearestTo(of, [...found.all.map((margin) => margin.of), ...found.all.flatMap(({ module }) => module ?? [])])}`);
  if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, counts: countMargins(chosen), margins: chosen.map((margin) => ({ ...margin, figures: sides(found, margin), ...(chosen.length === 1 ? { wouldHold: remedies(found, margin.name) } : {}) })), cases: found.cases.map(({ id, title, about: words }) => ({ id, title, about: words })) })}\n`);
  else await terminal.write(`${chosen.length === 1 ? one(terminal, found, named, chosen[0]!) : list(terminal, found, named, chosen)}\n`);
  const told = sayFindings(terminal, named, []);
  return told === 1 || chosen.some(({ word }) => word === 'exceeded') ? 1 : 0;
}

const ids: readonly LoadCaseId[] = ['hover', 'hard-collective', 'tail-stop', 'overspeed', 'start', 'autorotation'];

function readCase(given: string | undefined): LoadCaseId | undefined {
  const found = ids.find((each) => each === given);
  if (given !== undefined && found === undefined) throw new WrongInput(`--case takes one of ${ids.join(', ')}; given: ${given}`);
  return found;
}

/** Margins of a thing, a module (or any of its copies), or of one name. */
const about = ({ all }: Margins, of: string): readonly Margin[] =>
  all.filter((margin) => margin.name === of || margin.of === of || margin.of.startsWith(`${of} `) || margin.module === of || margin.module?.split('.')[0] === of);

const inks: Readonly<Record<MarginWord, Ink>> = { exceeded: 'red', tight: 'yellow', holds: 'green', unknown: 'dim' };
const words: Readonly<Record<MarginWord, string>> = { exceeded: 'exceeded', tight: 'tight', holds: 'holds', unknown: 'not assessed' };

function sides({ set }: Margins, margin: Margin): { readonly capacity?: string; readonly demand?: string } {
  const text = (name: string): string | undefined => {
    const figure = set.get(name);
    return figure?.value === undefined || name === margin.name ? undefined : showQuantity(figure.value, figure.shown, { significant: 3 });
  };
  const [capacity, demand] = [text(margin.capacity), text(margin.demand)];
  return { ...(capacity === undefined ? {} : { capacity }), ...(demand === undefined ? {} : { demand }) };
}

function countWords(terminal: Terminal, all: readonly Margin[]): string {
  const paint = painter(terminal.colour);
  const counts = countMargins(all);
  return (['exceeded', 'tight', 'holds', 'unknown'] as const).map((word) => paint(inks[word], `${counts[word]} ${words[word]}`)).join(', ');
}

function list(terminal: Terminal, found: Margins, { machine, file }: NamedMachine, chosen: readonly Margin[]): string {
  const paint = painter(terminal.colour);
  if (chosen.length === 0) return `${machine.name} has nothing to hold against a load yet: ${file} names no blades, shafts, screws or limits that can be reckoned.`;
  const caseTitle = new Map(found.cases.map(({ id, title }) => [id, title]));
  const rows = chosen.map((margin) => {
    const { capacity, demand } = sides(found, margin);
    const why = margin.value === undefined ? (margin.improve.length > 0 ? `wants ${margin.improve.join(', ')}` : (margin.reason ?? 'cannot be formed')) : `${capacity} of ${demand}${margin.loadCase === undefined ? '' : `, ${caseTitle.get(margin.loadCase)}`}`;
    return [margin.value === undefined ? '–' : showMargin(margin.value), paint(inks[margin.word], words[margin.word]), margin.title, why];
  });
  return [
    `${paint('bold', machine.name)}: ${countWords(terminal, chosen)}`,
    table([{ title: 'margin', right: true }, { title: 'state' }, { title: 'of', breaks: true }, { title: 'bears, of what it sees', breaks: true }], rows, terminal.columns),
    '',
    paragraph('Estimates for an experienced builder. From 1.25 it holds, below 1 it is exceeded, however little. A margin says nothing about a part that is worn, bent or unlocked. Name a part to see what its margin leaves out, and its working.', terminal.columns),
  ].join('\n');
}

/** Crossings of the map that are told. */
const mostMeetings = 4;

/** Of a natural frequency: at which speed of the main rotor it meets what shakes, nearest to the speed that is flown first. */
function meetings({ columns }: Terminal, found: Margins, { capacity }: Margin): readonly string[] {
  const frequency = found.set.get(capacity)?.inputs['frequency'];
  const own = frequency && 'figure' in frequency ? frequency.figure : capacity;
  const map = found.modes.some(({ figure }) => figure === own) ? frequencyMap(found) : undefined;
  const crossings = map?.crossings.filter(({ mode }) => mode.figure === own).slice(0, mostMeetings) ?? [];
  if (map === undefined || crossings.length === 0) return [];
  const rpm = (speed: number): string => showQuantity(speed, 'rpm', { significant: 4 });
  return ['', paragraph(`It answers, main rotor at (flown: ${rpm(map.flown)}):`, columns), ...crossings.map(({ order, speed, share }) => `  ${rpm(speed)}, ${showQuantity(share, '%', { significant: 3 })} of that: ${order.title}`)];
}

/** As many ways are told, the smallest moves. */
const mostTold = 4;

/** Entries that alone would make it hold. */
function wouldHold({ columns }: Terminal, found: Margins, margin: Margin): readonly string[] {
  const ways = remedies(found, margin.name).slice(0, mostTold);
  return ways.length === 0 ? [] : [paragraph(`Would hold with one of these, the rest as it is: ${ways.map((way) => `${way.entry} ${remedyWords(way)}`).join('; ')}. What the maker allows goes first; ask “change --set” what it does to other parts.`, columns)];
}

function one(terminal: Terminal, found: Margins, { file }: NamedMachine, margin: Margin): string {
  const paint = painter(terminal.colour);
  const loadCase = found.cases.find(({ id }) => id === margin.loadCase);
  const tree = working(found.set, margin.name)!;
  return [
    `${paint('bold', margin.title)}: ${margin.value === undefined ? '' : `${showMargin(margin.value)}, `}${paint(inks[margin.word], words[margin.word])}`,
    ...(margin.reason === undefined ? [] : [paragraph(margin.reason, terminal.columns)]),
    ...(loadCase === undefined ? [] : [paragraph(`Governs: ${loadCase.title}. ${loadCase.about}`, terminal.columns)]),
    ...wouldHold(terminal, found, margin),
    ...(margin.leavesOut.length === 0 ? [] : [paragraph(`Left out: ${margin.leavesOut.join(' ')}`, terminal.columns)]),
    ...(margin.improve.length === 0 ? [] : [paragraph(`${margin.value === undefined ? 'Would make it known' : 'Would make it better known'}: ${margin.improve.join(', ')}`, terminal.columns)]),
    ...meetings(terminal, found, margin),
    '',
    ...workingLines(tree, file).map((line) => branch(line, terminal.columns)),
  ].join('\n');
}
