import type { Command } from 'commander';
import { openedOn, planBuild, reach, wayBack, type BackStep, type Reach, type Way } from '@rotorwright/build';
import { driveDirections } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { durationWords } from '@rotorwright/units';
import { findMachine, homeOption, type HomeOption } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { enter } from './enter.ts';

interface ReachOptions extends HomeOption {
  readonly open?: true;
  readonly by?: string;
  readonly reason?: string;
  readonly json?: true;
}

export function reachCommand(program: Command, act: Act): void {
  program
    .command('reach')
    .summary('what must come apart to get at a part, and what must be done again')
    .description('The cheapest way in to a part, joint, stack or module, in order, with reasons; then every step of the way back.\nStatus 1 when no way leads there, or the cheapest could not be proven.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('<part>', 'id of a part, joint, stack or module; its key alone where only one has it')
    .option('--open', 'enter into the book that it was opened; wants --by and --reason')
    .option('--by <name>', 'who opened it')
    .option('--reason <text>', 'why it was opened')
    .option(...homeOption)
    .option('--json', 'the ways and the way back as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright reach examples/whimbrel/machine.yaml clutch/pinion')
    .action(act((terminal, [machine, part], options: ReachOptions) => show(terminal, machine, part, options)));
}

async function show(terminal: Terminal, argument: string | undefined, part: string | undefined, options: ReachOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  const { machine } = named;
  const goal = thingCalled(machine, part ?? '');
  const found = reach(machine, [goal]);
  const [way] = found.ways;
  const back = way === undefined ? [] : wayBack(machine, planBuild(machine, { directions: driveDirections(machine) }), way);
  if (options.open) await open(terminal, named.id, way, options);
  if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, ...found, back: back.map(({ step, fall, first }) => ({ step: step.id, fall, first })) })}\n`);
  else await terminal.write(`${setOut(terminal, machine, goal, found, back)}\n`);
  return way === undefined ? (found.lowerBound === 0 ? 0 : 1) : found.proven ? 0 : 1;
}

async function open(terminal: Terminal, id: string, way: Way | undefined, options: ReachOptions): Promise<void> {
  if (options.by === undefined || options.reason === undefined) throw new WrongInput('--open: say who opened it with --by, and why with --reason.');
  if (way === undefined) throw new WrongInput('--open: nothing has to come apart, so nothing was entered.');
  const entry = await enter(terminal, id, options.by, { kind: 'opened', things: openedOn(way), reason: options.reason }, options);
  terminal.say(`Opened as entry ${entry.number} of ${id}, by ${entry.by}. What comes apart must be done and signed again.`);
}

/** @throws WrongInput when the machine has no such thing, or several by that key */
function thingCalled(machine: Machine, given: string): string {
  const things = [...machine.parts.values(), ...machine.joints.values(), ...machine.stacks.values()];
  if (machine.modules.has(given) || things.some(({ id, instances }) => id === given || instances.includes(given))) return given;
  const byKey = things.filter(({ key }) => key === given).map(({ id }) => id);
  const [only] = byKey;
  if (only !== undefined && byKey.length === 1) return only;
  if (byKey.length > 1) throw new WrongInput(`${machine.name} has several things called “${given}”: ${byKey.join(', ')}.`);
  throw new WrongInput(`${machine.name} has no part, joint, stack or module “${given}”. ${nearestTo(given, [...machine.modules.keys(), ...things.map(({ id }) => id)])}`);
}

function setOut(terminal: Terminal, machine: Machine, goal: string, { ways, proven, lowerBound, cut }: Reach, back: readonly BackStep[]): string {
  const [way, ...others] = ways;
  if (way === undefined && cut) return `No way to ${goal} was found, but not all were looked at: ask for a part nearer the outside first.`;
  if (way === undefined) return lowerBound === 0 ? `Nothing has to come apart for ${goal}: nothing ties it.` : `No way leads to ${goal}: each thing that is in the way waits for another. rotorwright check ${machine.id} may say where.`;
  const paint = painter(terminal.colour);
  const line = (title: string, text: string) => (text === '' ? [] : [paragraph(`${title}: ${text}`, terminal.columns, '  ')]);
  const heat = way.undo.filter((each) => each.heat).map(({ id }) => id);
  const tools = [...new Set(way.undo.flatMap((each) => each.tools))];
  const total = ({ undoing, again }: Way) => durationWords(undoing + again);
  return [
    `${paint('bold', `The way in to ${goal}`)}: ${way.undo.length} to undo, about ${durationWords(way.undoing)}; ${back.length} to do again.`,
    table([{ title: '', right: true }, { title: 'what', breaks: true }, { title: 'do', breaks: true }, { title: 'because', breaks: true }], way.undo.map(({ id, action, because }, at) => [String(at + 1), id, action, because]), terminal.columns),
    ...line(paint('yellow', 'Caution'), [...new Set(way.undo.flatMap(({ caution }) => caution ?? []))].join(' ')),
    ...line('Heat', heat.join(', ')),
    ...line('Tools', tools.join(', ')),
    ...line('Locks broken', way.undo.filter(({ locks }) => locks.length > 0).map(({ id, locks }) => `${id} (${locks.map(({ grade }) => grade).join(' and ')})`).join(', ')),
    ...line('Comes out', way.out.join(', ')),
    ...line('Rides along', way.along.join(', ')),
    ...line('Both sides come off', way.bothSides.join(', ')),
    '',
    paint('bold', 'The way back'),
    table([{ title: 'step', breaks: true }, { title: 'do again', breaks: true }, { title: 'first', breaks: true }], back.map(({ step, first }) => [step.id, step.action, first.join(' ')]), terminal.columns),
    '',
    proven ? `No cheaper way exists: ${total(way)} of work in and back, measuring and curing aside.` : `This way takes ${total(way)} of work in and back; that none takes less than ${durationWords(lowerBound)} is proven, no more.`,
    ...(cut ? ['Not every other way was looked at: there may be more of them.'] : []),
    ...others.map((other) => paragraph(`Another way, ${total(other)}: ${other.undo.map(({ id }) => id).join(', ')}.`, terminal.columns, '  ')),
  ].join('\n');
}
