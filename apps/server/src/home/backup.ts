import { createHash } from 'node:crypto';
import { isMachineId } from './machine-files.ts';
import type { Home } from './home.ts';
import { isPhotoName, photoProblem } from './photos.ts';

/** A backup that cannot be taken back as it is. The message is a sentence for the user; nothing was changed. */
export class BackupError extends Error {
  override readonly name = 'BackupError';
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(message);
    this.details = details;
  }
}

export interface BackupCount {
  readonly machines: number;
  readonly entries: number;
  readonly photos: number;
}

interface MachineLine {
  readonly machine: string;
  readonly demo: boolean;
  readonly text: string;
}

interface PhotoLine {
  readonly photo: string;
  /** Base 64, RFC 4648. */
  readonly bytes: string;
}

interface Content {
  readonly demos: readonly string[];
  readonly machines: readonly MachineLine[];
  readonly entries: readonly string[];
}

/** Version 1 knew no photos; it is read as a backup without any. */
const version = 2;
const versionsRead: readonly unknown[] = [1, version];

/**
 * Everything in a home as lines of JSON, one at a time, each with its line end: a head, the machine files, the entries of all
 * books, the photos, and an end that counts them and holds the hash of all that stands before it, so that a backup that was cut
 * short or changed shows.
 *
 * @returns what the lines hold, when all are made
 * @throws BackupError before the first line when a photo is damaged: a backup that could not be restored would be none
 */
export function* backupLines(home: Home, made: Date): Generator<string, BackupCount> {
  const names = home.photos.names();
  for (const sha256 of names) checkPhoto(home, sha256);
  const hash = createHash('sha256');
  const count = { machines: 0, entries: 0, photos: 0 };
  const line = (text: string): string => {
    hash.update(`${text}\n`);
    return `${text}\n`;
  };
  yield line(JSON.stringify({ 'rotorwright-backup': version, made: made.toISOString(), demos: home.demosCopied() }));
  for (const id of home.machines.ids()) {
    const file = home.machines.read(id);
    if (file === undefined) continue;
    count.machines += 1;
    yield line(JSON.stringify({ machine: id, demo: file.demo, text: file.text } satisfies MachineLine));
  }
  for (const entry of home.logbook.exportLines()) {
    count.entries += 1;
    yield line(`{"entry":${entry}}`);
  }
  for (const sha256 of names) {
    const bytes = checkPhoto(home, sha256);
    if (bytes === undefined) continue;
    count.photos += 1;
    yield line(JSON.stringify({ photo: sha256, bytes: Buffer.from(bytes).toString('base64') } satisfies PhotoLine));
  }
  yield `${JSON.stringify({ end: count, sha256: hash.digest('hex') })}\n`;
  return count;
}

function checkPhoto(home: Home, sha256: string): Uint8Array | undefined {
  const bytes = home.photos.read(sha256);
  const problem = bytes && photoProblem(sha256, bytes);
  if (problem !== undefined) throw new BackupError(`Nothing was backed up: ${home.photos.fileOf(sha256)} is damaged. ${problem} Move it out of the folder, or put a good copy there.`);
  return bytes;
}

/**
 * Takes a backup into a home. What is there already, and the same, is passed over. The lines are gone through twice: once to see
 * that the backup is whole, then to take its photos, one at a time.
 *
 * @param lines   the lines of the backup, from the first, each time it is called
 * @param replace machines of the home that differ are put away and replaced; without it they are a reason to refuse
 * @returns       how much was added
 * @throws BackupError  when the backup is not whole, or the home has other files under the same ids
 * @throws LogStoreError when a book here goes on differently
 */
