import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Command } from 'commander';
import { writeDurably } from '@rotorwright/server';
import { homeOption, withHome, type HomeOption } from '../machine-argument.ts';
import { readQuantityOption, readWholeOption } from '../read-option.ts';
import type { Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface NewOptions extends HomeOption {
  readonly power: string;
  readonly to?: string;
  readonly json?: true;
}

export function newCommand(program: Command, act: Act): void {
  program
    .command('new')
    .summary('start a machine file')
    .description('Writes a first machine file to fill in: into the home folder, or to a file with --to. Never over one that is there.')
    .argument('<name>', 'name of the machine')
    .option('--power <kind>', 'engine or motor', 'engine')
    .option('--to <file>', 'write it to this file instead of the home folder')
    .option(...homeOption)
    .option('--json', 'id and file as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright new "Marsh Harrier" --power motor')
    .action(act((terminal, [name], options: NewOptions) => start(terminal, name ?? '', options)));
}

async function start(terminal: Terminal, name: string, options: NewOptions): Promise<Status> {
  return 0;
}
