import { evenings, firstEvening, tonight, toolsLike, type Plan, type PlannedWork, type StepStatus } from '@rotorwright/build';
import { durationWords } from '@rotorwright/units';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption, readWholeOption } from '../read-option.ts';
import { paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput } from '../wrong-input.ts';

export interface EveningsOptions {
  readonly evenings?: string;
  readonly people?: string;
  readonly from?: string;
  readonly tonight?: string;
  readonly without?: string;
  readonly json?: true;
}

interface Planned {
  readonly id: string;
  readonly plan: Plan;
  readonly states: ReadonlyMap<string, StepStatus>;
  readonly terminal: Terminal;
}

/** Longest search for a plan with fewer evenings, s. */
const LIMIT = 2;

/** The steps left, evening by evening. */
export function byEvenings({ id, plan, states, terminal }: Planned, options: EveningsOptions): string {
  const length = readTime('--evenings', options.evenings ?? '');
  const people = readWholeOption('--people', options.people ?? '1', 1, 9);
  const now = terminal.now();
  const from = firstEvening(options.from ?? '18:30', length, now);
  if (from === undefined) throw new WrongInput(`--from: given “${options.from}”; right would be a time of day, such as "18:30".`);
  const found = evenings(plan, states, { from, now: now.toISOString(), length, people, limit: LIMIT });
  if (found.tooLong.length > 0) {
    const longest = Math.max(...found.tooLong.map(({ takes }) => takes));
    throw new WrongInput(`--evenings: given “${options.evenings}”: ${found.tooLong.map(({ id: step, takes }) => `${step} takes ${durationWords(takes)}`).join(', ')}. Right would be ${durationWords(Math.ceil(longest / 60) * 60)} or more.`);
  }
  if (options.json) {
    const { tooLong: _, ...told } = found;
    return `${JSON.stringify({ id, ...told, evenings: found.evenings.map((evening) => ({ ...evening, steps: evening.steps.map(brief) })) })}\n`;
  }
  if (found.evenings.length === 0) return 'Nothing is left to do.\n';
  const parts = found.evenings.map((evening, at) => `Evening ${at + 1}, ${dayAndTime(evening.from)}, ${durationWords(evening.work)} of work\n${workTable(evening.steps, terminal)}`);
  const shortest = found.proven ? 'There is no plan with fewer' : `No plan has fewer than ${found.atLeast}; whether one has fewer than this is not known`;
  const last = [`${found.count} ${found.count === 1 ? 'evening' : 'evenings'} of ${durationWords(length)} for ${people === 1 ? 'one' : people}. ${shortest}.`, ...(found.ready === undefined ? [] : [`All has cured by ${dayAndTime(found.ready)}.`])].join(' ');
  return `${parts.join('\n\n')}\n\n${paragraph(last, terminal.columns, '')}\n`;
}

/** What can be done in the time that there is tonight. */
export function forTonight({ id, plan, states, terminal }: Planned, options: EveningsOptions): string {
  const time = readTime('--tonight', options.tonight ?? '');
  const without = missingTools(plan, options.without);
  const found = tonight(plan, states, { now: terminal.now().toISOString(), time, without });
  if (options.json) {
    const { steps, left, curing, wantTool, tooLong } = found;
    return `${JSON.stringify({ id, steps: steps.map(brief), left, without, curing: curing.map(({ step, until }) => ({ step: step.id, until })), wantTool: wantTool.map(({ step, tools }) => ({ step: step.id, tools })), tooLong: tooLong.map((step) => step.id) })}\n`;
  }
  const line = (title: string, words: readonly string[]): readonly string[] => (words.length === 0 ? [] : [paragraph(`${title}: ${words.join(', ')}`, terminal.columns, '  ')]);
  return `${[
    found.steps.length === 0 ? 'Nothing fits into this time.' : workTable(found.steps, terminal),
    ...(found.steps.length > 0 && found.left >= 60 ? [`${durationWords(found.left)} are left.`] : []),
    ...line('Cures already', found.curing.map(({ step, until }) => `${step.id} until ${dayAndTime(until)}`)),
    ...line('Waits for a tool', found.wantTool.map(({ step, tools }) => `${step.id} (${tools.join(', ')})`)),
    ...line('Takes longer', found.tooLong.map((step) => `${step.id} (${durationWords(step.takes)})`)),
  ].join('\n')}\n`;
}

const brief = ({ step, ...times }: PlannedWork): object => ({ step: step.id, action: step.action, takes: step.takes, ...times });

function workTable(steps: readonly PlannedWork[], terminal: Terminal): string {
  const rows = steps.map(({ step, starts, curesUntil }) => [timeOf(starts), step.id, step.action, curesUntil === undefined ? '' : dayAndTime(curesUntil)]);
  return table([{ title: 'at', right: true }, { title: 'step', breaks: true }, { title: 'what to do', breaks: true }, { title: 'cures until' }], rows, terminal.columns);
}

const timeOf = (iso: string): string => new Date(iso).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
const dayAndTime = (iso: string): string => `${new Date(iso).toLocaleDateString('en-GB', { weekday: 'short', day: 'numeric', month: 'short' })} ${timeOf(iso)}`;

/** `2h30`, `2 h 30 min`, `40 min`, `2.5 h`; s. */
function readTime(option: string, given: string): number {
  const both = /^(\d+)\s*h\s*(\d{1,2})\s*(?:min)?$/u.exec(given.trim());
  const time = both ? Number(both[1]) * 3600 + Number(both[2]) * 60 : readQuantityOption(option, given, 's', '2h30')!;
  if (!(time > 0 && time <= 86_400)) throw new WrongInput(`${option}: given “${given}”; right would be over 0 min and at most 24 h, such as "2h30".`);
  return time;
}

/** Tools of the plan that are meant by what was given, names parted by commas. */
function missingTools(plan: Plan, given: string | undefined): readonly string[] {
  const tools = [...new Set([...plan.steps.values()].flatMap((step) => step.tools))];
  const asked = (given ?? '').split(',').map((name) => name.trim()).filter((name) => name !== '');
  return asked.flatMap((name) => {
    const found = toolsLike(tools, name);
    if (found.length === 0) throw new WrongInput(`--without: no step needs “${name}”. ${nearestTo(name, tools)}`);
    return found;
  });
}
