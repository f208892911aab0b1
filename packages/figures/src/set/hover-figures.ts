import { STANDARD_GRAVITY } from '@rotorwright/calculations';
import type { Rotor } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { bladeInputs, radiusOf } from './blade-inputs.ts';
import { calibratedInputs } from './calibrated.ts';
import { entry, gather, type Builder } from './builder.ts';

/** Name, title, unit, shown unit, output of the calculation. */
type Row = readonly [name: string, title: string, unit: string, shown: string, output: string];

const rows: readonly Row[] = [
  ['hover-power', 'Power of', 'W', 'W', 'power'],
  ['hover-power-low', 'Power, low, of', 'W', 'W', 'powerLow'],
  ['hover-power-high', 'Power, high, of', 'W', 'W', 'powerHigh'],
  ['hover-torque', 'Torque of', 'N·m', 'N·m', 'torque'],
  ['hover-torque-low', 'Torque, low, of', 'N·m', 'N·m', 'torqueLow'],
  ['hover-torque-high', 'Torque, high, of', 'N·m', 'N·m', 'torqueHigh'],
  ['hover-collective', 'Collective of', 'rad', '°', 'collective'],
  ['hover-induced-power', 'Power of the lift of', 'W', 'W', 'inducedPower'],
  ['hover-profile-power', 'Power of the drag of the blades of', 'W', 'W', 'profilePower'],
  ['blade-loading', 'Blade loading of', '-', '-', 'bladeLoading'],
];

/** What the main rotor lifts in hover: the weight, mass times standard gravity; with what its wake pushes down, where the file says how large that is. */
export function hoverThrustInput(builder: Builder, main: Rotor): FigureInput | undefined {
  return builder.machine.verticalDragArea === undefined ? weightInput(builder) : { figure: `hover-thrust ${main.id}` };
}

export function weightInput({ mass }: Pick<Builder, 'mass'>): FigureInput | undefined {
  return mass && 'value' in mass ? { ...mass, value: Number(mass.value) * STANDARD_GRAVITY, unit: 'N', as: 'weight of' } : undefined;
}

/** What the main rotor asks for in hover, carrying the machine: with a band, for no two sets of blades are alike. */
export function addHover(builder: Builder, rotor: Rotor): void {
  const { machine } = builder;
  const { id, title } = rotor;
  const blades = bladeInputs(rotor);
  if (machine.verticalDragArea !== undefined) addHoverThrust(builder, rotor);
  const load = gather([['thrust', hoverThrustInput(builder, rotor), 'machine.mass']]);
  const inputs = { ...blades.inputs, ...calibratedInputs(builder, rotor), ...load.inputs };
  for (const [name, what, unit, shown, output] of rows) {
    builder.add({ name: `${name} ${id}`, title: `${what} ${inSentence(title)}, hovering`, unit, shown, calculation: 'hover', output, inputs, missing: [...blades.missing, ...load.missing] });
  }
  addGroundEffect(builder, rotor);
  addAutorotation(builder, rotor);
}

function addHoverThrust(builder: Builder, rotor: Rotor): void {
  const { verticalDragArea } = builder.machine;
  const lifted = gather([
    ['mass', builder.mass, 'machine.mass'],
    ['radius', radiusOf(rotor), `${rotor.path}.diameter`],
    ['dragArea', entry('machine.vertical-drag-area', verticalDragArea, 'm²'), 'machine.vertical-drag-area'],
  ]);
  builder.add({ name: `hover-thrust ${rotor.id}`, title: `Thrust of ${inSentence(rotor.title)}, hovering`, unit: 'N', shown: 'N', calculation: 'hover-thrust', output: 'thrust', ...lifted });
}

/** Hover with the skids just clear of the ground, where the file has the height of the rotor. */
function addGroundEffect(builder: Builder, rotor: Rotor): void {
  const { rotorHeight } = builder.machine;
  if (rotorHeight === undefined) return;
  const near = gather([
    ['height', entry('machine.rotor-height', rotorHeight, 'm'), 'machine.rotor-height'],
    ['radius', radiusOf(rotor), `${rotor.path}.diameter`],
    ['inducedPower', { figure: `hover-induced-power ${rotor.id}` }, ''],
    ['profilePower', { figure: `hover-profile-power ${rotor.id}` }, ''],
  ]);
  builder.add({ name: `hover-power-ground ${rotor.id}`, title: `Power of ${inSentence(rotor.title)}, hovering with the skids just off the ground`, unit: 'W', shown: 'W', calculation: 'ground-effect', output: 'power', ...near });
}

/** Blade loading at stall, thrust coefficient over solidity. */
const STALL_LOADING = 0.13;

/** What is stored in the rotor, how long it lasts, and how fast the machine comes down on it. */
function addAutorotation(builder: Builder, rotor: Rotor): void {
  const { id, path, title } = rotor;
  const { inputs, missing } = gather([
    ['rotorInertia', { figure: `rotor-inertia ${id}` }, ''],
    ['speed', { figure: `speed ${rotor.on}` }, ''],
    ['hoverPower', { figure: `hover-power ${id}` }, ''],
    ['mass', builder.mass, 'machine.mass'],
    ['radius', radiusOf(rotor), `${path}.diameter`],
    ['density', { figure: 'air-density' }, ''],
    ['bladeLoading', { figure: `blade-loading ${id}` }, ''],
    ['maximumBladeLoading', { constant: STALL_LOADING, unit: '-', source: 'common practice, no source' }, ''],
    ['profilePower', { figure: `hover-profile-power ${id}` }, ''],
  ]);
  const add = (name: string, words: string, unit: string, shown: string, output: string): void => void builder.add({ name: `${name} ${id}`, title: words, unit, shown, calculation: 'autorotation', output, inputs, missing });
  add('hover-reserve', `Time that ${inSentence(title)} could hover on what is stored in it`, 's', 's', 'equivalentHoverTime');
  add('autorotation-decay', `Time until ${inSentence(title)}, its collective held, is too slow to carry`, 's', 's', 'decayTime');
  add('autorotation-least-speed', `Least speed at which ${inSentence(title)} still carries`, 'rad/s', 'rpm', 'minimumSpeed');
  add('autorotation-descent', `Rate of a steady descent straight down on ${inSentence(title)} alone`, 'm/s', 'm/s', 'descentRate');
}
