import type { Command } from 'commander';
import type { Act } from './act.ts';
import { backupCommand } from './backup.ts';
import { balanceCommand } from './balance.ts';
import { calcCommand } from './calc.ts';
import { careCommand } from './care.ts';
import { changeCommand } from './change.ts';
import { checkCommand } from './check.ts';
import { controlsCommand } from './controls.ts';
import { countCommand } from './count.ts';
import { figuresCommand } from './figures.ts';
import { holdsCommand } from './holds.ts';
import { listenCommand } from './listen.ts';
import { logCommand } from './log.ts';
import { marginsCommand } from './margins.ts';
import { newCommand } from './new.ts';
import { optionsCommand } from './options.ts';
import { planCommand } from './plan.ts';
import { reachCommand } from './reach.ts';
import { restoreCommand } from './restore.ts';
import { rotorCommand } from './rotor.ts';
import { serveCommand } from './serve.ts';
import { shimsCommand } from './shims.ts';
import { signCommand } from './sign.ts';

/** In the order in which help lists them: that of the job. */
export const commands: readonly ((program: Command, act: Act) => void)[] = [
  newCommand,
  checkCommand,
  figuresCommand,
  marginsCommand,
  careCommand,
  optionsCommand,
  rotorCommand,
  controlsCommand,
  balanceCommand,
  planCommand,
  shimsCommand,
  countCommand,
  reachCommand,
  holdsCommand,
  changeCommand,
  signCommand,
  logCommand,
  listenCommand,
  calcCommand,
  serveCommand,
  backupCommand,
  restoreCommand,
];
