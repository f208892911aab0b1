import type { EntryPath, Machine, Rotor } from '@rotorwright/machine';
import type { DriveSolution } from '../drive/solve.ts';
import type { Figure, FigureInput } from '../figure.ts';
import { bladeInputs } from './blade-inputs.ts';
import { FLOWN } from './calibrated.ts';
import { builderFor, entry, gather, type Builder } from './builder.ts';
import { asTried, type Conditions } from './conditions.ts';
import { addDriveFigures } from './drive-figures.ts';
import { addHover, hoverThrustInput } from './hover-figures.ts';
import { addPowerNeeded, motorDraft } from './power-figures.ts';
import { addAir } from './rotor-figures.ts';
import { addTail } from './tail-figures.ts';

/** How far the power may be off that a fuel flow, or a current, tells of: consumption and scale; constants of the motor and its sensor. */
const ACCURACY = { fuel: 0.1, current: 0.06 };

/**
 * Figures of the flight that was measured, down to what it says of the blades; none where nothing was. They have names of
 * their own, for mass and air were others.
 */
export function flownFigures(machine: Machine, drive: DriveSolution, main: Rotor): readonly Figure[] {
  const { hover } = machine.flown;
  const { source } = drive;
  if (!hover || !source || !drive.states.has('driven') || (hover.collective === undefined && hover.fuelFlow === undefined && hover.current === undefined)) return [];
  const conditions: Conditions = {
    ...(hover.mass === undefined ? {} : { mass: hover.mass }),
    ...(hover.altitude === undefined ? {} : { altitude: hover.altitude }),
    ...(hover.warmer === undefined ? {} : { temperatureOffset: hover.warmer }),
  };
  const then = asTried(machine, conditions).machine;
  const builder = builderFor(then, [], undefined, entry(`${hover.path}.mass`, hover.mass, 'kg'));
  addDriveFigures(builder, drive, 'driven', conditions);
  addFlownSpeeds(builder, drive, main);
  addAir(builder, conditions);
  addHover(builder, main);
  const tail = drive.tailRotor && builder.get(`speed ${drive.tailRotor.on}`) ? drive.tailRotor : undefined;
  if (tail) addTail(builder, tail, main);
  const power = addFlownPower(builder, drive, main, tail);
  addCalibration(builder, main, power, hover.collective);
  return onlyNeeded(builder, [`blade-drag ${main.id}`, `blade-inflow ${main.id}`, `blade-drag-scatter ${main.id}`, `blade-inflow-scatter ${main.id}`, `band-narrowed ${main.id}`, `pitch-deviation ${main.id}`]).map(asFlown);
}

/** Rotors turn as fast as they were flown, where that is told, and not as today's gears turn them. */
function addFlownSpeeds(builder: Builder, drive: DriveSolution, main: Rotor): void {
  const { path, rotorSpeed } = builder.machine.flown.hover!;
  const motions = drive.states.get('driven')!.motions;
  const own = motions.get(main.on)?.factor;
  if (rotorSpeed === undefined || own === undefined) return;
  const passed = new Set(countsOf(builder.get(`speed ${main.on}`)));
  for (const { on } of builder.machine.rotors.values()) {
    const factor = motions.get(on)?.factor;
    const speed = builder.get(`speed ${on}`);
    if (factor === undefined || speed === undefined) continue;
    const between = countsOf(speed).filter((count) => !passed.has(count));
    builder.given(speed.name, speed.title, 'rad/s', 'rpm', { entry: `${path}.rotor-speed`, value: (rotorSpeed * factor) / own, unit: 'rad/s', ...(on === main.on ? {} : { as: 'through the gears between them, from that of the main rotor', with: between }) }, []);
  }
}

/** Tooth counts that a speed goes through. */
const countsOf = (speed: Figure | undefined): readonly EntryPath[] =>
  Object.values(speed?.inputs ?? {}).flatMap((input) => ('list' in input ? input.list.flatMap((stage) => Object.values(stage).flatMap((each) => ('entry' in each ? [each.entry] : []))) : []));

