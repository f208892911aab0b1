import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Command } from 'commander';
import { BackupError, Home, linesOf, restoreBackup } from '@rotorwright/server';
import { homeFolder, homeOption, type HomeOption } from '../machine-argument.ts';
import type { Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface RestoreOptions extends HomeOption {
  readonly replace?: true;
}

export function restoreCommand(program: Command, act: Act): void {
  program
    .command('restore')
    .summary('take a backup into the home folder')
    .description('Takes the machines, the logbook and the photos of a backup in. What is there already is passed over; what contradicts it is refused.')
    .argument('<file>', 'the backup')
    .option('--replace', 'put away machines that differ, and take those of the backup')
    .option(...homeOption)
    .addHelpText('after', '\nExample:\n  rotorwright restore workshop.backup --home new-home')
    .action(act((terminal, [file], options: RestoreOptions) => restore(terminal, file ?? '', options)));
}

async function restore(terminal: Terminal, file: string, options: RestoreOptions): Promise<Status> {
  const source = path.resolve(terminal.folder, file);
  if (!existsSync(source) || !statSync(source).isFile()) throw new WrongInput(`There is no file ${file}.`);
  const home = new Home(homeFolder(terminal, options), { demos: null });
  try {
    const { machines, entries, photos } = restoreBackup(home, () => linesOf(source), { replace: options.replace === true, now: terminal.now() });
    await terminal.write(`Restored ${machines} machines, ${entries} entries and ${photos} photos into ${home.folder}.\n`);
    return 0;
  } catch (error) {
    if (error instanceof BackupError) throw new WrongInput([error.message, ...error.details].join('\n'));
    throw error;
  } finally {
    home.close();
  }
}
