import type { Command } from 'commander';
import { answersFor, planBuild, type Plan, type Step } from '@rotorwright/build';
import { cureSlowing } from '@rotorwright/calculations';
import { lookProblem, replay, type EntryBody } from '@rotorwright/logbook';
import { isProblem, isUnit, readQuantity, sameDimension, showQuantity, unit } from '@rotorwright/units';
import { bookOf, findMachine, homeOption, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import type { Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { enter } from './enter.ts';
import { stepOf } from './plan.ts';

interface SignOptions extends HomeOption {
  readonly by: string;
  readonly measured?: string;
  readonly feel?: string;
  readonly note?: string;
  readonly temperature?: string;
  readonly secondLook?: string;
  readonly json?: true;
}

type Measured = Extract<EntryBody, { kind: 'signed' }>['measured'];

export function signCommand(program: Command, act: Act): void {
  program
    .command('sign')
    .summary('put on record that a step was done')
    .description('Signs one step of the plan, or a second look at it. The entry is on the disk when the command has answered.\nStatus 1 when what was measured is outside of its window, or a second look found it bad; it is on record all the same.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('<step>', 'id of the step, as rotorwright plan lists it')
    .requiredOption('--by <name>', 'who did it')
    .option('--measured <value>', 'what was measured, with its unit: "0.02 mm"')
    .option('--feel <answer>', 'where the step asks for a feel: yes or no; binds, snug, free or loose; go or no-go')
    .option('--temperature <value>', 'of the workshop while it cures: "12 °C"; the cold slows it')
    .option('--note <text>', 'anything worth keeping')
    .option('--second-look <found>', 'good or bad: what somebody found who looked again; bad wants a --note')
    .option(...homeOption)
    .option('--json', 'the entry as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright sign whimbrel tail-case/pin-screw --by Maren\n  rotorwright sign whimbrel tail-case/pin-screw --by Oda --second-look good')
    .action(act((terminal, [machine, step], options: SignOptions) => sign(terminal, machine, step, options)));
}

async function sign(terminal: Terminal, argument: string | undefined, id: string | undefined, options: SignOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  const plan = planBuild(named.machine);
  const step = stepOf(plan, id ?? '', named);
  if (options.secondLook !== undefined) return look(terminal, named, plan, step, options.secondLook, options);
  const measured = measuredOf(step, options);
  const { fingerprint, locks, torque } = step;
  const { cure, temperature } = cureAt(step, options.temperature);
  const body: EntryBody = {
    kind: 'signed', step: step.id, fingerprint, cure,
    ...(locks !== undefined && locks.length > 0 && { locks }),
    ...(torque !== undefined && { torque }),
    ...(temperature !== undefined && { temperature }),
    ...(measured !== undefined && { measured }),
    ...(options.note !== undefined && { note: options.note }),
  };
  const entry = await enter(terminal, named.id, options.by, body, options);
  const outside = outsideOf(step, measured);
  const cures = cure > 0 ? ` It cures until ${new Date(Date.parse(entry.at) + cure * 1000).toISOString()}.` : '';
  await terminal.write(options.json ? `${JSON.stringify(entry)}\n` : `Signed ${step.id} of ${named.id} as entry ${entry.number}, by ${entry.by}.${cures}\n`);
  if (outside !== undefined) terminal.say(outside);
  return outside === undefined ? 0 : 1;
}

/**
 * Time to cure at the temperature of the workshop.
 *
 * @throws WrongInput when it is no temperature, nothing cures, or it is so cold that the compound may never cure
 */
function cureAt({ id, cure }: Step, given: string | undefined): { readonly cure: number; readonly temperature?: number } {
  if (given === undefined) return { cure };
  const read = readQuantity(given);
  const kelvin = unit('K');
  if (isProblem(read) || !isUnit(kelvin) || !sameDimension(read.dimension, kelvin.dimension)) throw new WrongInput(`--temperature: “${given}” is no temperature. Right would be "12 °C".`);
  if (cure === 0) throw new WrongInput(`--temperature: nothing cures at ${id}; sign it without.`);
  const slowing = cureSlowing(read.value);
  if (slowing === undefined) throw new WrongInput(`--temperature: below 5 °C the compound may never cure; given: ${given}. Warm the parts, then sign with that temperature.`);
  return { cure: Math.round(cure * slowing), temperature: read.value };
}

/** @throws WrongInput when the look would not count, and why */
async function look(terminal: Terminal, named: NamedMachine, plan: Plan, step: Step, found: string, options: SignOptions): Promise<Status> {
  if (found !== 'good' && found !== 'bad') throw new WrongInput(`--second-look: what was found is good or bad; given: ${found}.`);
  if (options.measured !== undefined || options.feel !== undefined) throw new WrongInput('A second look measures nothing: leave --measured and --feel out. What was seen goes into --note.');
  const state = replay(plan, await bookOf(terminal, named.id, options), terminal.now()).steps.get(step.id);
  const problem = found === 'bad' || state === undefined ? undefined : lookProblem(state, options.by, terminal.now());
  if (problem?.why === 'unsigned') throw new WrongInput(`${step.id} is ${state?.state ?? 'open'}: there is no signature to look at again.`);
  if (problem?.why === 'too-soon') throw new WrongInput(`${options.by} signed ${step.id}. Let somebody else look, or look again yourself from ${problem.from} on: a night in between shows what the evening hid.`);
  const { fingerprint } = step;
  const entry = await enter(terminal, named.id, options.by, { kind: 'looked', step: step.id, fingerprint, found, ...(options.note !== undefined && { note: options.note }) }, options);
  await terminal.write(options.json ? `${JSON.stringify(entry)}\n` : `Second look at ${step.id} of ${named.id}, found ${found}: entry ${entry.number}, by ${entry.by}.\n`);
  if (found === 'bad') terminal.say(`${step.id} is undone: set it right and sign again.`);
  return found === 'bad' ? 1 : 0;
}

/** @throws WrongInput when the step asks for what was not given, or the other way round */
function measuredOf({ id, measure }: Step, { measured, feel }: SignOptions): Measured {
  if (measure === undefined) {
    if (measured !== undefined || feel !== undefined) throw new WrongInput(`${id} asks for no measurement; sign it without --measured and --feel. A remark goes into --note.`);
    return undefined;
  }
  if (measure.ask !== undefined || measure.wanted !== undefined) {
    const answers = answersFor(measure);
    const answer = measured === undefined ? answers.find(({ word }) => word === feel) : undefined;
    if (answer === undefined) throw new WrongInput(`${id} asks: ${measure.ask ?? 'How does it move?'} Answer with --feel ${answers.map(({ word }) => word).join(' or ')}${feel === undefined ? '' : `; given: ${feel}`}.`);
    return { feel: answer.feel };
  }
  if (feel !== undefined || measured === undefined) throw new WrongInput(`${id} is measured: give --measured with a unit, such as "0.02 ${measure.shown ?? measure.unit ?? 'mm'}".`);
  return quantityOf(id, measured, measure.unit);
}

function quantityOf(id: string, given: string, wanted: string | undefined): Measured {
  if ((wanted === undefined || wanted === '-') && /^\d+(\.\d+)?$/.test(given)) return { value: Number(given), unit: '-' };
  const read = readQuantity(given);
  if (isProblem(read)) throw new WrongInput(`--measured: “${given}” is no number with a unit. Right would be "0.02 ${wanted ?? 'mm'}".`);
  const known = unit(wanted ?? read.unit);
  if (!isUnit(known) || !sameDimension(read.dimension, known.dimension)) throw new WrongInput(`--measured: ${id} is measured in ${wanted}; given: ${given}.`);
  return { value: read.value, unit: wanted ?? known.symbol };
}

/** What is wrong with a measurement, in a sentence; nothing when it is within its window. */
function outsideOf({ id, measure }: Step, measured: Measured): string | undefined {
  if (measure === undefined || measured === undefined) return undefined;
  if ('feel' in measured) {
    const answers = answersFor(measure);
    const given = answers.find(({ feel }) => feel === measured.feel);
    return given === undefined || given.wanted ? undefined : `${id} was answered with ${given.word}; wanted is ${answers.filter(({ wanted }) => wanted).map(({ word }) => word).join(' or ')}. Find out why before going on.`;
  }
  const { min = -Infinity, max = Infinity, shown = measure.unit ?? '-' } = measure;
  if (measured.value >= min && measured.value <= max) return undefined;
  const limit = measured.value < min ? `at least ${showQuantity(min, shown)}` : `at most ${showQuantity(max, shown)}`;
  return `${id} measures ${showQuantity(measured.value, shown)}; wanted is ${limit}. It is on record as measured; set it right and sign again.`;
}