/** Power of the main rotor that fuel flow or current tell of; undefined where neither was measured, or the file lacks what turns it into power. */
function addFlownPower(builder: Builder, drive: DriveSolution, main: Rotor, tail: Rotor | undefined): { readonly figure: string; readonly accuracy: number } | undefined {
  const { machine } = builder;
  const { engine, motor, battery } = machine.power;
  const { path, fuelFlow, current } = machine.flown.hover!;
  const source = drive.source!;
  const title = `Power of ${source.kind === 'engine' ? 'the engine' : 'the motor'} that was measured`;
  if (source.kind === 'engine' && engine && fuelFlow !== undefined) {
    const { consumption } = engine;
    const input: FigureInput | undefined = consumption === undefined ? undefined : { entry: `${path}.fuel-flow`, value: fuelFlow / consumption, unit: 'W', as: 'by the consumption, power of' };
    builder.given('power-available', title, 'W', 'W', input, [`${engine.path}.consumption`]);
  } else if (motor && current !== undefined) {
    const running = motorDraft(motor, battery, { torque: { constant: 0, unit: 'N·m', source: 'the load follows from the current' }, measuredCurrent: { entry: `${path}.current`, value: current, unit: 'A' } });
    builder.add({ name: 'power-available', title, unit: 'W', shown: 'W', output: 'measuredPower', ...running });
  } else return undefined;
  addPowerNeeded(builder, drive, source, main, tail);
  return { figure: 'rotor-power-available hover', accuracy: source.kind === 'engine' ? ACCURACY.fuel : ACCURACY.current };
}

function addCalibration(builder: Builder, main: Rotor, power: { readonly figure: string; readonly accuracy: number } | undefined, collective: number | undefined): void {
  const blades = bladeInputs(main);
  const weight = gather([['thrust', hoverThrustInput(builder, main), 'machine.mass']]);
  const measured: Record<string, FigureInput> = {};
  if (power) {
    measured['measuredPower'] = { figure: power.figure };
    measured['powerAccuracy'] = { constant: power.accuracy, unit: '-', source: 'common practice, no source' };
  }
  const pitch = entry(`${builder.machine.flown.hover!.path}.collective`, collective, 'rad');
  if (pitch) measured['measuredCollective'] = pitch;
  const inputs = { ...blades.inputs, ...weight.inputs, ...measured };
  const missing = [...blades.missing, ...weight.missing];
  const add = (name: string, title: string, output: string, unit: string, shown: string): void => void builder.add({ name: `${name} ${main.id}`, title, unit, shown, calculation: 'hover-calibration', output, inputs, missing });
  add('blade-drag', 'Drag of the main blades over that of their section, as measured', 'roughness', '-', '-');
  add('blade-inflow', 'Induced speed of the main rotor over that of momentum theory, as measured', 'inducedFactor', '-', '-');
  add('blade-drag-scatter', 'Share by which the drag of the main blades may still differ', 'dragScatter', '-', '%');
  add('blade-inflow-scatter', 'Share by which the induced power of the main rotor may still differ', 'inducedScatter', '-', '%');
  add('band-narrowed', 'Share of its width that the band of the power has lost by measuring', 'narrowing', '-', '%');
  if (pitch) add('pitch-deviation', 'Collective measured less collective computed', 'pitchDeviation', 'rad', '°');
}

/** Figures and all that they stand on, in the order in which they were computed. */
function onlyNeeded(builder: Builder, names: readonly string[]): readonly Figure[] {
  const needed = new Set<string>();
  const walk = (input: FigureInput): void => {
    if ('figure' in input) visit(input.figure);
    else if ('list' in input) for (const row of input.list) Object.values(row).forEach(walk);
    else if ('record' in input) Object.values(input.record).forEach(walk);
  };
  const visit = (name: string): void => {
    if (needed.has(name)) return;
    needed.add(name);
    Object.values(builder.get(name)?.inputs ?? {}).forEach(walk);
  };
  names.forEach(visit);
  return builder.all().filter(({ name }) => needed.has(name));
}

function asFlown(figure: Figure): Figure {
  const renamed = (input: FigureInput): FigureInput => {
    if ('figure' in input) return { figure: FLOWN + input.figure };
    if ('list' in input) return { list: input.list.map(rowOf) };
    return 'record' in input ? { record: rowOf(input.record) } : input;
  };
  const rowOf = (row: Readonly<Record<string, FigureInput>>): Record<string, FigureInput> => Object.fromEntries(Object.entries(row).map(([name, input]) => [name, renamed(input)]));
  return { ...figure, name: FLOWN + figure.name, title: `${figure.title}; when it was measured`, inputs: rowOf(figure.inputs) };
}
