import type { Command } from 'commander';
import { planBuild } from '@rotorwright/build';
import { controlsReport, figures, type ControlsReport, type LinkSetting, type ServoLoad, type SetUpRow, type WorstLean } from '@rotorwright/figures';
import { lastMeasured, replay, type Measured } from '@rotorwright/logbook';
import { showQuantity } from '@rotorwright/units';
import { bookOf, findMachine, homeOption, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import type { Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface ControlsOptions extends HomeOption {
  readonly json?: true;
}

export function controlsCommand(program: Command, act: Act): void {
  program
    .command('controls')
    .summary('tell link lengths, arm holes and what to enter in the flight controller')
    .description('Computes swashplate and tail controls from where the file places them.\nStatus 1 when something does not reach, leans too far, or is not known.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright controls examples/whimbrel/machine.yaml')
    .action(act((terminal, [machine], options: ControlsOptions) => answer(terminal, machine, options)));
}

async function answer(terminal: Terminal, argument: string | undefined, options: ControlsOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  const { machine, id } = named;
  const report = controlsReport(figures(machine));
  const wrong = troubles(report);
  const measured = await measuredRows(terminal, named, options);
  if (options.json) await terminal.write(`${JSON.stringify({ id, troubles: wrong, ...plain(report), measured: Object.fromEntries(measured) })}\n`);
  else await terminal.write(`${[painter(terminal.colour)('bold', `${machine.name}, controls`), ...wrong.map((each) => paragraph(each, terminal.columns)), ...tables(terminal, report, measured)].join('\n\n')}\n`);
  return wrong.length > 0 ? 1 : 0;
}

/** A row that was measured at the bench, with the unit that it is read in. */
type MeasuredRow = Measured & { readonly shown: string };

/** What the book has of rows of the set-up sheet, by the name of the row. */
async function measuredRows(terminal: Terminal, { machine, id }: NamedMachine, options: ControlsOptions): Promise<ReadonlyMap<string, MeasuredRow>> {
  const state = replay(planBuild(machine), await bookOf(terminal, id, options), terminal.now());
  return new Map([...machine.measurements.values()].flatMap((measurement): (readonly [string, MeasuredRow])[] => {
    const last = lastMeasured(state.steps.get(measurement.id));
    return last === undefined ? [] : [[measurement.quantity, { ...last, shown: measurement.shown ?? last.unit }]];
  }));
}

/** What is not as it must be, or cannot be told. */
function troubles({ missing, stuck, plate, tail, links, arms }: ControlsReport): readonly string[] {
  const steep = [...(plate?.envelope.leans ?? []), ...(tail?.leans ?? [])].filter(({ lean, limit }) => limit !== undefined && lean > limit);
  return [
    ...(missing.length > 0 ? [`Not known without ${missing.join(', ')}.`] : []),
    ...(stuck === undefined ? [] : [`Not computed: ${stuck}.`]),
    ...(plate && plate.envelope.unreached.length > 0 ? [`At ${plate.envelope.unreached.length} positions of the sticks something does not reach.`] : []),
    ...steep.map(({ link, ball, lean, limit }) => `${link} leans ${degrees(lean)} on its ${ball === 'from' ? 'first' : 'second'} ball; its ends allow ${degrees(limit!)}.`),
    ...links.flatMap(({ link, engaged, leastEngaged }) => (engaged !== undefined && leastEngaged !== undefined && engaged < leastEngaged ? [`${link.id} has ${mm(engaged)} of thread in each end; ${mm(leastEngaged)} is the least: take a longer rod.`] : [])),
    ...arms.flatMap(({ path, take, holes }) => (holes.some(({ fitted, reaches }) => fitted && !reaches) ? [`The hole fitted at ${path} does not reach all that is wanted${take === undefined ? ', and none of the others does' : `; ${mm(take)} does`}.`] : [])),
    ...(tail?.quality && (!tail.quality.low || !tail.quality.high) ? ['The tail does not reach the pitch that is wanted.'] : []),
  ];
}

const mm = (length: number): string => showQuantity(length, 'mm', { significant: 4 });
const degrees = (value: number): string => showQuantity(value, '°', { significant: 3 });
const show = (value: number | undefined, unit: string, significant = 3): string => (value === undefined ? '' : showQuantity(value, unit, { significant }));

function tables(terminal: Terminal, report: ControlsReport, measured: ReadonlyMap<string, MeasuredRow>): readonly string[] {
  const { links, arms, setUp, plate, tail } = report;
  const part = (titles: readonly string[], rows: readonly (readonly string[])[]): readonly string[] =>
    rows.length === 0 ? [] : [table(titles.map((title, at) => ({ title, breaks: at === 0 || at === titles.length - 1 })), rows, terminal.columns)];
  const leans = [...(plate?.envelope.leans.slice(0, 3) ?? []), ...(tail?.leans.slice(0, 2) ?? [])];
  return [
    ...part(['link', 'length', 'from the file', 'thread in each end'], links.map((link) => [link.link.id, mm(link.wanted), turnWords(link), engagedWords(link)])),
    ...part(['arm', 'hole', 'turns to each side', 'one step at the blade', 'verdict'], arms.flatMap(({ path, holes, take }) => holes.map(({ hole, fitted, turn, reaches, pitchPerStep }) =>
      [path.split('.')[2] ?? path, mm(hole), turn === undefined ? 'does not reach' : degrees(turn), show(pitchPerStep, '°', 2), [fitted ? 'fitted' : '', take === hole ? 'the shortest that reaches' : reaches ? '' : 'too short'].filter((word) => word !== '').join(', ')]))),
    ...part(['enter or measure', 'value', 'how'], setUp.map((row) => [row.title, valueOf(row), [measuredWords(row, measured.get(row.key)), row.words].filter((words) => words !== undefined).join('; ')])),
    ...part(['quality', 'value'], qualityRows(report)),
    ...part(['steepest', 'lean', 'allowed'], leans.map(({ link, ball, lean, limit }: WorstLean) => [`${link}, ${ball === 'from' ? 'first' : 'second'} ball`, degrees(lean), show(limit, '°')])),
    ...part(['play', 'at the blade', 'of'], [...(plate?.play.shares.slice(0, 4) ?? []), ...(tail?.play.shares.slice(0, 3) ?? [])].map(({ of, what, atBlade }) => [of, show(atBlade, '°', 2), what])),
  ];
}

function turnWords({ given, turns }: LinkSetting): string {
  if (given === undefined) return 'not in the file';
  if (turns === undefined) return mm(given);
  return turns === 0 ? `${mm(given)}, leave it` : `${mm(given)}, ${Math.abs(turns)} ${Math.abs(turns) === 1 ? 'turn' : 'turns'} ${turns > 0 ? 'longer' : 'shorter'}`;
}

function engagedWords({ engaged, leastEngaged, seen }: LinkSetting): string {
  if (engaged === undefined) return '';
  return `${mm(engaged)}${leastEngaged === undefined ? '' : `, least ${mm(leastEngaged)}`}; ${mm(seen!)} of rod seen`;
}

function measuredWords({ measured }: SetUpRow, last: MeasuredRow | undefined): string | undefined {
  if (!measured || last === undefined) return undefined;
  return `measured ${showQuantity(last.value, last.shown)} by ${last.by}${last.stands ? '' : ', which no longer stands'}`;
}

const valueOf = ({ value, shown, unit }: SetUpRow): string => (value === undefined ? '' : showQuantity(value, shown ?? unit ?? '-', { significant: 4 }));

function qualityRows({ plate, tail }: ControlsReport): readonly (readonly [string, string])[] {
  const of = plate?.quality;
  const slowest = plate?.loads?.reduce((least, load) => ((load.margin ?? Infinity) < (least.margin ?? Infinity) ? load : least));
  return [
    ...(of ? [
      ['collective, off the straight line by at most', show(of.straightness, '°')],
      ['full cyclic moves collective by at most', show(of.cyclicMovesCollective, '°')],
      ['full collective moves cyclic by at most', show(of.collectiveMovesCyclic, '°')],
      ['right against left cyclic', show(of.leftRight, '°')],
      ['fore against aft cyclic', show(of.foreAft, '°')],
    ] as const : []),
    ...(plate ? [['play at the main blades, all together', show(plate.play.sum, '°')], ['plate leans at most', show(plate.envelope.tilt, '°')]] as const : []),
    ...(plate?.leanToBoom === undefined ? [] : [['a blade tip meets the boom when the disc leans', show(plate.leanToBoom, '°')] as const]),
    ...(plate?.envelope.toDeadCentre === undefined ? [] : [['arm and rod, from in line, at least', show(plate.envelope.toDeadCentre.angle, '°')] as const]),
    ...(of ? [['one degree of a cyclic servo, at the blade, at most', show(of.pitchPerServo * degree, '°')]] as const : []),
    ...(slowest ? loadRows('a cyclic servo', slowest) : []),
    ...(tail?.quality ? [['tail pitch, all of the servo\'s travel', `${show(tail.quality.reach[0], '°')} to ${show(tail.quality.reach[1], '°')}`]] as const : []),
    ...(tail?.quality ? [['one degree of the tail servo, at the blade', show(Math.abs(tail.quality.pitchPerServo) * degree, '°')]] as const : []),
    ...(tail?.toDeadCentre === undefined ? [] : [['arm and rod of the tail, from in line, at least', show(tail.toDeadCentre.angle, '°')] as const]),
    ...(tail?.load ? loadRows('the tail servo', tail.load) : []),
    ...(tail ? [['play at the tail blades, all together', show(tail.play.sum, '°')]] as const : []),
  ];
}

const degree = Math.PI / 180;

const loadRows = (whose: string, { torque, margin, time, timeLoaded }: ServoLoad): readonly (readonly [string, string])[] => [
  [`most torque at ${whose}`, show(torque, 'N·m')],
  ['stall torque over that', show(margin, '-') || 'no torque in the file'],
  ['end to end, without load', show(time, 's') || 'no speed in the file'],
  ['end to end, against that torque', show(timeLoaded, 's')],
];

/** Without the geometry, which stands in the file. */
function plain({ plate, tail, ...rest }: ControlsReport) {
  const { plate: _plate, ...ofPlate } = plate ?? { plate: undefined };
  const { tail: _tail, ...ofTail } = tail ?? { tail: undefined };
  return { ...rest, ...(plate ? { swashplate: ofPlate } : {}), ...(tail ? { tail: ofTail } : {}) };
}
