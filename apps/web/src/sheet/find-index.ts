import { shimTask, type Step } from '@rotorwright/build';
import { figures, loadCaseTitle, margins, showMargin, type Margin } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import type { MachineView } from '../data/index.ts';
import { questions, type Which } from './questions.ts';
import { figureAt, keptAt, machineAt, reachAt, sheets, stepAt } from './sheets.ts';

export interface Found {
  readonly kind: 'question' | 'sheet' | 'machine' | 'figure' | 'margin' | 'step' | 'hazard' | 'part' | 'joint';
  readonly title: string;
  /** Where it belongs, or its id. */
  readonly of: string;
  /** An address; of a question that wants to know something first, what there is to choose from. */
  readonly to: string | { readonly which: Which };
  /** What else it may be found by. */
  readonly words?: string;
}

/** All that Find reaches: questions, machines and sheets, and of the machine on the board its figures, steps, hazards, parts and joints, each once: the way in leads on to what keeps it. */
export function findIndex(machines: readonly MachineView[], onBoard: MachineView | undefined): readonly Found[] {
  const found: Found[] = machines.map((view) => ({ kind: 'machine', title: view.title, of: view.id, to: machineAt(view.id, view.machine ? 'drive' : 'file') }));
  if (!onBoard) return [...found, { kind: 'sheet', title: 'Worksheet', of: 'any calculation alone', to: '/worksheet' }];
  found.push(...sheets.map(({ key, number, title }): Found => ({ kind: 'sheet', title, of: `sheet ${number}`, to: machineAt(onBoard.id, key) })));
  const { machine, plan, id } = onBoard;
  if (!machine) return found;
  for (const { title, at, words } of questions) {
    if (typeof at === 'string') found.push({ kind: 'question', title, of: 'asks for what', to: { which: at }, words });
    else found.push({ kind: 'question', title, of: sheets.find(({ key }) => key === at[0])!.title, to: machineAt(id, ...at), words });
  }
  for (const figure of figures(machine).all) found.push({ kind: 'figure', title: figure.title, of: figure.name, to: figureAt(id, figure.name) });
  for (const step of plan?.steps.values() ?? []) found.push({ kind: 'step', title: step.title, of: step.id, to: stepAt(id, step.id), words: wordsOf(step) });
  for (const hazard of machine.hazards.values()) found.push({ kind: 'hazard', title: hazard.title, of: hazard.id, to: machineAt(id, 'holds', `?hazard=${encodeURIComponent(hazard.id)}`) });
  return [...found, ...things(machine, (thing) => reachAt(id, thing))];
}

/** What a question about one thing can be asked of. */
export function choices({ id, machine, plan, state }: MachineView, which: Which): readonly Found[] {
  if (!machine || !plan) return [];
  const steps = (among: (step: Step) => boolean, to: (step: string) => string): readonly Found[] =>
    [...plan.steps.values()].filter(among).map((step): Found => ({ kind: 'step', title: step.title, of: step.id, to: to(step.id), words: wordsOf(step) }));
  const borne = (among: (margin: Margin) => boolean): readonly Found[] => margins(figures(machine)).all.filter(among).map((margin) => ({ kind: 'margin', title: margin.title, of: inShort(margin), to: machineAt(id, 'margins', `?${new URLSearchParams({ margin: margin.name }).toString()}`), words: margin.of }));
  const inPlan = (step: string): string => machineAt(id, 'build', `?${new URLSearchParams({ step }).toString()}#steps`);
  switch (which) {
    case 'faced': return steps(({ facings }) => facings !== undefined && facings.length > 0, inPlan);
    case 'shimmed': return steps((step) => !('missing' in shimTask(machine, step.id)), (step) => stepAt(id, step));
    case 'tightened': return steps(({ fastener, torque }) => fastener !== undefined || torque !== undefined, inPlan);
    case 'signed': return steps((step) => (state?.steps.get(step.id)?.history.length ?? 0) > 0, inPlan);
    case 'kept': return things(machine, (thing) => keptAt(id, thing));
    case 'reached': return things(machine, (thing) => reachAt(id, thing));
    case 'pulled': return borne(({ demand }) => /^(?:bolt|blade)-pull /u.test(demand));
    case 'lasting': return borne(({ name }) => name.startsWith('margin bearing-life '));
  }
}

