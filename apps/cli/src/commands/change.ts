import type { Command } from 'commander';
import { planBuild, workOfChange, type ChangeWork } from '@rotorwright/build';
import { compareFigures, compareMargins, compareWindows, driveDirections, figures, isSetting, loadCaseTitle, margins, newFindings, showMargin, type CrossingWord, type FigureChange, type KeptWindow, type Margin, type MarginCrossing, type WindowChange } from '@rotorwright/figures';
import { applyEdits, differences, formatFinding, readMachine, type Difference, type Edit, type Machine, type Version } from '@rotorwright/machine';
import { durationWords, showQuantity } from '@rotorwright/units';
import { findFile, findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface ChangeOptions extends HomeOption {
  readonly set: readonly string[];
  readonly remove: readonly string[];
  readonly variant?: string;
  readonly json?: true;
}

const collect = (value: string, all: readonly string[]): readonly string[] => [...all, value];

export function changeCommand(program: Command, act: Act): void {
  program
    .command('change')
    .summary('say what a change would do, before it is made')
    .description('Holds a changed file against today’s: figures before and after with their cause, bands, limits and margins that are left, what to fit and to set, what must come apart, and what must be signed again. Nothing is written.\nStatus 1 when the change leaves a band, a limit or a slot that is kept today, or takes a margin below one.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('[other]', 'the changed file; or give --set, --remove, --variant')
    .option('--set <entry=value>', 'write an entry: "drive.main-mesh.driver.teeth=15", a list with its brackets; may be given more than once', collect, [])
    .option('--remove <entry>', 'take an entry out; may be given more than once', collect, [])
    .option('--variant <variant>', 'a variant of the file')
    .option(...homeOption)
    .option('--json', 'everything as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright change examples/whimbrel/machine.yaml --variant short\n  rotorwright change whimbrel --set drive.main-mesh.driver.teeth=15')
    .action(act((terminal, [machine, other], options: ChangeOptions) => change(terminal, machine, other, options)));
}

async function change(terminal: Terminal, argument: string | undefined, other: string | undefined, options: ChangeOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  const { text } = named;
  const version = changedVersion(terminal, named, other, options);
  const after = readChanged(version, named, options.set);
  const edits = differences({ text }, version);
  const [was, is] = [figures(named.machine), figures(after)];
  const moved = compareFigures(was, is, edits.map(({ path }) => path));
  const windows = compareWindows(was, is);
  const crossings = compareMargins(margins(was), margins(is));
  const planned = (machine: Machine) => ({ machine, plan: planBuild(machine, { directions: driveDirections(machine) }) });
  const work = workOfChange(planned(named.machine), planned(after));
  const found: Found = { edits, figures: moved, windows, margins: crossings, work };
  if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, ...found })}\n`);
  else await terminal.write(`${edits.length === 0 ? 'Nothing would change: the file says this already.' : setOut(terminal, found)}\n`);
  const status = sayFindings(terminal, named, newFindings(was, is));
  return windows.some(isNewlyLeft) || crossings.some(({ word }) => word === 'exceeded') ? 1 : status;
}

interface Found {
  readonly edits: readonly Difference[];
  readonly figures: readonly FigureChange[];
  readonly windows: readonly WindowChange[];
  readonly margins: readonly MarginCrossing[];
  readonly work: ChangeWork;
}

/** @throws WrongInput when the ways to say the change are mixed, none is given, or an entry cannot be written */
function changedVersion(terminal: Terminal, named: NamedMachine, other: string | undefined, options: ChangeOptions): Version {
  const edits = [...options.set.map(readEdit), ...options.remove.map((path): Edit => ({ path }))];
  const ways = [other !== undefined, edits.length > 0, options.variant !== undefined].filter(Boolean).length;
  if (ways !== 1) throw new WrongInput(`Say the change in one way: a second file, --set and --remove, or --variant; given: ${ways === 0 ? 'none' : `${ways} of them`}.`);
  if (other !== undefined) return { text: findFile(terminal, other, options).text };
  if (options.variant !== undefined) {
    const { variants, name } = named.machine;
    if (!variants.has(options.variant)) throw new WrongInput(`${name} has no variant “${options.variant}”. ${nearestTo(options.variant, [...variants.keys()])}`);
    return { text: named.text, variant: options.variant };
  }
  const edited = applyEdits(named.text, edits);
  if ('findings' in edited) throw new WrongInput(edited.findings.map((finding) => formatFinding(finding, named.file)).join('\n'));
  return edited;
}

function readEdit(given: string): Edit {
  const [, path, value] = /^([^=]+)=(.*)$/su.exec(given) ?? [];
  if (path === undefined || value === undefined || value.trim() === '') throw new WrongInput(`--set takes an entry and its value, such as drive.main-mesh.driver.teeth=15 or "controls.servos.rudder.pivot=[136 mm, 20 mm, -30 mm]"; given: ${given}`);
  const edit = { path: path.trim(), value: value.trim() };
  if (edit.value.startsWith('[') && !edit.value.endsWith(']')) throw new WrongInput(`--set ${edit.path}: the list has no end; given: ${edit.value}. Put it all in quotation marks, else the shell takes it apart at its blanks: --set "${edit.path}=[136 mm, 20 mm, -30 mm]".`);
  return edit;
}

/** @throws WrongInput with every error that today's file does not have, and what new entries may have been meant for */
function readChanged({ text, variant }: Version, named: NamedMachine, set: readonly string[]): Machine {
  const { machine, findings } = readMachine(text, variant === undefined ? {} : { variant });
  const known = new Set(named.findings.map(({ code, path }) => `${code} ${path}`));
  const wrong = findings.filter(({ severity, code, path }) => severity === 'error' && !known.has(`${code} ${path}`));
  if (machine === undefined || wrong.length > 0) throw new WrongInput(['The changed file would be wrong:', ...wrong.map((finding) => formatFinding(finding, named.file)), ...set.flatMap((given) => meantFor(named.machine, readEdit(given).path))].join('\n'));
  return machine;
}

/** Where an entry was to stand under a name that today's file does not have: the names that it has there. */
function meantFor({ places }: Machine, path: string): readonly string[] {
  const names = path.split('.');
  const above = names.slice(0, -1).map((_, at) => names.slice(0, at + 1).join('.'));
  const at = above.findIndex((entry) => !places.has(entry));
  const [missing, name] = [above[at], names[at]];
  if (missing === undefined || name === undefined) return [];
  const start = names.slice(0, at).map((each) => `${each}.`).join('');
  const known = [...places.keys()].filter((entry) => entry.startsWith(start) && !entry.slice(start.length).includes('.')).map((entry) => entry.slice(start.length));
  return [`Today’s file has no ${missing}. ${nearestTo(name, known)}`];
}

const isNewlyLeft = ({ before, after }: WindowChange): boolean => after?.kept === false && before?.kept !== false;

function setOut(terminal: Terminal, { edits, figures: moved, windows, margins: crossings, work }: Found): string {
  const paint = painter(terminal.colour);
  const part = (title: string, body: string): readonly string[] => (body === '' ? [] : [`${paint('bold', title)}\n${body}`]);
  const rows = (titles: readonly { readonly title: string; readonly right?: boolean; readonly breaks?: boolean }[], cells: readonly (readonly string[])[]): string => (cells.length === 0 ? '' : table(titles, cells, terminal.columns));
  const lines = (texts: readonly string[]): string => texts.map((text) => paragraph(text, terminal.columns, '  ')).join('\n');
  const { parts, wayIn, again, gone } = work;
  const [way] = wayIn?.ways ?? [];
  const replaced = parts.filter(({ kind }) => kind !== 'new').map(({ id }) => id);
  const opened = replaced.length > 0 ? replaced : wayIn?.goals ?? [];
  const takes = again.reduce((sum, { step }) => sum + step.takes, 0) + (way?.undoing ?? 0);
  return [
    ...part('Change', lines(edits.slice(0, 20).map(({ path, before, after }) => `${path}: ${before ?? 'nothing'} → ${after ?? 'nothing'}`)) + (edits.length > 20 ? `\nand ${edits.length - 20} more entries` : '')),
    ...part('Figures', rows([{ title: 'figure', breaks: true }, { title: 'before', right: true }, { title: 'after', right: true }, { title: 'change', right: true }], moved.filter((each) => !isSetting(each)).map((each) => [each.title, valueOf(each.before, each.shown), valueOf(each.after, each.shown), shareOf(each)]))),
    ...part('Bands, limits and slots', lines(windows.toSorted((a, b) => Number(isNewlyLeft(b)) - Number(isNewlyLeft(a))).map((each) => `${isNewlyLeft(each) ? paint('red', 'newly exceeded: ') : ''}${windowWords(each)}`))),
    ...part('Margins that cross one', rows([{ title: 'margin of', breaks: true }, { title: 'before', breaks: true }, { title: 'after', breaks: true }, { title: 'state' }], crossings.map(({ title, word, before, after }) => [title, marginWords(before), marginWords(after), word === 'exceeded' ? paint('red', crossingWords[word]) : crossingWords[word]]))),
    ...part('To fit', lines(parts.map(({ title, kind, count, teeth, code, price, spares }) => `${kind === 'gone' ? 'no longer needed' : count}: ${[title, teeth === undefined ? undefined : `${teeth} teeth`, code, price, spares === undefined || spares === 0 ? undefined : `${spares} in the drawer`].filter(Boolean).join(', ')}`))),
    ...part('To type or set anew', lines(moved.filter(isSetting).map((each) => `${each.title}: ${valueOf(each.before, each.shown)} → ${valueOf(each.after, each.shown)}${each.because.length === 0 ? '' : `; because of ${each.because.join(', ')}`}`))),
    ...part(`To take apart${way === undefined ? '' : `, ${wayIn?.proven === true ? 'the cheapest way' : 'no cheaper way was found'}`}`, lines(way?.undo.map(({ action, because }, at) => `${at + 1}. ${action} ${because}`) ?? [])),
    ...part(`To sign again, about ${durationWords(takes)} in all, curing aside`, rows([{ title: 'step', breaks: true }, { title: 'what to do', breaks: true }, { title: 'why' }], again.map(({ step, why }) => [step.id, step.action, why]))),
    ...part('Steps that fall away', lines(gone.map(({ id }) => id))),
    ...part('To make it so', lines(['Nothing is written yet. Write the change into the file, or turn it into work on the sheet Change.', ...(opened.length === 0 ? [] : [`Then enter what is opened: rotorwright reach MACHINE PART --open --by NAME --reason WHY; PART is ${opened.join(', then ')}.`, 'After that, rotorwright plan says what to sign.'])])),
  ].join('\n\n');
}

const crossingWords: Readonly<Record<CrossingWord, string>> = { exceeded: 'newly exceeded', unknown: 'no longer known', freed: 'above one again' };

const marginWords = (margin: Margin | undefined): string => (margin === undefined ? 'no such part' : margin.value === undefined ? 'not assessed' : `${showMargin(margin.value)}${margin.loadCase === undefined ? '' : `, ${loadCaseTitle(margin.loadCase)}`}`);

const valueOf = (value: number | undefined, shown: string): string => (value === undefined ? 'not known' : showQuantity(value, shown, { significant: 5 }));

const shareOf = ({ before, after }: FigureChange): string => (before === undefined || after === undefined || before === 0 ? '' : `${after < before ? '−' : '+'}${showQuantity(Math.abs((after - before) / before), '%', { significant: 3 })}`);

function windowWords({ before, after }: WindowChange): string {
  const { title, shown, window: { min, max } } = (after ?? before)!;
  const show = (value: number): string => showQuantity(value, shown, { significant: 5 });
  const value = (window: KeptWindow | undefined): string => (window === undefined ? 'no longer asked for' : window.value === undefined ? 'not known' : show(window.value));
  const bounds = min === undefined ? `at most ${show(max!)}` : max === undefined ? `at least ${show(min)}` : `${show(min)} to ${show(max)}`;
  return `${title}: ${before === undefined ? '' : `${value(before)} → `}${value(after)}; asked for ${bounds}`;
}
