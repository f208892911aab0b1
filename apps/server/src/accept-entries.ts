import { answersTo, bagsOf, planBuild } from '@rotorwright/build';
import { readNewEntry, type Entry, type MachineOnBoard, type NewEntry } from '@rotorwright/logbook';
import { LogStoreError } from '@rotorwright/logbook/store';
import { readMachine } from '@rotorwright/machine';
import type { Home } from './home/index.ts';
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
    refuseWrongSteps(board, fresh);
    refuseMissingPhotos(home, fresh);
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

function refuseWrongSteps(board: MachineOnBoard, entries: readonly NewEntry[]): void {
  const { machine } = readMachine(board.text, { file: board.id });
  const plan = machine && planBuild(machine);
  const bags = new Set(machine === undefined || entries.every(({ body }) => body.kind !== 'counted') ? [] : bagsOf(machine).map((bag) => bag.id));
  const unbagged: string[] = [];
  const unspun: string[] = [];
  const unknown: string[] = [];
  const changed: string[] = [];
  const unmeasured: string[] = [];
  for (const { id, body } of entries) {
    if (body.kind === 'opened' || body.kind === 'corrected' || body.kind === 'heard') continue;
    if (body.kind === 'counted') {
      if (!bags.has(body.bag)) unbagged.push(`${id}: the file of ${board.id} has no bag ${body.bag}`);
      continue;
    }
    if (body.kind === 'balanced') {
      if (body.of !== undefined && !machine?.balance.spun.has(body.of)) unspun.push(`${id}: the file of ${board.id} has no ${body.of} under balance.spun`);
      continue;
    }
    if (body.step === undefined) continue;
    const step = plan?.steps.get(body.step);
    if (plan === undefined || step === undefined) unknown.push(`${id}: there is no step ${body.step} in the plan of ${board.id}`);
    else if (body.kind !== 'noted' && !answersTo(plan, step, body.fingerprint)) changed.push(`${id}: ${body.step} has changed since it was shown`);
    else if (body.kind === 'signed' && step.measure !== undefined && body.measured === undefined) unmeasured.push(`${id}: ${body.step} is measured; its signature must say what was read or felt`);
  }
  if (unbagged.length > 0) throw new AnswerError(422, 'bag/unknown', 'Nothing was recorded: a bag is not in the file.', { details: unbagged });
  if (unspun.length > 0) throw new AnswerError(422, 'spun/unknown', 'Nothing was recorded: what was balanced is not in the file.', { details: unspun });
  if (unknown.length > 0) throw new AnswerError(422, 'step/unknown', 'Nothing was recorded: a step is not in the plan.', { details: unknown });
  if (changed.length > 0) throw new AnswerError(409, 'step/changed', 'Nothing was recorded: the machine file changed what a step asks for. Look at it again, then sign.', { details: changed });
  if (unmeasured.length > 0) throw new AnswerError(422, 'step/unmeasured', 'Nothing was recorded: a step was signed without what was measured.', { details: unmeasured });
}

function refuseMissingPhotos(home: Home, entries: readonly NewEntry[]): void {
  const missing = entries.flatMap(({ id, body }) => ('photo' in body && body.photo !== undefined && !home.photos.has(body.photo) ? [`${id}: there is no photo ${body.photo} here`] : []));
  if (missing.length > 0) throw new AnswerError(422, 'photo/unknown', 'Nothing was recorded: a photo is missing. Send it first: PUT /api/photos/ and its SHA-256.', { details: missing });
}
