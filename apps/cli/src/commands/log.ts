import type { Command } from 'commander';
import { planBuild, type Plan } from '@rotorwright/build';
import { trialWords } from '@rotorwright/figures';
import { entriesUpTo, readiness, readinessWords, replay, verifyChain, type BuildState, type Entry, type Readiness, type StepState } from '@rotorwright/logbook';
import { showQuantity } from '@rotorwright/units';
import { bookOf, findMachine, homeOption, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { stateWords } from './state-words.ts';

interface LogOptions extends HomeOption {
  readonly step?: string;
  readonly verify?: true;
  readonly at?: string;
  readonly json?: true;
}

export function logCommand(program: Command, act: Act): void {
  program
    .command('log')
    .summary('read the logbook: who signed what, when')
    .description('Lists the entries of a machine, and what stands signed, undone or curing after them.\nStatus 1 when something is undone, or the book does not hold together.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--step <step>', 'only what concerns one step')
    .option('--verify', 'check that no entry is missing or was changed, and nothing else')
    .option('--at <time>', 'as things stood then: 2026-03-01T18:30:00Z')
    .option(...homeOption)
    .option('--json', 'entries and states as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright log whimbrel --step tail-case/pin-screw')
    .action(act((terminal, [machine], options: LogOptions) => log(terminal, machine, options)));
}

async function log(terminal: Terminal, argument: string | undefined, options: LogOptions): Promise<Status> {
  const at = momentOf(options.at, terminal.now());
  const named = findMachine(terminal, argument, options);
  const book = await bookOf(terminal, named.id, options);
  if (options.verify) return verify(terminal, named, book, options.json === true);
  const entries = entriesUpTo(book, at);
  const plan = planBuild(named.machine);
  const state = replay(plan, entries, at);
  if (options.step !== undefined && !plan.steps.has(options.step) && !book.some((entry) => concerns(entry, options.step ?? '', book))) {
    throw new WrongInput(`Neither the plan nor the book of ${named.machine.name} knows a step “${options.step}”.`);
  }
  const shown = options.step === undefined ? entries : entries.filter((entry) => concerns(entry, options.step ?? '', book));
  const told = [...state.steps].filter(([id]) => options.step === undefined || id === options.step);
  if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, at: state.now, entries: shown, states: Object.fromEntries(told), total: state.total, elsewhere: state.elsewhere, readiness: readiness(plan, state) })}\n`);
  else await terminal.write(`${setOut(terminal, named, plan, shown, told, state)}${options.step === undefined && plan.steps.size > 0 ? `\n${readinessLines(readiness(plan, state), terminal)}` : ''}\n`);
  return told.some(([, { state: each }]) => each === 'undone') ? 1 : 0;
}

function momentOf(given: string | undefined, now: Date): Date {
  if (given === undefined) return now;
  const read = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2}))?$/.test(given) ? new Date(given) : new Date(Number.NaN);
  if (Number.isNaN(read.getTime())) throw new WrongInput(`--at: “${given}” is no moment. Right would be 2026-03-01T18:30:00Z, or 2026-03-01.`);
  return read;
}

async function verify(terminal: Terminal, { id }: NamedMachine, book: readonly Entry[], json: boolean): Promise<Status> {
  const check = verifyChain(book);
  if (json) await terminal.write(`${JSON.stringify({ id, ...check })}\n`);
  else if (check.ok) await terminal.write(`The book of ${id} holds together: ${check.length} ${check.length === 1 ? 'entry' : 'entries'}, last hash ${check.hash}.\n`);
  else await terminal.write(`The book of ${id} does not hold together at entry ${check.number}: ${check.what}.\n`);
  return check.ok ? 0 : 1;
}

/** An entry about a step, or one that takes such an entry back. */
function concerns({ body }: Entry, step: string, book: readonly Entry[]): boolean {
  switch (body.kind) {
    case 'signed':
    case 'looked':
    case 'noted':
      return body.step === step;
    case 'counted':
    case 'balanced':
    case 'heard':
      return false;
    case 'opened':
      return body.things.includes(step);
    case 'corrected': {
      const earlier = book.find(({ number }) => number === body.entry);
      return earlier !== undefined && concerns(earlier, step, book);
    }
  }
}

function setOut(terminal: Terminal, { machine, id }: NamedMachine, plan: Plan, entries: readonly Entry[], states: readonly (readonly [string, StepState])[], { total, elsewhere }: BuildState): string {
  const paint = painter(terminal.colour);
  const rows = entries.map((entry) => [String(entry.number), entry.at.slice(0, 16).replace('T', ' '), entry.by, what(entry, plan)]);
  const special = states.flatMap(([step, status]) => (status.state === 'undone' || status.state === 'curing' ? [`${stateWords(status, paint)} ${step}: ${status.state === 'curing' ? `until ${status.until}` : undoneWords(status)}`] : []));
  return [
    entries.length === 0 ? `The book of ${machine.name} (${id}) has no entry of this yet.` : table([{ title: '#', right: true }, { title: 'when (UTC)' }, { title: 'who', breaks: true }, { title: 'what', breaks: true }], rows, terminal.columns),
    ...special.map((line) => paragraph(line, terminal.columns, '  ')),
    ...(elsewhere.length > 0 ? [`Of no step of the plan: ${elsewhere.length === 1 ? 'entry' : 'entries'} ${elsewhere.join(', ')}.`] : []),
    ...(states.length > 1 ? [`${total.signed} signed, ${total.curing} curing, ${total.undone} undone, ${total.open} open, of ${total.total} steps.`] : states.map(([step, status]) => `${step}: ${stateWords(status, paint)}`)),
  ].join('\n');
}

/** How many objections are named; the rest are counted. */
const mostNamed = 12;

function readinessLines(ready: Readiness, { columns }: Terminal): string {
  const named = ready.objections.slice(0, mostNamed).map(({ step, why, until }) => `${why === 'unseen' ? 'no second look' : why} ${step}${until === undefined ? '' : why === 'unseen' ? `: by somebody else, or alone from ${until}` : `: until ${until}`}`);
  const more = ready.objections.length - named.length;
  return [readinessWords(ready), ...named, ...(more > 0 ? [`and ${more} more`] : []), ...(ready.seenAlone.length === 0 ? [] : [`Seen again alone: ${ready.seenAlone.join(', ')}`])].map((line, at) => paragraph(at === 0 ? line : `  ${line}`, columns, '    ')).join('\n');
}

function undoneWords({ reason }: StepState): string {
  switch (reason?.why) {
    case 'changed':
      return `the file asks for something else since entry ${reason.entry}`;
    case 'opened':
      return `${reason.fallsWith === undefined ? 'opened' : `falls with ${reason.fallsWith}, opened`} by ${reason.by} on ${reason.at.slice(0, 10)} (entry ${reason.entry}): ${reason.reason}`;
    case 'found-bad':
      return `found bad by ${reason.by} on ${reason.at.slice(0, 10)} (entry ${reason.entry}): ${reason.reason}`;
    case 'corrected':
      return `its signature was taken back by entry ${reason.entry}: ${reason.reason}`;
    case 'failed':
      return `what entry ${reason.entry} measured is not what is wanted`;
    default:
      return 'to be done again';
  }
}

const photographed = 'with a photo';

function what({ body }: Entry, plan: Plan): string {
  switch (body.kind) {
    case 'signed': {
      const measured = body.measured === undefined ? undefined : 'feel' in body.measured ? `felt: ${body.measured.feel}` : `measured ${showQuantity(body.measured.value, plan.steps.get(body.step)?.measure?.shown ?? body.measured.unit)}`;
      const torque = body.torque === undefined || body.torque === 'snug' ? body.torque : showQuantity(body.torque, 'N·m');
      return [`signed ${body.step}`, body.locks && `locked ${body.locks.join(' and ')}`, torque, measured, body.note && `“${body.note}”`, body.photo && photographed].filter(Boolean).join('; ');
    }
    case 'looked':
      return [`looked at ${body.step} again: ${body.found}`, body.note && `“${body.note}”`, body.photo && photographed].filter(Boolean).join('; ');
    case 'opened':
      return `opened ${body.things.join(', ')}: ${body.reason}`;
    case 'corrected':
      return `took entry ${body.entry} back: ${body.reason}`;
    case 'counted':
      return `counted bag ${body.bag}: ${body.lines.length} kinds${body.lines.some(({ wanted, sound, replaced = 0 }) => sound + replaced < wanted) ? ', short' : ', complete'}`;
    case 'balanced':
      return [`balanced ${body.of ?? 'the blades'} by ${body.calculation}: ${trialWords(body)}`, body.note && `“${body.note}”`].filter(Boolean).join('; ');
    case 'heard':
      return `heard the main rotor at ${showQuantity(body.record.speed, 'rpm', { decimals: 1 })}, ${body.sensor}${body.healthy ? ': healthy, kept as a baseline' : ''}`;
    case 'noted':
      return `noted${body.step === undefined ? '' : ` at ${body.step}`}: “${body.note}”${body.photo === undefined ? '' : `; ${photographed}`}`;
  }
}
