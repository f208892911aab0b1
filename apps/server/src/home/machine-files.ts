import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { syncFolder, writeDurably } from './durable-file.ts';

/** Ids of machines are names of folders: letters, digits, - and _, so that no id leads out of the home. */
const machineId = /^[\p{L}\p{N}][\p{L}\p{N}_-]{0,63}$/u;
export const isMachineId = (text: string): boolean => machineId.test(text);

export interface MachineFile {
  readonly id: string;
  readonly text: string;
  /** SHA-256 of the file, hex. */
  readonly revision: string;
  /** Put there as an example, not by the builder. */
  readonly demo: boolean;
}

export const revisionOf = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The machine files of one home folder: `machines/<id>/machine.yaml`. They are plain text, and may be edited by hand at any time. */
export class MachineFiles {
  readonly #home: string;

  constructor(home: string) {
    this.#home = home;
    mkdirSync(path.join(home, 'machines'), { recursive: true });
  }

  #folder(id: string): string {
    if (!isMachineId(id)) throw new RangeError(`MachineFiles: not the id of a machine: ${id}`);
    return path.join(this.#home, 'machines', id);
  }

  fileOf(id: string): string {
    return path.join(this.#folder(id), 'machine.yaml');
  }

  ids(): readonly string[] {
    return readdirSync(path.join(this.#home, 'machines')).filter((id) => isMachineId(id) && existsSync(this.fileOf(id))).sort();
  }

  has(id: string): boolean {
    return isMachineId(id) && existsSync(this.fileOf(id));
  }

  read(id: string): MachineFile | undefined {
    if (!isMachineId(id)) return undefined;
    try {
      const bytes = readFileSync(this.fileOf(id));
      return { id, text: bytes.toString('utf8'), revision: revisionOf(bytes), demo: existsSync(this.#demoMark(id)) };
    } catch (error) {
      if (isMissing(error)) return undefined;
      throw error;
    }
  }

  /** Changes whenever the file may have changed; undefined when there is none. */
  stamp(id: string): string | undefined {
    const stat = statSync(this.fileOf(id), { throwIfNoEntry: false });
    return stat && `${stat.ino} ${stat.size} ${stat.mtimeMs}`;
  }

  /** @returns false when a machine of that id is there already */
  create(id: string, text: string, { demo = false } = {}): boolean {
    const folder = this.#folder(id);
    if (existsSync(this.fileOf(id))) return false;
    mkdirSync(folder, { recursive: true });
    if (demo) writeDurably(this.#demoMark(id), 'Invented, as an example.\n');
    else rmSync(this.#demoMark(id), { force: true });
    writeDurably(this.fileOf(id), text);
    syncFolder(path.dirname(folder));
    return true;
  }

  replace(id: string, text: string): void {
    writeDurably(this.fileOf(id), text);
  }

  /** Moves the machine's folder to `removed/`, where it can be fetched back by hand. @returns its new place */
  remove(id: string, when: Date): string {
    const removed = path.join(this.#home, 'removed');
    mkdirSync(removed, { recursive: true });
    const stamp = when.toISOString().replaceAll(':', '-');
    let target = path.join(removed, `${id} ${stamp}`);
    for (let again = 2; existsSync(target); again += 1) target = path.join(removed, `${id} ${stamp} ${again}`);
    renameSync(this.#folder(id), target);
    syncFolder(removed);
    syncFolder(path.join(this.#home, 'machines'));
    return target;
  }

  #demoMark(id: string): string {
    return path.join(this.#folder(id), '.demo');
  }
}

const isMissing = (error: unknown): boolean => error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR');
