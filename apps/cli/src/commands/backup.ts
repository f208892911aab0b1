import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Command } from 'commander';
import { backupLines, BackupError, Home, writePiecesDurably, type BackupCount } from '@rotorwright/server';
import { homeFolder, homeOption, type HomeOption } from '../machine-argument.ts';
import type { Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

export function backupCommand(program: Command, act: Act): void {
  program
    .command('backup')
    .summary('write machines, logbook and photos into one file')
    .description('Writes everything of the home folder into one text file, or to standard output with -. Never over a file that is there.')
    .argument('<file>', "where to write it, or '-' for standard output")
    .option(...homeOption)
    .addHelpText('after', '\nExample:\n  rotorwright backup workshop.backup')
    .action(act((terminal, [file], options: HomeOption) => backup(terminal, file ?? '', options)));
}

async function backup(terminal: Terminal, file: string, options: HomeOption): Promise<Status> {
  const folder = homeFolder(terminal, options);
  if (!existsSync(folder)) throw new WrongInput(`There is no home folder ${folder}.`);
  const target = path.resolve(terminal.folder, file);
  if (file !== '-' && existsSync(target)) throw new WrongInput(`${file} is there already; a backup is never written over another file.`);
  const home = new Home(folder, { demos: null });
  try {
    const lines = backupLines(home, terminal.now());
    let count: BackupCount = { machines: 0, entries: 0, photos: 0 };
    const counted = function* (): Generator<string> {
      count = yield* lines;
    };
    if (file === '-') for (const line of counted()) await terminal.write(line);
    else writePiecesDurably(target, counted());
    terminal.say(`Backed up ${count.machines} machines, ${count.entries} entries and ${count.photos} photos of ${folder}.`);
    return 0;
  } catch (error) {
    if (error instanceof BackupError) throw new WrongInput(error.message);
    throw error;
  } finally {
    home.close();
  }
}