/** "5.61, overspeed" */
const inShort = ({ value, loadCase }: Margin): string => `${value === undefined ? 'not assessed' : showMargin(value)}${loadCase === undefined ? '' : `, ${loadCaseTitle(loadCase)}`}`;

const things = (machine: Machine, to: (thing: string) => string): readonly Found[] =>
  ([['part', machine.parts], ['joint', machine.joints]] as const).flatMap(([kind, all]) => [...all.values()].map(({ id, title }) => ({ kind, title, of: id, to: to(id) })));

/** What is done in a step and with what. */
const wordsOf = ({ actions, facings = [], parts, tools, consumables, thread = '' }: Step): string =>
  [...actions, ...facings.map(({ words }) => words), ...parts.map(({ title }) => title), ...tools, ...consumables, thread].join(' ');

const mostShown = 60;

/** Words that tell nothing of what is asked. */
const fillers = new Set(['a', 'an', 'the', 'my', 'this', 'that']);

const wordsIn = (text: string): readonly string[] => text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');

/**
 * Best first: every word must occur; a question that holds two or more of them in its title, a title that begins with the words, one
 * that holds them, a question and the thing it is asked of, what is found by other words.
 *
 * @param choicesOf  what a question can be asked of
 */
export function search(index: readonly Found[], words: string, choicesOf: (which: Which) => readonly Found[] = () => []): readonly Found[] {
  const asked = words.toLowerCase().split(/\s+/).filter((word) => word !== '');
  if (asked.length === 0) return unasked(index);
  const rank = (found: Found): number => {
    const title = found.title.toLowerCase();
    const named = `${title} ${found.of.toLowerCase()} ${found.kind}`;
    const all = `${named} ${found.words?.toLowerCase() ?? ''}`;
    if (!asked.every((word) => all.includes(word))) return -1;
    const titled = asked.every((word) => title.startsWith(word) || title.includes(` ${word}`));
    return (title.startsWith(asked[0]!) ? 8 : 0) + (titled ? 4 : 0) + (titled && found.kind === 'question' ? (asked.length > 1 ? 12 : 4) : 0) + (asked.every((word) => named.includes(word)) ? 2 : 0) + (found.kind === 'sheet' || found.kind === 'figure' ? 1 : 0);
  };
  const ranked = index.map((found) => ({ found, rank: rank(found) })).filter((each) => each.rank >= 0);
  const ofThings = askedOfThings(index, asked, choicesOf).map((found) => ({ found, rank: 3.5 }));
  return [...ranked, ...ofThings].toSorted((a, b) => b.rank - a.rank).slice(0, mostShown).map(({ found }) => found);
}

/** A question and the thing it is asked of in one line: "pinion out", "what holds the cross pin". The question that knows most of the words is meant. */
function askedOfThings(index: readonly Found[], asked: readonly string[], choicesOf: (which: Which) => readonly Found[]): readonly Found[] {
  const telling = asked.flatMap(wordsIn).filter((word) => !fillers.has(word));
  const meant = index
    .flatMap((found) => {
      if (typeof found.to === 'string') return [];
      const known = new Set(wordsIn(`${found.title} ${found.words ?? ''}`));
      return [{ found, which: found.to.which, rest: telling.filter((word) => !known.has(word)) }];
    })
    .toSorted((a, b) => a.rest.length - b.rest.length)[0];
  if (!meant || meant.rest.length === 0 || meant.rest.length === telling.length) return [];
  const things = search(choicesOf(meant.which), meant.rest.join(' '));
  if (things.length > 0) return things.map(({ title, of, to }): Found => ({ kind: 'question', title, of: `${of} · ${meant.found.title}`, to }));
  return telling.length - meant.rest.length > 1 ? [meant.found] : [];
}

/** Questions first: whoever opens Find without a word in mind has one of them. What is chosen from stands whole. */
function unasked(index: readonly Found[]): readonly Found[] {
  const before = ['question', 'sheet', 'machine'] as const;
  const first = before.flatMap((kind) => index.filter((found) => found.kind === kind));
  return first.length > 0 ? first : index;
}
