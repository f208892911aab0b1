import type { Command } from 'commander';
import { figures, solveDrive, type Figure, type FigureSet } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { readConditions, withConditionOptions, type ConditionOptions } from '../condition-options.ts';
import { findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption } from '../read-option.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface RotorOptions extends HomeOption, ConditionOptions {
  readonly speed?: string;
  readonly variant?: string;
  readonly json?: true;
}

/** Figures in the order of the answer; those with a band have their ends beside them. */
const rows: readonly (readonly [name: string, kind?: 'band' | 'margin'])[] = [
  ['power-needed hover', 'band'],
  ['hover-power-ground main'],
  ['power-available'],
  ['power-in-hand hover', 'margin'],
  ['thrust-reserve main', 'margin'],
  ['climb-rate'],
  ['endurance hover', 'band'],
  ['fuel-flow hover', 'band'],
  ['pack-current hover', 'band'],
  ['pack-voltage hover'],
  ['governor-headroom hover'],
  ['tail-margin hover', 'margin'],
  ['tail-margin full-power', 'margin'],
  ['tail-least-speed hover'],
  ['tail-least-speed full-power'],
  ['tail-fast-speed'],
  ['tip-mach main'],
  ['tip-mach tail'],
  ['endurance-speed'],
  ['range-speed'],
  ['top-speed'],
  ['autorotation-descent main'],
];

