import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Entry } from '@rotorwright/logbook';
import { formatFinding, readMachine, type Finding, type Machine } from '@rotorwright/machine';
import { Home, defaultHome, isMachineId } from '@rotorwright/server';
import type { Terminal } from './terminal/index.ts';
import { WrongInput, type Status } from './wrong-input.ts';

export interface HomeOption {
  readonly home?: string;
}

export const homeOption = ['--home <dir>', 'home folder; default: $ROTORWRIGHT_HOME, or .rotorwright in your own'] as const;

export interface FoundFile {
  /** The file as messages name it. */
  readonly file: string;
  readonly text: string;
  /** Absent when the text is no machine file at all. */
  readonly machine?: Machine;
  readonly findings: readonly Finding[];
  /** Id by which the home keeps it; absent for a file that lies elsewhere. */
  readonly kept?: string;
}

export interface NamedMachine extends FoundFile {
  /** What the logbook calls it. */
  readonly id: string;
  readonly machine: Machine;
}

export const homeFolder = (terminal: Terminal, { home }: HomeOption): string => (home === undefined ? defaultHome(terminal.environment) : path.resolve(terminal.folder, home));

/** Opens the home for one piece of work, and closes it whatever happens. */
export async function withHome<T>(terminal: Terminal, options: HomeOption, work: (home: Home) => T | Promise<T>): Promise<T> {
  const home = new Home(homeFolder(terminal, options));
  try {
    return await work(home);
  } finally {
    home.close();
  }
}

/**
 * The file that an argument names: one of that path where there is one, else that of a machine of the home folder.
 *
 * @throws WrongInput when there is neither
 */
export function findFile(terminal: Terminal, argument: string | undefined, options: HomeOption): FoundFile {
  const given = argument ?? '';
  const full = path.resolve(terminal.folder, given);
  const machines = path.join(homeFolder(terminal, options), 'machines');
  if (existsSync(full) && statSync(full).isFile()) return read(full, given, idInHome(full, machines));
  const kept = path.join(machines, given, 'machine.yaml');
  if (isMachineId(given) && existsSync(kept)) return read(kept, kept, given);
  throw new WrongInput(`“${given}” is neither a file nor a machine in ${machines}.`);
}

/**
 * The machine that an argument names.
 *
 * @throws WrongInput when there is none, or its file cannot be read at all
 */
export function findMachine(terminal: Terminal, argument: string | undefined, options: HomeOption): NamedMachine {
  const found = findFile(terminal, argument, options);
  const { machine, file, findings, kept } = found;
  if (machine === undefined) throw new WrongInput(findings.map((finding) => formatFinding(finding, file)).join('\n'));
  return { ...found, machine, id: kept ?? machine.id };
}

/** A file of the home belongs to the machine whose folder it lies in, whatever name it gives itself. */
function idInHome(file: string, machines: string): string | undefined {
  if (!existsSync(machines)) return undefined;
  const [id, name, ...rest] = path.relative(realpathSync(machines), realpathSync(file)).split(path.sep);
  return id !== undefined && id !== '..' && name === 'machine.yaml' && rest.length === 0 ? id : undefined;
}

function read(full: string, shown: string, kept: string | undefined): FoundFile {
  const text = readFileSync(full, 'utf8');
  return { file: shown, text, ...readMachine(text, { file: kept ?? full }), ...(kept !== undefined && { kept }) };
}

/** The machine's book, without making a home where there is none. */
export function bookOf(terminal: Terminal, id: string, options: HomeOption): Promise<readonly Entry[]> {
  if (!existsSync(path.join(homeFolder(terminal, options), 'logbook.sqlite'))) return Promise.resolve([]);
  return withHome(terminal, options, (home) => home.logbook.entries(id));
}

/** More errors of the file than these are counted rather than told: the answer is another. */
const mostTold = 3;

/**
 * Tells on standard error what is wrong, so that the answer stays clean: the errors of the file, and what was found on the way.
 *
 * @returns 1 when there is anything
 */
export function sayFindings(terminal: Terminal, { file, findings }: FoundFile, found: readonly Finding[]): Status {
  const errors = findings.filter(({ severity }) => severity === 'error');
  const told = errors.length > mostTold ? found : [...errors, ...found];
  if (errors.length > mostTold) terminal.say(`${file} has ${errors.length} errors; what they concern is left out. rotorwright check says which.`);
  for (const finding of told) terminal.say(formatFinding(finding, file));
  return errors.length + found.length > 0 ? 1 : 0;
}
