import type { Command } from 'commander';
import { choicesFor, exclusionText, gearChoices, type GearOption } from '@rotorwright/figures';
import type { Machine, Window } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { findMachine, homeOption, sayFindings, type HomeOption } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption, readWholeOption, readWindowOption } from '../read-option.ts';
import { painter, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface ChoiceOptions extends HomeOption {
  readonly rotor: string;
  readonly speed?: string;
  readonly engine?: string;
  readonly show: string;
  readonly json?: true;
}

export function optionsCommand(program: Command, act: Act): void {
  program
    .command('options')
    .summary('compare the gears that can be bought')
    .description('Goes through the combinations of the gears that the file offers. With one wanted speed: those on the way to that rotor, closest first. Else all, ranked against the wanted bands and the limits.\nStatus 1 when none of them holds.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--rotor <rotor>', 'rotor that --speed is wanted of', 'main')
    .option('--speed <speed>', 'wanted speed or band instead of that of the file: "1750 rpm", "1700 to 1800 rpm"')
    .option('--engine <speed>', 'speed of engine or motor instead of that of the file')
    .option('--show <count>', 'how many to show', '12')
    .option(...homeOption)
    .option('--json', 'all of them as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright options examples/whimbrel/machine.yaml --speed "1750 rpm"')
    .action(act((terminal, [machine], options: ChoiceOptions) => choose(terminal, machine, options)));
}

async function choose(terminal: Terminal, argument: string | undefined, options: ChoiceOptions): Promise<Status> {
  const count = readWholeOption('--show', options.show, 1, 100_000);
  const wanted = readWindowOption('--speed', options.speed, 'rad/s', '1750 rpm');
  const sourceSpeed = readQuantityOption('--engine', options.engine, 'rad/s', '14600 rpm');
  const named = findMachine(terminal, argument, options);
  const { machine } = named;
  if (!machine.rotors.has(options.rotor)) throw new WrongInput(`${machine.name} has no rotor “${options.rotor}”. ${nearestTo(options.rotor, [...machine.rotors.keys()])}`);
  const found = look(machine, options.rotor, wanted, sourceSpeed);
  const { holding } = found;
  if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, rotor: options.rotor, ...found })}\n`);
  else await terminal.write(`${setOut(terminal, machine, found, count)}\n`);
  sayFindings(terminal, named, []);
  return holding > 0 ? 0 : 1;
}

interface Found {
  readonly options: readonly (GearOption & { readonly off?: number })[];
  readonly notAssessed: readonly string[];
  /** All combinations, and those that nothing rules out: more than the options that are put together. */
  readonly combinations: number;
  readonly holding: number;
}

function look(machine: Machine, rotor: string, wanted: Window | undefined, sourceSpeed: number | undefined): Found {
  const engine = sourceSpeed === undefined ? {} : { sourceSpeed };
  if (wanted?.min !== undefined && wanted.min === wanted.max) {
    const options = choicesFor(machine, rotor, wanted.min, { ...engine, show: Infinity });
    return { options, notAssessed: [], combinations: options.length, holding: options.filter(({ ruledOut }) => ruledOut.length === 0).length };
  }
  const choices = gearChoices(machine, { ...engine, show: Infinity, ...(wanted && { bands: { [rotor]: wanted } }) });
  if (choices.tooMany !== undefined) throw new WrongInput(`The file offers ${choices.tooMany.toLocaleString('en')} combinations; that is more than are looked at. Shorten some of its choices.`);
  const { options, notAssessed, count, excluded } = choices;
  return { options, notAssessed, combinations: count, holding: count - excluded };
}

function setOut(terminal: Terminal, machine: Machine, { options, notAssessed, combinations, holding }: Found, count: number): string {
  if (options.length === 0) return 'The speed of that rotor does not follow from the file; rotorwright figures says what is missing.';
  if (options.every(({ changes }) => changes.length === 0)) return `${machine.name} offers no other gears. Write choices: beside a tooth count in the file.`;
  const paint = painter(terminal.colour);
  const asked = options.some(({ off }) => off !== undefined);
  const tailed = options.some(({ tailSpeed }) => tailSpeed !== undefined);
  const speed = (value: number | undefined): string => (value === undefined ? 'unknown' : showQuantity(value, 'rpm'));
  const rows = options.slice(0, count).map((option, at) => [
    String(at + 1),
    bought(option),
    ...(asked ? [offBy(option.off)] : []),
    speed(option.mainSpeed),
    ...(tailed ? [speed(option.tailSpeed)] : []),
    [...(option.ruledOut.length === 0 ? [paint('green', 'holds')] : [paint('red', 'out:'), ...option.ruledOut.map(exclusionText)]), ...option.centres.flatMap(moved)].join(' '),
  ]);
  const columns = [{ title: '#', right: true }, { title: 'what to buy', breaks: true }, ...(asked ? [{ title: 'off', right: true }] : []), { title: 'main', right: true }, ...(tailed ? [{ title: 'tail', right: true }] : []), { title: 'verdict', breaks: true }];
  return [
    table(columns, rows, terminal.columns),
    `${holding} of ${combinations} combinations hold${combinations > count ? `; the first ${count} are shown` : ''}.`,
    ...(notAssessed.length > 0 ? [`Not assessed: ${notAssessed.join(', ')}.`] : []),
  ].join('\n');
}

const offBy = (off = 0): string => `${off < 0 ? '−' : '+'}${showQuantity(Math.abs(off), 'rpm')}`;

const bought = ({ changes }: GearOption): string =>
  changes.length === 0 ? 'nothing: as fitted' : changes.map(({ coupling, side, teeth, fitted, code, price }) => [`${coupling} ${side} ${fitted ?? '?'} → ${teeth}`, code, price].filter(Boolean).join(', ')).join('; ');

/** Shifts too small to set by hand are no news. */
const moved = ({ coupling, move }: GearOption['centres'][number]): readonly string[] =>
  move === undefined || Math.abs(move) < 1e-6 ? [] : [`(${coupling} ${move > 0 ? 'apart' : 'together'} by ${showQuantity(Math.abs(move), 'mm', { decimals: 2 })})`];
