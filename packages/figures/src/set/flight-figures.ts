import type { Rotor } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { DriveSolution, DriveSource } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import { bladeInputs, radiusOf, type Gathered } from './blade-inputs.ts';
import { calibratedInputs } from './calibrated.ts';
import { addClutches } from './clutch-figures.ts';
import { entry, gather, type Builder } from './builder.ts';
import { hoverThrustInput } from './hover-figures.ts';
import { addEndurance, addPowerAvailable, addPowerNeeded } from './power-figures.ts';
import { addTail, optional } from './tail-figures.ts';

/** Everything that stands on the hover of the main rotor: tail, engine or motor, what is left over, fast flight. */
export function addFlight(builder: Builder, drive: DriveSolution, main: Rotor): void {
  const { source } = drive;
  if (!source || !drive.states.has('driven')) return;
  const tail = drive.tailRotor && builder.get(`speed ${drive.tailRotor.on}`) ? drive.tailRotor : undefined;
  addPowerAvailable(builder, source);
  if (tail) addTail(builder, tail, main);
  addPowerNeeded(builder, drive, source, main, tail);
  addClutches(builder, drive);
  addEndurance(builder, source);
  addLimits(builder, main);
  if (tail) addTailSpeeds(builder, main, tail, source);
  addFlightSpeeds(builder, main);
}

const havePower = { figure: 'rotor-power-available hover' };

/**
 * The inputs with the power that the rotor can have: for outputs that need it, and, where it is not known, without it for
 * those that do not.
 */
function withPower(builder: Builder, inputs: Readonly<Record<string, FigureInput>>): { readonly needing: typeof inputs; readonly sparing: typeof inputs } {
  const needing = { ...inputs, power: havePower };
  return { needing, sparing: builder.get(havePower.figure)?.value === undefined ? inputs : needing };
}

/** Blades of the main rotor, as they were measured where they were. */
function mainBlades(builder: Builder, main: Rotor): Gathered {
  const { inputs, missing } = bladeInputs(main);
  return { inputs: { ...inputs, ...calibratedInputs(builder, main) }, missing };
}

function addLimits(builder: Builder, main: Rotor): void {
  const blades = mainBlades(builder, main);
  const weight = gather([['weight', hoverThrustInput(builder, main), 'machine.mass']]);
  const inputs = { ...blades.inputs, ...weight.inputs, power: havePower, ...optional('maximumCollective', entry(`${main.path}.stops`, main.stops?.max, 'rad')) };
  const missing = [...blades.missing, ...weight.missing];
  const named = inSentence(main.title);
  builder.add({ name: `thrust-most ${main.id}`, title: `Most thrust of ${named}`, unit: 'N', shown: 'N', calculation: 'hover-limits', output: 'thrust', inputs, missing });
  builder.add({ name: `thrust-reserve ${main.id}`, title: `Most thrust of ${named} over ${builder.machine.verticalDragArea === undefined ? 'the weight' : 'that of hover'}`, unit: '-', shown: '-', calculation: 'hover-limits', output: 'reserve', inputs, missing });
  builder.add({ name: 'climb-rate', title: 'Rate of a straight climb with all power', unit: 'm/s', shown: 'm/s', calculation: 'hover-limits', output: 'climbRate', inputs, missing });
}

/** Shares of the present speed between which the tail is looked at. */
const BAND = { low: 0.55, high: 1.25 };

function addTailSpeeds(builder: Builder, main: Rotor, tail: Rotor, source: DriveSource): void {
  const of = (key: string): string => `${tail.path}.${key}`;
  const blades = mainBlades(builder, main);
  const speed = builder.get(`speed ${main.on}`)?.value;
  const end = (share: number): FigureInput | undefined => (speed === undefined ? undefined : { constant: share * speed, unit: 'rad/s', source: 'end of the band that is looked at' });
  const { inputs, missing } = gather([
    ['thrust', hoverThrustInput(builder, main), 'machine.mass'],
    ['tailRatio', builder.get(`turns ${tail.on}`) ? { figure: `turns ${tail.on}` } : undefined, 'drive'],
    ['arm', { figure: 'tail-arm' }, ''],
    ['tailBlades', entry(of('blades'), tail.blades, '-'), of('blades')],
    ['tailRadius', radiusOf(tail), of('diameter')],
    ['tailChord', entry(of('chord'), tail.chord, 'm'), of('chord')],
    ['maximumPitch', entry(of('stops'), tail.stops?.max, 'rad'), of('stops')],
  ]);
  const all = withPower(builder, { ...blades.inputs, ...optional('lowSpeed', end(BAND.low)), ...optional('highSpeed', end(BAND.high)), ...inputs, ...optional('blockage', entry(of('blockage'), tail.blockage, '-')) });
  const wanting = [...blades.missing, ...missing, ...(speed === undefined ? [`${source.path}.speed`] : [])];
  const named = inSentence(tail.title);
  const add = (name: string, title: string, output: string, from: keyof typeof all, unit = 'rad/s', shown = 'rpm'): void => void builder.add({ name, title, unit, shown, calculation: 'tail-speeds', output, inputs: all[from], missing: wanting });
  add('tail-least-speed hover', `Main rotor speed from which on ${named} holds hover`, 'leastSpeedHover', 'sparing');
  add('tail-least-speed full-power', `Main rotor speed from which on ${named} holds full power`, 'leastSpeedFull', 'needing');
  add('tail-fast-speed', `Main rotor speed from which on the tips of ${named} are too fast`, 'fastSpeed', 'sparing');
  add('tail-margin full-power', `Thrust available over thrust needed of ${named}, against full power`, 'fullMargin', 'needing', '-', '-');
}

function addFlightSpeeds(builder: Builder, main: Rotor): void {
  const { machine } = builder;
  const blades = mainBlades(builder, main);
  const { inputs, missing } = gather([
    ['mass', builder.mass, 'machine.mass'],
    ['dragArea', entry('machine.drag-area', machine.dragArea, 'm²'), 'machine.drag-area'],
    ['flapInertia', { figure: `blade-inertia ${main.id}` }, ''],
  ]);
  const all = withPower(builder, { ...blades.inputs, ...inputs });
  const wanting = [...blades.missing, ...missing];
  const add = (name: string, title: string, output: string, unit: string, from: keyof typeof all = 'sparing'): void => void builder.add({ name, title, unit, shown: unit, calculation: 'flight-speeds', output, inputs: all[from], missing: wanting });
  add('endurance-speed', 'Airspeed of the longest flight', 'enduranceSpeed', 'm/s');
  add('endurance-speed-power', `Power of ${inSentence(main.title)} at the airspeed of the longest flight`, 'endurancePower', 'W');
  add('range-speed', 'Airspeed of the farthest flight', 'rangeSpeed', 'm/s');
  add('range-speed-power', `Power of ${inSentence(main.title)} at the airspeed of the farthest flight`, 'rangePower', 'W');
  add('top-speed', 'Fastest level flight', 'topSpeed', 'm/s', 'needing');
}
