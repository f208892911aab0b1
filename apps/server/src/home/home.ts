import { accessSync, constants, mkdirSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import type { MachineOnBoard } from '@rotorwright/logbook';
import { openLogStore, type LogStore } from '@rotorwright/logbook/store';
import { copyDemos, demosCopied, examples, markDemosCopied } from './demos.ts';
import { MachineFiles, type MachineFile } from './machine-files.ts';
import { Photos } from './photos.ts';

/** Where a builder's machines and logbook live when nothing else is said. */
export function defaultHome(environment: Readonly<Record<string, string | undefined>> = process.env): string {
  return path.resolve(environment['ROTORWRIGHT_HOME'] || path.join(homedir(), '.rotorwright'));
}

/** A home that cannot be used. The message is a sentence for the user. */
export class HomeError extends Error {
  override readonly name = 'HomeError';
}

/** One home folder, open: the machine files and the logbook. */
export class Home {
  readonly folder: string;
  readonly machines: MachineFiles;
  readonly photos: Photos;
  readonly logbook: LogStore;

  /**
   * Opens a home; makes it where there is none. On its first opening the demo machines are copied into it.
   *
   * @param options.demos folder to copy them from instead of the project's own; null for none
   * @throws HomeError when the folder cannot be made or written
   * @throws LogStoreError when the logbook is damaged, or was written by a newer version
   */
  constructor(folder: string, options: { readonly demos?: string | null } = {}) {
    this.folder = folder;
    try {
      mkdirSync(folder, { recursive: true });
      accessSync(folder, constants.W_OK);
      this.machines = new MachineFiles(folder);
      this.photos = new Photos(folder);
      if (options.demos !== null) copyDemos(folder, this.machines, options.demos ?? examples);
    } catch (error) {
      throw new HomeError(`The home folder ${folder} cannot be used: ${error instanceof Error ? error.message : String(error)}. Choose another with --home DIR.`, { cause: error });
    }
    this.logbook = openLogStore(path.join(folder, 'logbook.sqlite'));
  }

  board(id: string): MachineOnBoard | undefined {
    const file = this.machines.read(id);
    return file && this.onBoard(file);
  }

  onBoard(file: MachineFile): MachineOnBoard {
    return { ...file, entries: this.logbook.entries(file.id) };
  }

  /** Changes whenever the logbook may have changed, whichever process wrote it. */
  logbookStamp(): string {
    return ['logbook.sqlite', 'logbook.sqlite-wal']
      .map((file) => statSync(path.join(this.folder, file), { throwIfNoEntry: false }))
      .map((stat) => (stat === undefined ? '-' : `${stat.size} ${stat.mtimeMs}`))
      .join('; ');
  }

  demosCopied(): readonly string[] {
    return demosCopied(this.folder);
  }

  markDemosCopied(ids: readonly string[]): void {
    markDemosCopied(this.folder, ids);
  }

  close(): void {
    this.logbook.close();
  }
}
