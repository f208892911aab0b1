import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Entry } from '@rotorwright/logbook';
import { formatFinding, readMachine, type Finding, type Machine } from '@rotorwright/machine';
import { Home, defaultHome } from '@rotorwright/server';
import type { Terminal } from './terminal/index.ts';
import { WrongInput, type Status } from './wrong-input.ts';

export interface HomeOption {
  readonly home?: string;
}

export const homeOption = ['--home <dir>', 'home folder; default: $ROTORWRIGHT_HOME, or .rotorwright in your own'] as const;

export interface NamedMachine {
  /** What the logbook calls it. */
  readonly id: string;
  /** The file as messages name it. */
  readonly file: string;
  readonly text: string;
  readonly machine: Machine;
  readonly findings: readonly Finding[];
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
 * The machine that an argument names: a file where there is one of that path, else a machine of the home folder.
 *
 * @throws WrongInput when there is neither
 */
export function findMachine(terminal: Terminal, argument: string | undefined, options: HomeOption): NamedMachine {
  const given = argument ?? '';
  const full = path.resolve(terminal.folder, given);
  const machines = path.join(homeFolder(terminal, options), 'machines');
  if (existsSync(full) && statSync(full).isFile()) return read(full, given, idInHome(full, machines));
  const kept = path.join(machines, given, 'machine.yaml');
  if (given !== '' && path.basename(given) === given && existsSync(kept)) return read(kept, kept, given);
  throw new WrongInput(`“${given}” is neither a file nor a machine in ${machines}.`);
}

/** A file of the home belongs to the machine whose folder it lies in, whatever name it gives itself. */
function idInHome(file: string, machines: string): string | undefined {
  if (!existsSync(machines)) return undefined;
  const [id, name, ...rest] = path.relative(realpathSync(machines), realpathSync(file)).split(path.sep);
  return id !== undefined && id !== '..' && name === 'machine.yaml' && rest.length === 0 ? id : undefined;
}

function read(full: string, shown: string, id: string | undefined): NamedMachine {
  const text = readFileSync(full, 'utf8');
  const { machine, findings } = readMachine(text);
  return { id: id ?? machine.id, file: shown, text, machine, findings };
}

/** The machine's book, without making a home where there is none. */
export function bookOf(terminal: Terminal, id: string, options: HomeOption): Promise<readonly Entry[]> {
  if (!existsSync(path.join(homeFolder(terminal, options), 'logbook.sqlite'))) return Promise.resolve([]);
  return withHome(terminal, options, (home) => home.logbook.entries(id));
}

/** Tells findings on standard error, so that the answer stays clean. @returns 1 when there is one */
export function sayFindings(terminal: Terminal, file: string, findings: readonly Finding[]): Status {
  for (const finding of findings) terminal.say(formatFinding(finding, file));
  return findings.length > 0 ? 1 : 0;
}
