import type { Command } from 'commander';
import { needs, nextSteps, planBuild, type Plan, type Step } from '@rotorwright/build';
import { driveDirections } from '@rotorwright/figures';
import { replay, type StepState } from '@rotorwright/logbook';
import { durationWords, showQuantity } from '@rotorwright/units';
import { bookOf, findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { byEvenings, forTonight, type EveningsOptions } from './plan-evenings.ts';
import { stateWords } from './state-words.ts';

interface PlanOptions extends HomeOption, EveningsOptions {
  readonly step?: string;
  readonly module?: string;
  readonly next?: true;
}

export function planCommand(program: Command, act: Act): void {
  program
    .command('plan')
    .summary('list modules and steps in their order')
    .description('Derives from the file what is to be done, in order, and what is signed already.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--next', 'only what can be done now, and what it needs on the bench')
    .option('--module <module>', 'only one module')
    .option('--step <step>', 'one step in full; the id of a part names the step that handles it')
    .option('--evenings <length>', 'all that is left, in as few evenings as may be')
    .option('--people <number>', 'evenings: how many work side by side', '1')
    .option('--from <time>', 'evenings: when one begins', '18:30')
    .option('--tonight <time>', 'a choice of steps that fit into the time')
    .option('--without <tools>', 'tonight: tools that are not at hand, parted by commas')
    .option(...homeOption)
    .option('--json', 'the plan as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright plan examples/whimbrel/machine.yaml --next\n  rotorwright plan whimbrel --evenings 2h30\n  rotorwright plan whimbrel --tonight "40 min" --without "heat gun"')
    .action(act((terminal, [machine], options: PlanOptions) => show(terminal, machine, options)));
}

async function show(terminal: Terminal, argument: string | undefined, options: PlanOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  const plan = planBuild(named.machine, { directions: driveDirections(named.machine) });
  const states = replay(plan, await bookOf(terminal, named.id, options), terminal.now()).steps;
  const found: Shown = { named, plan, states, terminal };
  if (options.step !== undefined) await terminal.write(stepInFull(found, options.step, options.json === true));
  else if (options.evenings !== undefined) await terminal.write(byEvenings({ id: named.id, plan, states, terminal }, options));
  else if (options.tonight !== undefined) await terminal.write(forTonight({ id: named.id, plan, states, terminal }, options));
  else if (options.next) await terminal.write(whatIsNext(found, options.json === true));
  else await terminal.write(allSteps(found, options.module, options.json === true));
  return sayFindings(terminal, named, plan.findings.filter(({ severity }) => severity === 'error'));
}

interface Shown {
  readonly named: NamedMachine;
  readonly plan: Plan;
  readonly states: ReadonlyMap<string, StepState>;
  readonly terminal: Terminal;
}

function allSteps({ named, plan, states, terminal }: Shown, only: string | undefined, json: boolean): string {
  const modules = only === undefined ? plan.modules : plan.modules.filter(({ id }) => id === only);
  if (only !== undefined && modules.length === 0) throw new WrongInput(`${named.machine.name} has no module “${only}” to build. ${nearestTo(only, plan.modules.map(({ id }) => id))}`);
  if (json) {
    const withStates = modules.map((module) => ({ ...module, steps: module.steps.map((step) => ({ ...step, ...states.get(step.id) })) }));
    return `${JSON.stringify({ id: named.id, modules: withStates, findings: plan.findings })}\n`;
  }
  if (modules.length === 0) return `${named.machine.name} has no modules to build yet. Describe one under modules: in ${named.file}.\n`;
  const paint = painter(terminal.colour);
  const parts = modules.map((module) => {
    const rows = module.steps.map((step) => [step.id, stateWords(states.get(step.id), paint), step.action, durationWords(step.takes)]);
    return `${paint('bold', module.title)}${module.after.length > 0 ? `, after ${module.after.join(', ')}` : ''}\n${table([{ title: 'step', breaks: true }, { title: 'state' }, { title: 'what to do', breaks: true }, { title: 'takes', right: true }], rows, terminal.columns)}`;
  });
  const steps = modules.flatMap((module) => module.steps);
  const signed = steps.filter(({ id }) => ['signed', 'curing'].includes(states.get(id)?.state ?? 'open')).length;
  return `${parts.join('\n\n')}\n\n${signed} of ${steps.length} steps signed. About ${durationWords(needs(steps).takes)} of work in all, curing aside.\n`;
}

function whatIsNext({ named, plan, states, terminal }: Shown, json: boolean): string {
  const { ready, waiting, curing } = nextSteps(plan, states);
  const wanted = needs(ready);
  if (json) return `${JSON.stringify({ id: named.id, ready, waiting, curing, needs: wanted })}\n`;
  const rows = ready.map((step) => [step.id, step.action, durationWords(step.takes)]);
  const line = (title: string, names: readonly string[]): readonly string[] => (names.length === 0 ? [] : [paragraph(`${title}: ${names.join(', ')}`, terminal.columns, '  ')]);
  return `${[
    ready.length === 0 ? 'Nothing can be done now.' : table([{ title: 'step', breaks: true }, { title: 'what to do', breaks: true }, { title: 'takes', right: true }], rows, terminal.columns),
    ...line('Tools', wanted.tools.map(({ name }) => name)),
    ...line('Consumables', wanted.consumables.map(({ name }) => name)),
    ...curing.map(({ step, until }) => `Cures until ${until}: ${step.id}`),
    `${ready.length} steps can be done now, ${waiting.length} must wait.`,
  ].join('\n')}\n`;
}

function stepInFull({ named, plan, states, terminal }: Shown, id: string, json: boolean): string {
  const step = stepOf(plan, handlerOf(named, plan, id), named);
  const status = states.get(id);
  if (json) return `${JSON.stringify({ ...step, ...status })}\n`;
  const paint = painter(terminal.colour);
  const line = (title: string, text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : [paragraph(`${title}: ${text}`, terminal.columns, '  ')]);
  const { torque, measure } = step;
  const window = measure && [measure.min, measure.max].map((each) => (each === undefined ? undefined : showQuantity(each, measure.shown ?? measure.unit ?? '-')));
  return `${[
    `${paint('bold', step.title)} (${step.id}), ${stateWords(status, paint)}`,
    ...step.actions.map((action, at) => paragraph(`${at + 1}. ${action}`, terminal.columns, '   ')),
    ...line(paint('yellow', 'Caution'), step.caution),
    ...(step.facings ?? []).flatMap(({ words, why, id: part }) => line(paint('bold', `Which way round, ${part}`), `${words}. ${why}`)),
    ...(step.bearings ?? []).flatMap(({ id: part, words }) => line(`Bearing, ${part}`, words)),
    ...line('Parts', step.parts.map(({ title, count }) => `${count} × ${title}`).join(', ')),
    ...line('Tools', step.tools.join(', ')),
    ...line('Consumables', step.consumables.join(', ')),
    ...line('Thread', step.thread),
    ...line('Lock', step.locks?.join(' and ')),
    ...line('Torque', torque === undefined || torque === 'snug' ? torque : showQuantity(torque, 'N·m')),
    ...line('Cures', step.cure > 0 ? durationWords(step.cure) : undefined),
    ...line('Wanted', measure?.ask ?? measure?.wanted?.join(' or ') ?? window?.map((each) => each ?? 'any').join(' to ')),
    ...line('After', step.after.join(', ')),
    ...line('Why', step.why),
    ...line('Tip', step.tip),
  ].join('\n')}\n`;
}

/** The step that an id means: itself, or for a part of a stack the step that puts it in, with its facing and the reason. */
function handlerOf({ machine }: NamedMachine, plan: Plan, id: string): string {
  if (plan.steps.has(id)) return id;
  const stack = [...machine.stacks.values()].find(({ order }) => order.some((item) => 'part' in item && (item.part === id || machine.thingOf.get(item.part) === id)));
  return stack?.id ?? [...plan.steps.values()].find(({ parts }) => parts.some((part) => part.id === id))?.id ?? id;
}

/** @throws WrongInput when the plan has no such step */
export function stepOf(plan: Plan, id: string, { machine }: Pick<NamedMachine, 'machine'>): Step {
  const step = plan.steps.get(id);
  if (step === undefined) throw new WrongInput(`The plan of ${machine.name} has no step “${id}”. ${nearestTo(id, [...plan.steps.keys()])}`);
  return step;
}
