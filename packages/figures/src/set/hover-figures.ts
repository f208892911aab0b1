import { STANDARD_GRAVITY } from '@rotorwright/calculations';
import type { Rotor } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Builder } from './builder.ts';

/** Name, title, unit, shown unit, output of the calculation. */
type Row = readonly [name: string, title: string, unit: string, shown: string, output: string];

const rows: readonly Row[] = [
  ['hover-power', 'Power of', 'W', 'W', 'power'],
  ['hover-power-low', 'Power, low, of', 'W', 'W', 'powerLow'],
  ['hover-power-high', 'Power, high, of', 'W', 'W', 'powerHigh'],
  ['hover-torque', 'Torque of', 'N·m', 'N·m', 'torque'],
  ['hover-collective', 'Collective of', 'rad', '°', 'collective'],
  ['blade-loading', 'Blade loading of', '-', '-', 'bladeLoading'],
];

/** What the main rotor asks for in hover, carrying the machine: with a band, for no two sets of blades are alike. */
export function addHover(builder: Builder, rotor: Rotor): void {
  const { machine } = builder;
  const { id, path, title } = rotor;
  const of = (key: string): string => `${path}.${key}`;
  const weight: FigureInput | undefined = machine.mass === undefined ? undefined : { entry: 'machine.mass', value: machine.mass * STANDARD_GRAVITY, unit: 'N', as: 'weight of' };
  const radius: FigureInput | undefined = rotor.diameter === undefined ? undefined : { entry: of('diameter'), value: rotor.diameter / 2, unit: 'm', as: 'half of' };
  const section: FigureInput | undefined = rotor.section === undefined ? undefined : { entry: of('section'), value: rotor.section, unit: '' };
  const axis: FigureInput = { constant: 0, unit: 'm', source: 'the chord is the same from root to tip' };
  const chord = entry(of('chord'), rotor.chord, 'm');
  const { inputs, missing } = gather([
    ['blades', entry(of('blades'), rotor.blades, '-'), of('blades')],
    ['radius', radius, of('diameter')],
    ['rootCutout', entry(of('root'), rotor.root, 'm'), of('root')],
    ['chord', chord && { list: [{ r: axis, chord }] }, of('chord')],
    ['airfoil', section && { record: { name: section } }, of('section')],
    ['speed', { figure: `speed ${rotor.on}` }, ''],
    ['thrust', weight, 'machine.mass'],
    ['density', { figure: 'air-density' }, ''],
    ['viscosity', { figure: 'air-viscosity' }, ''],
    ['speedOfSound', { figure: 'speed-of-sound' }, ''],
  ]);
  // The file has one twist, from root to tip; the collective is the pitch at three quarters of the radius.
  const twist = rotor.twist === undefined || rotor.root === undefined || rotor.diameter === undefined ? {} : twistOf(rotor.twist, rotor.root, rotor.diameter / 2, of('twist'));
  for (const [name, what, unit, shown, output] of rows) {
    builder.add({ name: `${name} ${id}`, title: `${what} ${inSentence(title)}, hovering`, unit, shown, calculation: 'hover', output, inputs: { ...inputs, ...twist }, missing });
  }
  builder.add({
    name: `hover-reserve ${id}`, title: `Time that ${inSentence(title)} could hover on what is stored in it`, unit: 's', shown: 's', calculation: 'autorotation', output: 'equivalentHoverTime',
    ...gather([['rotorInertia', { figure: `rotor-inertia ${id}` }, ''], ['speed', { figure: `speed ${rotor.on}` }, ''], ['hoverPower', { figure: `hover-power ${id}` }, ''], ['mass', entry('machine.mass', machine.mass, 'kg'), 'machine.mass'], ['radius', radius, of('diameter')]]),
  });
}

function twistOf(twist: number, root: number, radius: number, path: string): Readonly<Record<string, FigureInput>> {
  const at = (r: number): Readonly<Record<string, FigureInput>> => ({
    r: { constant: r, unit: 'm', source: 'root and tip of the blade' },
    twist: { entry: path, value: (twist * (r - 0.75 * radius)) / (radius - root), unit: 'rad', as: 'share of' },
  });
  return { twist: { list: [at(root), at(radius)] } };
}
