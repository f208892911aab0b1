import { randomUUID } from 'node:crypto';
import { readNewEntry, type Entry, type EntryBody, type NewEntry } from '@rotorwright/logbook';
import { withHome, type HomeOption } from '../machine-argument.ts';
import type { Terminal } from '../terminal/index.ts';
import { WrongInput } from '../wrong-input.ts';

/**
 * Writes an entry into the book of a machine.
 *
 * @throws WrongInput when it is not well formed; nothing is written then
 */
export async function enter(terminal: Terminal, machine: string, by: string, body: EntryBody, options: HomeOption): Promise<Entry> {
  const written: NewEntry = { id: randomUUID(), machine, at: terminal.now().toISOString(), by, body };
  const read = readNewEntry(written);
  if (!read.ok) throw new WrongInput(`Nothing was entered: ${read.problems.join('; ')}.`);
  return withHome(terminal, options, (home) => home.logbook.append(read.entry));
}