export function restoreBackup(home: Home, lines: () => Iterable<string>, { replace, now }: { readonly replace: boolean; readonly now: Date }): BackupCount {
  const { demos, machines, entries } = readBackup(lines());
  const different = machines.filter(({ machine, text: restored }) => home.machines.has(machine) && home.machines.read(machine)?.text !== restored);
  if (different.length > 0 && !replace) {
    throw new BackupError('Nothing was restored: the home holds other files of the same machines. With --replace they are put away under removed/ first.', different.map(({ machine }) => machine));
  }
  // Before the entries that name them: a power cut must not leave an entry without its photo.
  let pictures = 0;
  for (const line of lines()) {
    const read = line.startsWith('{"photo":') ? parsed(line) : {};
    if (isPhotoLine(read) && home.photos.keep(read.photo, photoOf(read))) pictures += 1;
  }
  const added = home.logbook.importLines(entries);
  for (const { machine } of different) home.machines.remove(machine, now);
  const made = machines.filter(({ machine, demo, text: restored }) => home.machines.create(machine, restored, { demo }));
  home.markDemosCopied(demos);
  return { machines: made.length, entries: added, photos: pictures };
}

/** All but the photos, which are looked at and let go. */
function readBackup(lines: Iterable<string>): Content {
  const hash = createHash('sha256');
  const machines: MachineLine[] = [];
  const entries: string[] = [];
  let head: Readonly<Record<string, unknown>> | undefined;
  // The last line is known as such only when none follows.
  let held: string | undefined;
  for (const line of lines) {
    if (line.trim() === '') continue;
    if (held !== undefined) {
      hash.update(`${held}\n`);
      if (head === undefined) head = headOf(held);
      else take(held, machines, entries);
    }
    held = line;
  }
  const end = parsed(held);
  head ??= headOf(held);
  if (end['sha256'] === undefined) throw new BackupError('The backup was cut short: its last line is missing.');
  if (end['sha256'] !== hash.digest('hex')) throw new BackupError('The backup was changed after it was made, or a line of it is missing.');
  const demos = Array.isArray(head['demos']) ? head['demos'].filter((id): id is string => typeof id === 'string' && isMachineId(id)) : [];
  return { demos, machines, entries };
}

function headOf(line: string | undefined): Readonly<Record<string, unknown>> {
  const head = parsed(line);
  if (head['rotorwright-backup'] === undefined) throw new BackupError('This is no backup: its first line does not say so.');
  if (!versionsRead.includes(head['rotorwright-backup'])) throw new BackupError(`The backup is of version ${String(head['rotorwright-backup'])}; this program reads versions ${versionsRead.join(' and ')}.`);
  return head;
}

function take(line: string, machines: MachineLine[], entries: string[]): void {
  const read = parsed(line);
  if (isMachineLine(read)) machines.push(read);
  else if (isPhotoLine(read)) photoOf(read);
  else if (line.startsWith('{"entry":')) entries.push(line.slice('{"entry":'.length, -1));
  else throw new BackupError('The backup holds a line that this program does not know.');
}

function photoOf({ photo, bytes }: PhotoLine): Uint8Array {
  const read = Buffer.from(bytes, 'base64');
  const problem = photoProblem(photo, read);
  if (problem !== undefined) throw new BackupError(`The backup holds a damaged photo. ${problem}`);
  return read;
}

function isPhotoLine(read: Readonly<Record<string, unknown>>): read is Readonly<Record<string, unknown>> & PhotoLine {
  return typeof read['photo'] === 'string' && isPhotoName(read['photo']) && typeof read['bytes'] === 'string';
}

function isMachineLine(read: Readonly<Record<string, unknown>>): read is Readonly<Record<string, unknown>> & MachineLine {
  return typeof read['machine'] === 'string' && isMachineId(read['machine']) && typeof read['text'] === 'string' && typeof read['demo'] === 'boolean';
}

function parsed(line: string | undefined): Readonly<Record<string, unknown>> {
  try {
    const read: unknown = JSON.parse(line ?? '');
    return typeof read === 'object' && read !== null ? (read as Readonly<Record<string, unknown>>) : {};
  } catch {
    return {};
  }
}
