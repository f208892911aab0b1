import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Command } from 'commander';
import { formatFinding, newMachine, readMachine, type FirstFacts } from '@rotorwright/machine';
import { isMachineId, writeDurably } from '@rotorwright/server';
import { homeOption, withHome, type HomeOption } from '../machine-argument.ts';
import { readQuantityOption, readWholeOption } from '../read-option.ts';
import type { Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface NewOptions extends HomeOption {
  readonly power: string;
  readonly speed: string;
  readonly turns?: string;
  readonly gears: string;
  readonly rotor: string;
  readonly blades: string;
  readonly tail?: string;
  readonly tailGears?: string;
  readonly tailRotor?: string;
  readonly tailBlades: string;
  readonly to?: string;
  readonly json?: true;
}

export function newCommand(program: Command, act: Act): void {
  program
    .command('new')
    .summary('start a machine file from a few facts')
    .description('Writes a first machine file, which gives speeds and tip speeds already: into the home folder, or to a file with --to. Never over one that is there.')
    .argument('<name>', 'name of the machine')
    .option('--power <kind>', 'engine or motor', 'engine')
    .requiredOption('--speed <speed>', 'governed speed of engine or motor: "13200 rpm"')
    .option('--turns <sense>', 'which way it turns: "counter-clockwise from above"')
    .requiredOption('--gears <teeth>', 'teeth of pinion and main gear: 12/97')
    .requiredOption('--rotor <diameter>', 'diameter of the main rotor: "1420 mm"')
    .option('--blades <count>', 'blades of the main rotor', '2')
    .option('--tail <kind>', 'how the tail is driven from the mast: bevel or belt')
    .option('--tail-gears <teeth>', 'teeth from mast to tail: 53/11')
    .option('--tail-rotor <diameter>', 'diameter of the tail rotor: "244 mm"')
    .option('--tail-blades <count>', 'blades of the tail rotor', '2')
    .option('--to <file>', 'write it to this file instead of the home folder')
    .option(...homeOption)
    .option('--json', 'id and file as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright new "Marsh Harrier" --speed "13200 rpm" --gears 12/97 \\\n    --rotor "1420 mm"')
    .action(act((terminal, [name], options: NewOptions) => start(terminal, name ?? '', options)));
}

async function start(terminal: Terminal, name: string, options: NewOptions): Promise<Status> {
  const text = newMachine(factsOf(name, options));
  const { machine, findings } = readMachine(text);
  const errors = findings.filter(({ severity }) => severity === 'error');
  if (machine === undefined || errors.length > 0) throw new WrongInput(errors.map((finding) => formatFinding(finding, 'the new file')).join('\n'));
  const { id } = machine;
  const file = options.to === undefined ? await intoHome(terminal, id, text, options) : intoFile(terminal, options.to, text);
  await terminal.write(options.json ? `${JSON.stringify({ id, file })}\n` : `Wrote ${file}. Its id is ${id}.\nrotorwright figures ${options.to ?? id} shows what it gives.\n`);
  return 0;
}

function factsOf(name: string, options: NewOptions): FirstFacts {
  if (name.trim() === '') throw new WrongInput('The machine needs a name.');
  const { power, turns, tail } = options;
  if (power !== 'engine' && power !== 'motor') throw new WrongInput(`--power takes engine or motor; given: ${power}`);
  const [pinionTeeth, mainGearTeeth] = gearsOf('--gears', options.gears, '12/97');
  return {
    name, power, pinionTeeth, mainGearTeeth,
    speed: above('--speed', options.speed, 'rad/s', '13200 rpm'),
    ...(turns !== undefined && { turns }),
    mainRotor: { blades: readWholeOption('--blades', options.blades, 1, 12), diameter: above('--rotor', options.rotor, 'm', '1420 mm') },
    ...(tail !== undefined && { tail: tailOf(tail, options) }),
  };
}

function tailOf(kind: string, { tailGears, tailRotor, tailBlades }: NewOptions): NonNullable<FirstFacts['tail']> {
  if (kind !== 'bevel' && kind !== 'belt') throw new WrongInput(`--tail takes bevel or belt; given: ${kind}`);
  if (tailGears === undefined || tailRotor === undefined) throw new WrongInput('--tail wants --tail-gears and --tail-rotor besides: --tail-gears 53/11 --tail-rotor "244 mm"');
  const [driverTeeth, drivenTeeth] = gearsOf('--tail-gears', tailGears, '53/11');
  return { kind, driverTeeth, drivenTeeth, rotor: { blades: readWholeOption('--tail-blades', tailBlades, 1, 12), diameter: above('--tail-rotor', tailRotor, 'm', '244 mm') } };
}

function gearsOf(option: string, given: string, example: string): readonly [number, number] {
  const [, driver, driven] = /^(\d{1,4})\/(\d{1,4})$/.exec(given) ?? [];
  if (!(Number(driver) >= 4 && Number(driven) >= 4)) throw new WrongInput(`${option} takes two tooth counts from 4 on, that of the driver first; given: ${given}. Right would be ${example}.`);
  return [Number(driver), Number(driven)];
}

function above(option: string, given: string, unit: string, example: string): number {
  const value = readQuantityOption(option, given, unit, example) ?? 0;
  if (!(value > 0)) throw new WrongInput(`${option} must be above zero; given: ${given}. Right would be "${example}".`);
  return value;
}

function intoFile(terminal: Terminal, file: string, text: string): string {
  const target = path.resolve(terminal.folder, file);
  if (existsSync(target)) throw new WrongInput(`${file} is there already; nothing was written.`);
  if (!existsSync(path.dirname(target))) throw new WrongInput(`There is no folder ${path.dirname(target)}.`);
  writeDurably(target, text);
  return target;
}

function intoHome(terminal: Terminal, id: string, text: string, options: HomeOption): Promise<string> {
  if (!isMachineId(id)) throw new WrongInput(`“${id}” is no id for the home folder: at most 64 letters, digits, - and _. Choose a shorter name.`);
  return withHome(terminal, options, ({ machines }) => {
    if (!machines.create(id, text)) throw new WrongInput(`There is a machine ${id} in the home folder already; nothing was written.`);
    return machines.fileOf(id);
  });
}
