import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { serve } from '@rotorwright/server';
import { homeFolder, homeOption, type HomeOption } from '../machine-argument.ts';
import { readWholeOption } from '../read-option.ts';
import type { Terminal } from '../terminal/index.ts';
import type { Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface ServeOptions extends HomeOption {
  readonly port?: string;
}

const pages = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../web/dist');

export function serveCommand(program: Command, act: Act): void {
  program
    .command('serve')
    .summary('serve the pages to this machine')
    .description('Serves the pages to browsers on this machine until it is stopped.')
    .option('--port <number>', 'port to listen on; default: 8420, or the next free one')
    .option(...homeOption)
    .addHelpText('after', '\nExample:\n  rotorwright serve --port 8500')
    .action(act((terminal, _, options: ServeOptions) => keepServing(terminal, options)));
}

async function keepServing(terminal: Terminal, options: ServeOptions): Promise<Status> {
  const port = options.port === undefined ? undefined : readWholeOption('--port', options.port, 0, 65_535);
  const stopped = terminal.stopped();
  const { url, close } = await serve({ port, home: homeFolder(terminal, options), web: pages });
  await terminal.write(`Rotorwright is ready at ${url}\n`);
  await stopped;
  await close();
  return 0;
}
