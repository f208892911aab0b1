import { readNewEntry, type Entry, type MachineOnBoard, type NewEntry } from '@rotorwright/logbook';
import { LogStoreError } from '@rotorwright/logbook/store';
import type { Home } from './home/index.ts';
import { refuseWrong } from './entry-problems.ts';
import { AnswerError } from './http/answer-error.ts';

const mostAtOnce = 200;

/**
 * Puts entries into the book of a machine: all of them, or none when one of them cannot be taken.
 * An entry that is in the book already is answered with what is there, even when its step has changed since:
 * a bench whose acknowledgement got lost sends it again.
 *
 * @param board the machine as it is now
 * @param sent  the `entries` of the request, of any shape
 * @returns     the entries as they stand in the book, in the order sent; on the disk
 * @throws AnswerError
 */
export function acceptEntries(home: Home, board: MachineOnBoard, sent: unknown): readonly Entry[] {
  const entries = readEntries(sent, board.id);
  const known = new Set(board.entries.map((entry) => entry.id));
  const fresh = entries.filter((entry) => !known.has(entry.id));
  if (fresh.length > 0) {
    refuseWrong(board, fresh, (photo) => home.photos.has(photo));
  }
  try {
    return entries.map((entry) => home.logbook.append(entry));
  } catch (error) {
    if (error instanceof LogStoreError && error.problem === 'conflict') throw new AnswerError(409, 'entry/conflict', error.message);
    if (error instanceof LogStoreError && error.problem === 'refused') throw new AnswerError(422, 'entry/refused', error.message, { details: error.details });
    throw error;
  }
}

function readEntries(sent: unknown, machine: string): readonly NewEntry[] {
  if (!Array.isArray(sent) || sent.length === 0 || sent.length > mostAtOnce) throw new AnswerError(400, 'body/shape', `The body must be {"entries": […]} with 1 to ${mostAtOnce} entries.`);
  const entries: NewEntry[] = [];
  const problems: string[] = [];
  for (const [at, json] of sent.entries()) {
    const read = readNewEntry(json);
    if (!read.ok) problems.push(...read.problems.map((problem) => `entries[${at}]: ${problem}`));
    else if (read.entry.machine !== machine) problems.push(`entries[${at}]: machine must be ${machine}, got ${read.entry.machine}`);
    else entries.push(read.entry);
  }
  if (problems.length > 0) throw new AnswerError(422, 'entry/malformed', 'Nothing was recorded: an entry is not well formed.', { details: problems.slice(0, 50) });
  return entries;
}
