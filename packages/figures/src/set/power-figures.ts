import type { Battery, Coupling, Engine, Motor, Rotor } from '@rotorwright/machine';
import type { DriveSolution, DriveSource, Motion } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Builder, type Draft } from './builder.ts';
import { optional } from './tail-figures.ts';

/** What gets through a stage when the file does not say: clutches that grip and rigid joints lose nothing. */
export const usualEfficiency: Readonly<Partial<Record<Coupling['kind'], number>>> = { external: 0.98, internal: 0.985, bevel: 0.97, belt: 0.97 };
const practice = 'common practice, no source';

const cases = [
  ['', ''],
  ['-low', ', low'],
  ['-high', ', high'],
] as const;

type Inputs = Readonly<Record<string, FigureInput>>;

const nameOf = (source: DriveSource): string => (source.kind === 'engine' ? 'the engine' : 'the motor');

/** What engine or motor can give at its speed, in the air of the day, less what the governor keeps back. */
export function addPowerAvailable(builder: Builder, source: DriveSource): void {
  const { engine, motor, battery } = builder.machine.power;
  const draft = { name: 'power-available', title: `Power that ${nameOf(source)} can give, the reserve of the governor kept back`, unit: 'W', shown: 'W' };
  if (source.kind === 'engine' && engine) builder.add({ ...draft, ...engineDraft(engine) });
  else if (motor) builder.add({ ...draft, ...motorDraft(motor, battery, { torque: { constant: 0, unit: 'N·m', source: 'the load does not enter what the motor can give' } }), output: 'powerAvailable' });
}

function engineDraft(engine: Engine): Pick<Draft, 'calculation' | 'output' | 'inputs' | 'missing'> {
  const { path, curve } = engine;
  const points: FigureInput | undefined = curve && {
    list: curve.map((point) => ({ speed: { entry: `${point.path}.speed`, value: point.speed, unit: 'rad/s' }, power: { entry: `${point.path}.power`, value: point.power, unit: 'W' } })),
  };
  const best = engine.bestSpeed;
  const middle: FigureInput | undefined = best?.min === undefined || best.max === undefined ? entry(`${path}.speed`, engine.speed, 'rad/s') : { entry: `${path}.best`, value: (best.min + best.max) / 2, unit: 'rad/s', as: 'middle of' };
  const shape = points ? { inputs: { curve: points }, missing: [] } : gather([['peakPower', entry(`${path}.power`, engine.power, 'W'), `${path}.curve`], ['peakSpeed', middle, `${path}.best`]]);
  return {
    calculation: 'engine-power', output: 'available', missing: shape.missing,
    inputs: {
      ...shape.inputs,
      speed: { figure: `speed ${engine.on}` },
      dryPressure: { figure: 'dry-air-pressure' },
      temperature: { figure: 'air-temperature' },
      ...optional('displacement', entry(`${path}.displacement`, engine.displacement, 'm³')),
      ...optional('reserve', entry(`${path}.reserve`, engine.reserve, '-')),
    },
  };
}

/** The motor on its pack, as `electric-drive` asks for it. */
export function motorDraft(motor: Motor, battery: Battery | undefined, load: Inputs): { readonly calculation: string; readonly inputs: Inputs; readonly missing: readonly string[] } {
  const of = (key: string): string => `${motor.path}.${key}`;
  const { inputs, missing } = gather([
    ['speedConstant', entry(of('constant'), motor.speedConstant, 'rad/(s·V)'), of('constant')],
    ['resistance', entry(of('resistance'), motor.resistance, 'Ω'), of('resistance')],
    ['noLoadCurrent', entry(of('idle-current'), motor.noLoadCurrent, 'A'), of('idle-current')],
    ['cells', entry('power.battery.cells', battery?.cells, '-'), 'power.battery.cells'],
    ['packResistance', entry('power.battery.resistance', battery?.resistance, 'Ω'), 'power.battery.resistance'],
  ]);
  return {
    calculation: 'electric-drive', missing,
    inputs: {
      ...inputs,
      ...optional('cellVoltage', cellVoltage(battery)),
      ...optional('controllerResistance', entry(of('controller-resistance'), motor.controllerResistance, 'Ω')),
      wantedSpeed: { figure: `speed ${motor.on}` },
      reserve: entry(of('reserve'), motor.reserve, '-') ?? { constant: 0.1, unit: '-', source: practice },
      ...load,
    },
  };
}

