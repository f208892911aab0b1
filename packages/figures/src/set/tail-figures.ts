import type { Machine, Rotor } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { bladeInputs, radiusOf } from './blade-inputs.ts';
import { entry, gather, type Builder } from './builder.ts';

/** Name of the demand, and figure of the main torque that it answers. */
const demands = [
  ['tail-thrust', 'Thrust needed of', 'torque'],
  ['tail-thrust-low', 'Thrust needed, low, of', 'torque-low'],
  ['tail-thrust-high', 'Thrust needed, high, of', 'torque-high'],
] as const;

/** What the tail rotor is asked for in hover, and what it can give. */
export function addTail(builder: Builder, tail: Rotor, main: Rotor): void {
  const { path, title } = tail;
  const of = (key: string): string => `${path}.${key}`;
  const named = inSentence(title);
  const place = armFromHubs(builder.machine, tail, main);
  builder.given('tail-arm', `Arm of ${named} about the mast`, 'm', 'mm', entry(of('arm'), tail.arm, 'm') ?? place, [of('arm')]);
  const authority = gather([
    ['arm', { figure: 'tail-arm' }, ''],
    ['blades', entry(of('blades'), tail.blades, '-'), of('blades')],
    ['radius', radiusOf(tail), of('diameter')],
    ['chord', entry(of('chord'), tail.chord, 'm'), of('chord')],
    ['speed', { figure: `speed ${tail.on}` }, ''],
    ['density', { figure: 'air-density' }, ''],
    ['maximumPitch', entry(of('stops'), tail.stops?.max, 'rad'), of('stops')],
  ]);
  const more: Readonly<Record<string, FigureInput>> = {
    ...optional('blockage', entry(of('blockage'), tail.blockage, '-')),
    ...optional('yawInertia', entry('machine.yaw-inertia', builder.machine.yawInertia, 'kg·m²')),
  };
  const against = (torque: string) => ({ calculation: 'tail-authority', inputs: { mainTorque: { figure: `hover-${torque} ${main.id}` }, ...authority.inputs, ...more }, missing: authority.missing });
  // The demand asks for no stop: without one it is known all the same.
  const { maximumPitch: _, ...free } = authority.inputs;
  const anyStop: FigureInput = { constant: Math.PI / 4, unit: 'rad', source: 'the stop does not enter the thrust needed' };
  for (const [name, what, torque] of demands) {
    builder.add({
      name: `${name} hover`, title: `${what} ${named}, hovering`, unit: 'N', shown: 'N', calculation: 'tail-authority', output: 'thrustNeeded',
      inputs: { mainTorque: { figure: `hover-${torque} ${main.id}` }, ...free, maximumPitch: anyStop, ...more }, missing: authority.missing.filter((entryPath) => entryPath !== of('stops')),
    });
  }
  builder.add({ name: 'tail-thrust-available', title: `Thrust that ${named} can give`, unit: 'N', shown: 'N', output: 'thrustAvailable', ...against('torque') });
  builder.add({ name: 'tail-margin hover', title: `Thrust available over thrust needed of ${named}, hovering, high`, unit: '-', shown: '-', output: 'margin', ...against('torque-high') });
  if (builder.machine.yawInertia !== undefined) {
    builder.add({ name: 'yaw-acceleration hover', title: 'Yaw acceleration against the main torque, hovering', unit: 'rad/s²', shown: 'rad/s²', output: 'yawAccelerationAvailable', ...against('torque-high') });
  }
  const blades = bladeInputs(tail);
  for (const [name, what, unit, shown, output, thrust] of tailRows) {
    builder.add({ name: `${name} hover`, title: `${what} ${named}, hovering`, unit, shown, calculation: 'hover', output, inputs: { ...blades.inputs, thrust: { figure: `${thrust} hover` } }, missing: blades.missing });
  }
}

const tailRows = [
  ['tail-power', 'Power of', 'W', 'W', 'power', 'tail-thrust'],
  ['tail-power-low', 'Power, low, of', 'W', 'W', 'powerLow', 'tail-thrust-low'],
  ['tail-power-high', 'Power, high, of', 'W', 'W', 'powerHigh', 'tail-thrust-high'],
  ['tail-torque', 'Torque of', 'N·m', 'N·m', 'torque', 'tail-thrust'],
  ['tail-torque-high', 'Torque, high, of', 'N·m', 'N·m', 'torqueHigh', 'tail-thrust-high'],
  ['tail-collective', 'Pitch of', 'rad', '°', 'collective', 'tail-thrust'],
] as const;

export const optional = (name: string, input: FigureInput | undefined): Readonly<Record<string, FigureInput>> => (input ? { [name]: input } : {});

/** The arm by the places of both hubs, square to the axis of the tail rotor and to the mast. */
function armFromHubs(machine: Machine, tail: Rotor, main: Rotor): FigureInput | undefined {
  const [from, to] = [hubPlace(machine, main), hubPlace(machine, tail)];
  if (!from || !to) return undefined;
  const [x, y] = machine.shafts.get(tail.on)?.axis ?? [0, 1, 0];
  const value = Math.abs((to.at[0] - from.at[0]) * y - (to.at[1] - from.at[1]) * x);
  return value > 0 ? { entry: to.path, value, unit: 'm', as: 'distance from the mast of' } : undefined;
}

function hubPlace(machine: Machine, { part }: Rotor) {
  const thing = part === undefined ? undefined : machine.parts.get(machine.thingOf.get(part) ?? part);
  const at = part === undefined ? undefined : thing?.at?.get(part);
  return thing && at ? { path: `${thing.path}.at`, at } : undefined;
}
