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
  readonly photos: readonly { readonly sha256: string; readonly bytes: Uint8Array }[];
}

/** Version 1 knew no photos; it is read as a backup without any. */
const version = 2;
const versionsRead: readonly unknown[] = [1, version];

/**
 * Everything in a home as lines of JSON: a head, the machine files, the entries of all books, the photos, and an end that counts
 * them and holds the hash of all that stands before it, so that a backup that was cut short or changed shows.
 *
 * @throws BackupError when a photo is damaged: a backup that could not be restored would be none
 */
export function makeBackup(home: Home, made: Date): { readonly lines: readonly string[]; readonly count: BackupCount } {
  const hash = createHash('sha256');
  const count = { machines: 0, entries: 0, photos: 0 };
  const lines: string[] = [];
  const add = (text: string): void => {
    hash.update(`${text}\n`);
    lines.push(text);
  };
  add(JSON.stringify({ 'rotorwright-backup': version, made: made.toISOString(), demos: home.demosCopied() }));
  for (const id of home.machines.ids()) {
    const file = home.machines.read(id);
    if (file === undefined) continue;
    count.machines += 1;
    add(JSON.stringify({ machine: id, demo: file.demo, text: file.text } satisfies MachineLine));
  }
  for (const entry of home.logbook.exportLines()) {
    count.entries += 1;
    add(`{"entry":${entry}}`);
  }
  for (const sha256 of home.photos.names()) {
    const bytes = home.photos.read(sha256);
    if (bytes === undefined) continue;
    const problem = photoProblem(sha256, bytes);
    if (problem !== undefined) throw new BackupError(`Nothing was backed up: ${home.photos.fileOf(sha256)} is damaged. ${problem} Move it out of the folder, or put a good copy there.`);
    count.photos += 1;
    add(JSON.stringify({ photo: sha256, bytes: Buffer.from(bytes).toString('base64') } satisfies PhotoLine));
  }
  lines.push(JSON.stringify({ end: count, sha256: hash.digest('hex') }));
  return { lines, count };
}

/**
 * Takes a backup into a home. What is there already, and the same, is passed over.
 *
 * @param replace machines of the home that differ are put away and replaced; without it they are a reason to refuse
 * @returns       how much was added
 * @throws BackupError  when the backup is not whole, or the home has other files under the same ids
 * @throws LogStoreError when a book here goes on differently
 */
export function restoreBackup(home: Home, text: string, { replace, now }: { readonly replace: boolean; readonly now: Date }): BackupCount {
  const { demos, machines, entries, photos } = readBackup(text);
  const different = machines.filter(({ machine, text: restored }) => home.machines.has(machine) && home.machines.read(machine)?.text !== restored);
  if (different.length > 0 && !replace) {
    throw new BackupError('Nothing was restored: the home holds other files of the same machines. With --replace they are put away under removed/ first.', different.map(({ machine }) => machine));
  }
  // Before the entries that name them: a power cut must not leave an entry without its photo.
  const pictures = photos.filter(({ sha256, bytes }) => home.photos.keep(sha256, bytes));
  const added = home.logbook.importLines(entries);
  for (const { machine } of different) home.machines.remove(machine, now);
  const made = machines.filter(({ machine, demo, text: restored }) => home.machines.create(machine, restored, { demo }));
  home.markDemosCopied(demos);
  return { machines: made.length, entries: added, photos: pictures.length };
}

function readBackup(text: string): Content {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const [head, end] = [parsed(lines[0]), parsed(lines.at(-1))];
  if (head['rotorwright-backup'] === undefined) throw new BackupError('This is no backup: its first line does not say so.');
  if (!versionsRead.includes(head['rotorwright-backup'])) throw new BackupError(`The backup is of version ${String(head['rotorwright-backup'])}; this program reads versions ${versionsRead.join(' and ')}.`);
  const body = lines.slice(0, -1);
  const sum = createHash('sha256').update(body.map((line) => `${line}\n`).join('')).digest('hex');
  if (end['sha256'] === undefined) throw new BackupError('The backup was cut short: its last line is missing.');
  if (end['sha256'] !== sum) throw new BackupError('The backup was changed after it was made, or a line of it is missing.');
  const machines: MachineLine[] = [];
  const entries: string[] = [];
  const photos: Content['photos'][number][] = [];
  for (const line of body.slice(1)) {
    const read = parsed(line);
    if (isMachineLine(read)) machines.push(read);
    else if (isPhotoLine(read)) photos.push(photoOf(read));
    else if (line.startsWith('{"entry":')) entries.push(line.slice('{"entry":'.length, -1));
    else throw new BackupError('The backup holds a line that this program does not know.');
  }
  const demos = Array.isArray(head['demos']) ? head['demos'].filter((id): id is string => typeof id === 'string' && isMachineId(id)) : [];
  return { demos, machines, entries, photos };
}

function photoOf({ photo, bytes }: PhotoLine): Content['photos'][number] {
  const read = Buffer.from(bytes, 'base64');
  const problem = photoProblem(photo, read);
  if (problem !== undefined) throw new BackupError(`The backup holds a damaged photo. ${problem}`);
  return { sha256: photo, bytes: read };
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
