import type { Command } from 'commander';
import { carriersOf } from '@rotorwright/build';
import { driveDirections, figures, helixPush, oneWayFacing, screwFigures, threadSense, turning, working, workingLines, type DriveState, type Figure, type FigureSet } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { readConditions, withConditionOptions, type ConditionOptions } from '../condition-options.ts';
import { findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption } from '../read-option.ts';
import { branch, painter, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

const states: readonly DriveState[] = ['driven', 'clutch-open', 'autorotation'];

interface FiguresOptions extends HomeOption, ConditionOptions {
  readonly state: string;
  readonly speed?: string;
  readonly open?: string;
  readonly json?: true;
}

export function figuresCommand(program: Command, act: Act): void {
  withConditionOptions(program.command('figures'))
    .summary('compute every figure, and show how')
    .description('Computes what turns how fast and which way, and what it carries.\nStatus 1 when the file has errors; they are told on standard error.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--state <state>', `one of ${states.join(', ')}`, 'driven')
    .option('--speed <speed>', 'speed of engine or motor instead of that of the file: "14600 rpm"')
    .option('--open <figure>', 'show the working of one figure as a tree')
    .option(...homeOption)
    .option('--json', 'the figures as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright figures examples/whimbrel/machine.yaml --open "speed mast"')
    .action(act((terminal, [machine], options: FiguresOptions) => show(terminal, machine, options)));
}

async function show(terminal: Terminal, argument: string | undefined, options: FiguresOptions): Promise<Status> {
  const state = readState(options.state);
  const sourceSpeed = readQuantityOption('--speed', options.speed, 'rad/s', '14600 rpm');
  const conditions = readConditions(options);
  const named = findMachine(terminal, argument, options);
  const set = figures(named.machine, { state, ...(sourceSpeed !== undefined && { sourceSpeed }), ...conditions });
  const known = [...set.drive.states.keys()];
  if (known.length > 0 && !known.includes(state)) throw new WrongInput(`${named.machine.name} has no state ${state}; it has ${known.join(', ')}.`);
  if (options.open !== undefined) await open(terminal, set, named, options.open, options.json === true);
  else if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, state, figures: set.all, directions: directionsOf(set), findings: set.findings })}\n`);
  else await terminal.write(`${[overview(terminal, set), ...directionTables(terminal, set)].join('\n\n')}\n`);
  return sayFindings(terminal, named, set.findings.filter(({ severity }) => severity !== 'note'));
}

function readState(given: string): DriveState {
  const state = states.find((each) => each === given);
  if (state === undefined) throw new WrongInput(`--state takes one of ${states.join(', ')}; given: ${given}`);
  return state;
}

const directionsOf = ({ machine, drive, state }: FigureSet) => ({
  turning: turning(machine, drive, state),
  threads: threadSense(machine, drive).threads,
  oneWay: oneWayFacing(machine, drive),
  pushes: helixPush(machine, drive),
});

function overview(terminal: Terminal, set: FigureSet): string {
  const { machine, state } = set;
  const paint = painter(terminal.colour);
  const ofScrews = new Set(screwFigures(set).flatMap(({ torque, preload, utilisation, threadMargin }) => [torque, preload, utilisation, threadMargin]));
  const all = set.all.filter((figure) => !ofScrews.has(figure));
  const about = ({ title, exact, unit, warnings }: Figure): string =>
    `${title}${exact === undefined ? '' : unit === '-' ? `, ${exact} exactly` : `, ${exact} of the source`}${warnings.length > 0 ? '; its working has a note' : ''}`;
  const rows = all.map((figure) =>
    figure.value === undefined
      ? [figure.name, paint('dim', 'unknown'), `${figure.title}: wants ${figure.missing.join(', ')}`]
      : [figure.name, showQuantity(figure.value, figure.shown), about(figure)],
  );
  return `${paint('bold', machine.name)}, ${state}\n${table([{ title: 'figure', breaks: true }, { title: 'value', right: true }, { title: 'what it is', breaks: true }], rows, terminal.columns)}`;
}

function directionTables(terminal: Terminal, set: FigureSet): readonly string[] {
  const { turning: turns, threads, oneWay, pushes } = directionsOf(set);
  const part = (titles: readonly string[], rows: readonly (readonly string[])[]): readonly string[] =>
    rows.length === 0 ? [] : [table(titles.map((title, at) => ({ title, breaks: at === 0 || at === titles.length - 1 })), rows, terminal.columns)];
  const shown = (figure: Figure | undefined): string => (figure === undefined ? '' : figure.value === undefined ? 'unknown' : showQuantity(figure.value, figure.shown, { significant: 3 }));
  const screws = screwFigures(set).map(({ joint, torque, preload, utilisation, threadMargin }) => [
    joint.id,
    typeof joint.torque === 'number' ? showQuantity(joint.torque, 'N·m', { significant: 3 }) : `${shown(torque)}, computed`,
    shown(preload),
    shown(utilisation),
    shown(threadMargin),
  ]);
  return [
    ...part(['screw', 'torque', 'preload', 'of yield', 'thread over preload'], screws),
    ...part(['shaft', 'turns'], turns.map(({ shaft, words }) => [shaft, words])),
    ...part(['thread', 'driven', 'braking', 'starting', 'why'], threads.map(({ joint, driven, braking, starting, reason }) => [joint, driven, braking, starting, reason])),
    ...part(['one-way clutch', 'how it faces'], oneWay.map(({ coupling, words, test }) => [coupling, `${words}. ${test}`.trim()])),
    ...part(['gear', 'pushes'], pushes.map(({ coupling, shaft, words, reason }) => [`${coupling} on ${shaft}`, `${words}. ${reason}${takenBy(set, coupling, shaft)}`])),
  ];
}

/** The bearings that carry what a gear pushes. */
function takenBy({ machine, drive }: FigureSet, coupling: string, shaft: string): string {
  const bearings = carriersOf(machine, driveDirections(machine, drive), coupling, shaft);
  return bearings.length === 0 ? '' : ` Taken by ${bearings.join(', ')}.`;
}

async function open(terminal: Terminal, set: FigureSet, { machine, file }: NamedMachine, name: string, json: boolean): Promise<void> {
  const tree = working(set, name);
  if (tree === undefined) throw new WrongInput(`${machine.name} has no figure “${name}”. ${nearestTo(name, set.all.map((figure) => figure.name))}`);
  if (json) return terminal.write(`${JSON.stringify(tree)}\n`);
  return terminal.write(`${workingLines(tree, file).map((line) => branch(line, terminal.columns)).join('\n')}\n`);
}