const cellVoltage = (battery: Battery | undefined): FigureInput | undefined =>
  battery?.voltage === undefined || battery.cells === undefined ? undefined : { entry: 'power.battery.voltage', value: battery.voltage / battery.cells, unit: 'V', as: 'share of each cell in' };

/** What engine or motor must give in hover: both rotors, the losses on the way to them, the cooling fan. */
export function addPowerNeeded(builder: Builder, drive: DriveSolution, source: DriveSource, main: Rotor, tail: Rotor | undefined): void {
  const { engine } = builder.machine.power;
  const motions = drive.states.get('driven')!.motions;
  const loads = (band: string): readonly Inputs[] => [
    { power: { figure: `hover-power${band} ${main.id}` }, stages: stagesTo(motions.get(main.on)) },
    ...(tail ? [{ power: { figure: `tail-power${band} hover` }, stages: stagesTo(motions.get(tail.on)) }] : []),
  ];
  const fan: Inputs = engine?.fan === undefined ? {} : {
    fan: { entry: `${engine.path}.fan`, value: engine.fan, unit: 'W' },
    ...optional('fanSpeed', entry(`${engine.path}.speed`, engine.speed, 'rad/s')),
  };
  const named = nameOf(source);
  const missing = tail ? [] : ['rotors.tail'];
  for (const [band, words] of cases) {
    const inputs = { loads: { list: loads(band) }, ...fan, density: { figure: 'air-density' }, speed: { figure: `speed ${source.shaft}` } };
    const add = (name: string, title: string, unit: string, shown: string, output: string, more: Inputs = {}): void =>
      void builder.add({ name: `${name} hover`, title: `${title}${words}, hovering`, unit, shown, calculation: 'power-needed', output, inputs: { ...inputs, ...more }, missing });
    const against: Inputs = { available: { figure: 'power-available' } };
    add(`power-needed${band}`, `Power needed of ${named}`, 'W', 'W', 'power');
    add(`torque-needed${band}`, `Torque needed of ${named}`, 'N·m', 'N·m', 'torque');
    if (band === '') {
      add('power-lost', 'Power lost in gears and belts', 'W', 'W', 'losses');
      add('rotor-power-available', `Power that ${inSentence(main.title)} can have`, 'W', 'W', 'firstAvailable', against);
    }
    if (band === '-high') add('power-in-hand', `Power available over power needed of ${named}`, '-', '-', 'inHand', against);
  }
}

/** Stages on a way, as `power-needed` asks for them. */
function stagesTo(motion: Motion | undefined): FigureInput {
  return {
    list: (motion?.path ?? []).flatMap(({ leg: { coupling } }): Inputs[] => {
      if (coupling.efficiency !== undefined) return [{ efficiency: { entry: `${coupling.path}.efficiency`, value: coupling.efficiency, unit: '-' } }];
      const usual = usualEfficiency[coupling.kind];
      return usual === undefined ? [] : [{ efficiency: { constant: usual, unit: '-', source: `${coupling.title}: ${practice}` } }];
    }),
  };
}

/** Band of a time or flow, its words, and the band of the power that it comes from. */
const turned = [
  ['', '', ''],
  ['-low', ', low', '-high'],
  ['-high', ', high', '-low'],
] as const;
const alone: FigureInput = { constant: 1, unit: '-', source: 'hover alone' };

