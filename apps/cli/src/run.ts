import { Command, CommanderError } from 'commander';
import { HomeError, ServeError } from '@rotorwright/server';
import { LogStoreError } from '@rotorwright/logbook/store';
import type { Act } from './commands/act.ts';
import { commands } from './commands/index.ts';
import type { Terminal } from './terminal/index.ts';
import { WrongInput } from './wrong-input.ts';

const version = '0.1.0';

/**
 * Runs one command line.
 *
 * @param args what stands behind the name of the program
 * @returns    exit status: 0 fine, 1 answered with a finding, 2 wrong input
 */
export async function run(args: readonly string[], terminal: Terminal): Promise<0 | 1 | 2> {
  let status: 0 | 1 | 2 = 0;
  let answer = '';
  const act: Act = (action) => async (...given) => {
    const command = given.at(-1) as Command;
    status = await action(terminal, command.processedArgs as string[], command.opts() as never);
  };

  const program = new Command('rotorwright')
    .description('A bench companion for builders of large radio-controlled helicopters.\nMACHINE is a machine file, or the id of a machine in your home folder.')
    .version(version)
    .helpCommand('help [command]', 'say what a command does')
    .helpOption('-h, --help', 'say what it does')
    .showHelpAfterError('Say --help for what can be asked.')
    .configureHelp({ helpWidth: terminal.columns })
    .configureOutput({ writeOut: (text) => void (answer += text), writeErr: (text) => terminal.say(text.trimEnd()) })
    .exitOverride()
    .addHelpText('after', '\nExample:\n  rotorwright figures examples/whimbrel/machine.yaml\n\nExit status: 0 fine, 1 answered with a finding, 2 wrong input.');
  for (const add of commands) {
    add(program, act);
  }
  // Settings are copied into commands as they are made, but not into those made before.
  for (const command of program.commands) command.copyInheritedSettings(program).helpOption('-h, --help', 'say what it does');

  try {
    if (args.length === 0) program.help({ error: true });
    await program.parseAsync([...args], { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) {
      status = error.exitCode === 0 ? 0 : 2;
      if (error.code === 'commander.excessArguments') terminal.say('Put what has blanks in it in quotation marks, else it counts as several.');
    } else status = troubleOf(error, terminal);
  }
  if (answer !== '') await terminal.write(answer);
  return status;
}

function troubleOf(error: unknown, terminal: Terminal): 2 {
  if (error instanceof WrongInput || error instanceof HomeError || error instanceof ServeError || error instanceof LogStoreError) terminal.say(error.message);
  else if (error instanceof Error && 'syscall' in error) terminal.say(`The system says: ${error.message}`);
  else throw error;
  return 2;
}