export function rotorCommand(program: Command, act: Act): void {
  withConditionOptions(program.command('rotor'))
    .summary('say what hover, climb and fast flight ask for, and what is left')
    .description('Power, thrust in reserve, tail and minutes at a rotor speed, a mass and an air.\nStatus 1 when power, thrust or tail do not suffice.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .option('--speed <speed>', 'speed of the main rotor instead of that of the file: "1650 rpm"')
    .option('--variant <variant>', 'a variant of the file')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright rotor examples/whimbrel/machine.yaml --altitude "1500 m" --warmer "20 K"')
    .action(act((terminal, [machine], options: RotorOptions) => answer(terminal, machine, options)));
}

async function answer(terminal: Terminal, argument: string | undefined, options: RotorOptions): Promise<Status> {
  const speed = readQuantityOption('--speed', options.speed, 'rad/s', '1650 rpm');
  if (speed !== undefined && !(speed > 0)) throw new WrongInput(`--speed: given “${options.speed}”: a rotor that lifts turns. Right would be "1650 rpm".`);
  const conditions = readConditions(options);
  const named = inVariant(findMachine(terminal, argument, options), options.variant);
  const { machine } = named;
  const main = machine.rotors.get('main');
  const perRotor = main && solveDrive(machine).states.get('driven')?.motions.get(main.on)?.factor;
  if (!main || perRotor === undefined) throw new WrongInput(`${machine.name} does not say what turns its main rotor; it wants power, drive and rotors.main.`);
  const set = figures(machine, { ...conditions, ...(speed === undefined ? {} : { sourceSpeed: speed / perRotor }) });
  const told = rows.flatMap(([name, kind]) => {
    const figure = set.get(name);
    return figure ? [{ figure, kind }] : [];
  });
  if (options.json) await terminal.write(`${JSON.stringify({ id: named.id, figures: told.map(({ figure }) => figure), ends: told.flatMap(({ figure, kind }) => (kind === 'band' ? endsOf(set, figure.name) : [])), limit: set.outputs('thrust-reserve main')?.['limit'] })}\n`);
  else {
    const turning = set.get(`speed ${main.on}`)?.value;
    const air = ['air-temperature', 'air-density', 'density-altitude'].map((name) => set.get(name)).map((figure) => (figure?.value === undefined ? 'not known' : showQuantity(figure.value, figure.shown, { significant: 4 })));
    const head = `${painter(terminal.colour)('bold', machine.name)}, ${turning === undefined ? 'at no known speed' : showQuantity(turning, 'rpm')}, ${machine.mass === undefined ? 'of no known mass' : showQuantity(conditions.mass ?? machine.mass, 'kg')}, air ${air.slice(0, 2).join(', ')}, density altitude ${air[2]}`;
    await terminal.write(`${[head, table([{ title: 'what', breaks: true }, { title: 'value', right: true }, { title: 'low to high', breaks: true }], told.map(({ figure, kind }) => [figure.title, valueOf(figure, kind), kind === 'band' ? bandOf(set, figure) : (figure.warnings[0] ?? '')]), terminal.columns), ...sentences(set).map((words) => paragraph(words, terminal.columns))].join('\n\n')}\n`);
  }
  const short = told.some(({ figure, kind }) => kind === 'margin' && figure.value !== undefined && figure.value < 1);
  const found = sayFindings(terminal, named, set.findings.filter(({ severity }) => severity !== 'note'));
  return short ? 1 : found;
}

function inVariant(named: NamedMachine, variant: string | undefined): NamedMachine {
  if (variant === undefined) return named;
  const { variants, name } = named.machine;
  if (!variants.has(variant)) throw new WrongInput(`${name} has no variant “${variant}”. ${nearestTo(variant, [...variants.keys()])}`);
  const { machine, findings } = readMachine(named.text, { variant });
  if (!machine) throw new WrongInput(`${name} cannot be read in its variant ${variant}; rotorwright check says why.`);
  return { ...named, machine, findings };
}

/** Rounded down where it is a margin: 0.996 is never 1.00. */
function valueOf({ value, shown, missing }: Figure, kind: 'band' | 'margin' | undefined): string {
  if (value === undefined) return missing.length > 0 ? `wants ${missing[0]}` : 'left out';
  if (kind === 'margin') return `${(Math.floor(value * 100 + 1e-9) / 100).toFixed(2)}${value < 1 ? ' exceeded' : ''}`;
  return showQuantity(value, shown, { significant: 3 });
}

function endsOf(set: FigureSet, name: string): readonly Figure[] {
  const [first, ...rest] = name.split(' ');
  return ['low', 'high'].flatMap((end) => set.get([`${first}-${end}`, ...rest].join(' ')) ?? []);
}

const bandOf = (set: FigureSet, { name, shown }: Figure): string => endsOf(set, name).map(({ value }) => (value === undefined ? 'not known' : showQuantity(value, shown, { significant: 3 }))).join(' to ');

/** What the numbers mean, where they can be misread. */
function sentences(set: FigureSet): readonly string[] {
  const [hover, full, fast, main] = ['tail-least-speed hover', 'tail-least-speed full-power', 'tail-fast-speed', `speed ${set.drive.mainRotor?.on}`].map((name) => set.get(name)?.value);
  const limit = set.outputs('thrust-reserve main')?.['limit'];
  const rpm = (value: number, round: (value: number) => number): string => `${round((value * 30) / Math.PI).toLocaleString('en-GB')} rpm`;
  return [
    ...(hover === undefined || full === undefined || main === undefined ? [] : [
      `The tail holds hover from ${rpm(hover, Math.ceil)} of the main rotor on, full power from ${rpm(full, Math.ceil)} on${main < full ? ': at this speed it is too slow for full power' : ''}. Its thrust goes with the square of the speed, the torque of full power does not: that is why a slow rotor is short of tail.${fast === undefined ? '' : ` Its tips are too fast from ${rpm(fast, Math.floor)} on${main > fast ? ', which is passed' : ''}.`}`,
    ]),
    ...(typeof limit === 'string' ? [`The most thrust is set by: ${limit}.`] : []),
    ...measuredWords(set),
    `Left out: wind, gusts, ${leftOut(set).join(', ')}.`,
  ];
}

/** What the file could have told. */
function leftOut({ machine: { verticalDragArea, rotorHeight } }: FigureSet): readonly string[] {
  const named = verticalDragArea === undefined ? 'the wake on tail and fuselage' : 'the wake on the tail';
  return rotorHeight === undefined ? [named, 'ground effect'] : [named];
}

/** By how much the flight that was measured has narrowed the band. */
function measuredWords(set: FigureSet): readonly string[] {
  const [narrowed, drag, deviation] = ['flown band-narrowed main', 'flown blade-drag main', 'flown pitch-deviation main'].map((name) => set.get(name));
  if (narrowed?.value === undefined) return narrowed ? [`What was measured in flight cannot be used yet: it wants ${narrowed.missing.join(', ')}.`] : [];
  const pitch = deviation?.value === undefined ? '' : ` The collective measured is ${showQuantity(deviation.value, '°', { significant: 2 })} off the computed one.`;
  return [[`What was measured in hover takes ${showQuantity(narrowed.value, '%', { significant: 2 })} off the width of the band: these blades have ${showQuantity(drag?.value ?? Number.NaN, '-', { significant: 3 })} times the drag of their section.${pitch}`, ...narrowed.warnings].join(' ')];
}