/** How long tank or pack last in hover, and what motor and pack go through. */
export function addEndurance(builder: Builder, source: DriveSource): void {
  const { engine, motor, battery } = builder.machine.power;
  if (source.kind === 'engine' && engine) addFuel(builder, engine);
  else if (motor) addPack(builder, motor, battery);
}

function addFuel(builder: Builder, engine: Engine): void {
  const { tank } = builder.machine.power;
  const { inputs, missing } = gather([
    ['volume', entry('power.tank.volume', tank?.volume, 'm³'), 'power.tank.volume'],
    ['density', entry('power.tank.density', tank?.density, 'kg/m³'), 'power.tank.density'],
    ['specificConsumption', entry(`${engine.path}.consumption`, engine.consumption, 'kg/J'), `${engine.path}.consumption`],
  ]);
  const usableFraction = entry('power.tank.usable', tank?.usable, '-') ?? { constant: 0.85, unit: '-', source: practice };
  const burning = (band: string): Inputs => ({ profile: { list: [{ power: { figure: `power-needed${band} hover` }, share: alone }] }, fuel: { record: { ...inputs, usableFraction } } });
  for (const [band, words, from] of turned) {
    builder.add({ name: `endurance${band} hover`, title: `Time that a full tank lasts${words}, hovering`, unit: 's', shown: 'min', calculation: 'endurance', output: 'time', inputs: burning(from), missing });
    builder.add({ name: `fuel-flow${band} hover`, title: `Fuel flow${words}, hovering`, unit: 'kg/s', shown: 'g/min', calculation: 'endurance', output: 'massFlow', inputs: burning(band), missing });
  }
}

function addPack(builder: Builder, motor: Motor, battery: Battery | undefined): void {
  const running = (band: string) => motorDraft(motor, battery, { torque: { figure: `torque-needed${band} hover` } });
  for (const [band, words] of cases) {
    builder.add({ name: `pack-power${band} hover`, title: `Power drawn from the pack${words}, hovering`, unit: 'W', shown: 'W', output: 'inputPower', ...running(band) });
    builder.add({ name: `pack-current${band} hover`, title: `Current drawn from the pack${words}, hovering`, unit: 'A', shown: 'A', output: 'packCurrent', ...running(band) });
  }
  builder.add({ name: 'pack-voltage hover', title: 'Voltage of the pack under load, hovering, high', unit: 'V', shown: 'V', output: 'packVoltage', ...running('-high') });
  builder.add({ name: 'governor-headroom hover', title: 'Duty left to the governor, hovering, high', unit: '-', shown: '%', output: 'headroom', ...running('-high') });
  builder.add({ name: 'motor-heat hover', title: 'Heat in motor and controller, hovering, high', unit: 'W', shown: 'W', output: 'losses', ...running('-high') });
  const { inputs, missing } = gather([
    ['cells', entry('power.battery.cells', battery?.cells, '-'), 'power.battery.cells'],
    ['capacity', entry('power.battery.capacity', battery?.capacity, 'A·s'), 'power.battery.capacity'],
    ['resistance', entry('power.battery.resistance', battery?.resistance, 'Ω'), 'power.battery.resistance'],
    ['usableFraction', entry('power.battery.usable', battery?.usable, '-') ?? { constant: 0.8, unit: '-', source: practice }, ''],
    ['startCharge', { constant: 1, unit: '-', source: 'a full pack' }, ''],
    ['cellVoltage', cellVoltage(battery) ?? { constant: 3.7, unit: 'V', source: 'mean voltage of a lithium-polymer cell, common practice' }, ''],
  ]);
  for (const [band, words, from] of turned) {
    const profile: FigureInput = { list: [{ power: { figure: `pack-power${from} hover` }, share: alone }] };
    builder.add({ name: `endurance${band} hover`, title: `Time that a full pack lasts${words}, hovering`, unit: 's', shown: 'min', calculation: 'endurance', output: 'time', inputs: { profile, battery: { record: inputs } }, missing });
  }
}
