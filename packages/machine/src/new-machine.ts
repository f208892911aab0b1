import { inUnit } from '@rotorwright/units';
import { scalarSource } from './edit/value-text.ts';

/** The few facts with which a machine file begins. */
export interface FirstFacts {
  readonly name: string;
  readonly power: 'engine' | 'motor';
  /** Governed speed of engine or motor, rad/s. */
  readonly speed: number;
  /** Sense of rotation and from where it is seen, such as `counter-clockwise from above`. */
  readonly turns?: string;
  /** Tooth counts from the driving shaft to the mast. */
  readonly pinionTeeth: number;
  readonly mainGearTeeth: number;
  readonly mainRotor: FirstRotor;
  readonly tail?: {
    /** A bevel pair, or a belt that runs aft with a quarter twist. */
    readonly kind: 'bevel' | 'belt';
    readonly driverTeeth: number;
    readonly drivenTeeth: number;
    readonly rotor: FirstRotor;
  };
}

export interface FirstRotor {
  readonly blades: number;
  /** m */
  readonly diameter: number;
}

/**
 * The text of a file that already gives speeds and tip speeds.
 *
 * @throws RangeError when a number is not finite and above zero, or a count is not whole
 * @example newMachine({ name: 'Turnstone', power: 'engine', speed: 1500, pinionTeeth: 15, mainGearTeeth: 120, mainRotor: { blades: 2, diameter: 1.4 } })
 */
export function newMachine(facts: FirstFacts): string {
  const { tail } = facts;
  const speed = `${round(positive('speed', facts.speed), 'rpm')} rpm`;
  const source = facts.power === 'engine' ? 'crank' : 'motor';
  const turns = facts.turns === undefined ? '' : `, turns: ${scalarSource(facts.turns)}`;
  const lines = [
    'rotorwright: 1',
    `machine: {name: ${scalarSource(facts.name)}}`,
    'power:',
    `  ${facts.power}: {on: ${source}, speed: ${speed}${turns}}`,
    'shafts:',
    `  ${source}: {axis: up}`,
    '  mast: {axis: up}',
    ...(tail ? ['  tail: {axis: left}'] : []),
    'drive:',
    `  main-mesh: {kind: external, driver: {on: ${source}, teeth: ${whole('pinionTeeth', facts.pinionTeeth)}}, driven: {on: mast, teeth: ${whole('mainGearTeeth', facts.mainGearTeeth)}}}`,
    ...(tail ? [`  tail-drive: {kind: ${tail.kind}${tail.kind === 'belt' ? ', runs: aft, twist: 90 °' : ''}, driver: {on: mast, teeth: ${whole('driverTeeth', tail.driverTeeth)}}, driven: {on: tail, teeth: ${whole('drivenTeeth', tail.drivenTeeth)}}}`] : []),
    'rotors:',
    `  main: ${rotorLine('mast', facts.mainRotor)}`,
    ...(tail ? [`  tail: ${rotorLine('tail', tail.rotor)}`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

function rotorLine(on: string, rotor: FirstRotor): string {
  return `{on: ${on}, blades: ${whole('blades', rotor.blades)}, diameter: ${round(positive('diameter', rotor.diameter), 'mm')} mm}`;
}

/** To a hundredth of the unit: finer than anybody types it. */
function round(valueSI: number, unit: string): number {
  return Number(inUnit(valueSI, unit).toFixed(2));
}

function positive(name: string, value: number): number {
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`newMachine: ${name} must be finite and above zero; got ${value}`);
  return value;
}

function whole(name: string, value: number): number {
  if (!Number.isInteger(value) || value < 1) throw new RangeError(`newMachine: ${name} must be a whole number above zero; got ${value}`);
  return value;
}
