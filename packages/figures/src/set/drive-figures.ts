import type { Coupling } from '@rotorwright/machine';
import { divideRatios, invertRatio, ratioText } from '@rotorwright/mechanics';
import { hasTeeth } from '../drive/legs.ts';
import type { Hop } from '../drive/reach.ts';
import type { DriveSolution, DriveState, Motion } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Builder } from './builder.ts';
import type { Conditions } from './conditions.ts';

const byHand = 'set by hand';
const unchanged = 'clutches that grip and rigid joints pass a speed on unchanged';

/** Speeds, ratios and frequencies of the drive in one state. */
export function addDriveFigures(builder: Builder, drive: DriveSolution, state: DriveState, conditions: Conditions): void {
  const { machine } = builder;
  const solution = drive.states.get(state);
  if (!solution) {
    // Nothing turns the machine as far as the file says: every shaft waits for that.
    for (const shaft of machine.shafts.values()) builder.given(`speed ${shaft.id}`, `Speed of ${inSentence(shaft.title)}`, 'rad/s', 'rpm', undefined, [missingState(drive, state)]);
    return;
  }
  addSourceSpeed(builder, drive, state, solution.source, conditions);
  for (const motion of solution.motions.values()) if (motion.shaft !== solution.source) addSpeed(builder, motion, solution.source);
  for (const motion of solution.motions.values()) addRatios(builder, drive, motion, solution.source, state);
  for (const coupling of machine.couplings.values()) addCoupling(builder, coupling);
  for (const rotor of machine.rotors.values()) {
    const { inputs, missing } = gather([
      ['blades', entry(`${rotor.path}.blades`, rotor.blades, '-'), `${rotor.path}.blades`],
      ['speed', speedInput(builder, rotor.on), `speed ${rotor.on}`],
    ]);
    builder.add({ name: `blade-passing ${rotor.id}`, title: `Blade-passing frequency of ${inSentence(rotor.title)}`, unit: 'Hz', shown: 'Hz', calculation: 'blade-passing', output: 'frequency', inputs, missing });
  }
  addSensors(builder, drive);
}

const missingState = (drive: DriveSolution, state: DriveState): string => (state === 'autorotation' ? 'rotors.main' : drive.source ? 'drive' : 'power');

const speedInput = (builder: Builder, shaft: string): FigureInput | undefined => (builder.get(`speed ${shaft}`) ? { figure: `speed ${shaft}` } : undefined);

function addSourceSpeed(builder: Builder, drive: DriveSolution, state: DriveState, shaft: string, conditions: Conditions): void {
  const title = `Speed of ${inSentence(builder.machine.shafts.get(shaft)!.title)}`;
  const name = `speed ${shaft}`;
  const source = drive.source;
  if (state === 'autorotation') {
    const driven = drive.states.get('driven')?.motions.get(shaft);
    if (conditions.rotorSpeed !== undefined || !driven || !source) {
      builder.given(name, title, 'rad/s', 'rpm', conditions.rotorSpeed === undefined ? undefined : { constant: conditions.rotorSpeed, unit: 'rad/s', source: byHand }, ['power']);
      return;
    }
    // The rotor starts into autorotation at the speed at which it was driven.
    const { inputs, missing } = gather([['inputSpeed', sourceInput(drive, 'driven', conditions), `${source.path}.speed`]]);
    builder.add({ name, title, unit: 'rad/s', shown: 'rpm', ...ratioOf(driven.path, 'outputSpeed', inputs), missing: [...missing, ...driven.missing], ...contradiction(driven) });
    return;
  }
  const wanted = state === 'clutch-open' ? 'idle' : 'speed';
  builder.given(name, title, 'rad/s', 'rpm', sourceInput(drive, state, conditions), [`${source?.path ?? 'power'}.${wanted}`]);
}

function sourceInput(drive: DriveSolution, state: DriveState, conditions: Conditions): FigureInput | undefined {
  if (conditions.sourceSpeed !== undefined) return { constant: conditions.sourceSpeed, unit: 'rad/s', source: byHand };
  const source = drive.source;
  return source && (state === 'clutch-open' ? entry(`${source.path}.idle`, source.idle, 'rad/s') : entry(`${source.path}.speed`, source.speed, 'rad/s'));
}

/** Stages of a way: only what has teeth; driver and driven as the motion meets them. */
function stagesOf(path: readonly Hop[]): readonly Readonly<Record<string, FigureInput>>[] {
  return path.filter((hop) => hasTeeth(hop.leg.coupling)).map(({ leg: { coupling }, forward }) => {
    const [giving, taking] = forward ? [coupling.driver, coupling.driven] : [coupling.driven, coupling.driver];
    const driver = entry(`${giving.path}.teeth`, giving.teeth, '-');
    const driven = entry(`${taking.path}.teeth`, taking.teeth, '-');
    return { ...(driver ? { driver } : {}), ...(driven ? { driven } : {}) };
  });
}

/** The calculation that makes a speed or a ratio out of a way. */
function ratioOf(path: readonly Hop[], output: 'outputSpeed' | 'ratio', rest: Readonly<Record<string, FigureInput>>): { readonly calculation: string; readonly output: string; readonly inputs: Readonly<Record<string, FigureInput>> } {
  const stages = stagesOf(path);
  if (stages.length > 0) return { calculation: 'drive-ratio', output, inputs: { stages: { list: stages }, ...rest } };
  const { inputSpeed, ...others } = rest;
  const one: FigureInput = { constant: 1, unit: '-', source: unchanged };
  return { calculation: 'shaft-speed', output: output === 'ratio' ? 'ratio' : 'speed', inputs: { ratioNumerator: one, ratioDenominator: one, ...(inputSpeed ? { sourceSpeed: inputSpeed } : {}), ...others } };
}

const contradiction = (motion: Motion): { readonly warnings?: readonly string[] } =>
  motion.condition === 'contradicted' ? { warnings: [`Two ways to ${motion.shaft} ask for different speeds.`] } : {};

function addSpeed(builder: Builder, motion: Motion, source: string): void {
  const { shaft, condition, path } = motion;
  const name = `speed ${shaft}`;
  const title = `Speed of ${inSentence(builder.machine.shafts.get(shaft)!.title)}`;
  if (condition === 'stands') {
    builder.given(name, title, 'rad/s', 'rpm', { constant: 0, unit: 'rad/s', source: 'nothing turns it in this state' }, []);
    return;
  }
  const missing = condition === 'contradicted' ? ['drive'] : motion.missing;
  builder.add({ name, title, unit: 'rad/s', shown: 'rpm', ...(motion.exact === undefined ? {} : { exact: motion.exact }), ...ratioOf(path, 'outputSpeed', { inputSpeed: { figure: `speed ${source}` } }), missing, ...contradiction(motion) });
}

/** Ratio to the source, and turns for each turn of the main rotor. */
function addRatios(builder: Builder, drive: DriveSolution, motion: Motion, source: string, state: DriveState): void {
  const { shaft, condition, path } = motion;
  if (condition === 'stands') return;
  const title = builder.machine.shafts.get(shaft)!.title;
  const any: FigureInput = { constant: 1, unit: 'rad/s', source: 'a ratio is the same at any speed' };
  const missing = condition === 'contradicted' ? ['drive'] : motion.missing;
  builder.add({ name: `ratio ${shaft}`, title: `Turns of ${inSentence(builder.machine.shafts.get(source)!.title)} for each turn of ${inSentence(title)}`, unit: '-', shown: '-', ...(motion.ratio ? { exact: ratioText(invertRatio(motion.ratio)) } : {}), ...ratioOf(path, 'ratio', { inputSpeed: any }), missing, ...contradiction(motion) });
  const main = drive.mainRotor && drive.states.get(state)?.motions.get(drive.mainRotor.on);
  if (!main || main.condition === 'stands') return;
  const between = wayBetween(path, main.path);
  builder.add({ name: `turns ${shaft}`, title: `Turns of ${inSentence(title)} for each turn of the main rotor`, unit: '-', shown: '-', ...exactBetween(motion, main), ...ratioOf(between, 'ratio', { inputSpeed: any }), missing: [...missingOf(between, main, motion)], ...contradiction(main), ...contradiction(motion) });
}

/** Turns of one shaft for each turn of another, exact. */
const exactBetween = (of: Motion, over: Motion): { readonly exact?: string } => (of.ratio && over.ratio ? { exact: ratioText(divideRatios(of.ratio, over.ratio)) } : {});

function missingOf(path: readonly Hop[], ...ends: readonly Motion[]): readonly string[] {
  if (ends.some((motion) => motion.condition === 'contradicted')) return ['drive'];
  return [...new Set(path.flatMap((hop) => hop.leg.missing))];
}

/** The way from one shaft to another of the same tree: back to where their ways part, then on. */
export function wayBetween(from: readonly Hop[], to: readonly Hop[]): readonly Hop[] {
  let shared = 0;
  while (from[shared] !== undefined && from[shared]!.leg === to[shared]?.leg) shared += 1;
  const back = from.slice(shared).toReversed().map((hop): Hop => ({ leg: hop.leg, forward: !hop.forward, from: hop.to, to: hop.from }));
  return [...back, ...to.slice(shared)];
}

function addCoupling(builder: Builder, coupling: Coupling): void {
  if (!hasTeeth(coupling) || !builder.get(`speed ${coupling.driver.on}`)) return;
  const { driver, driven, id, title } = coupling;
  const driverTeeth = entry(`${driver.path}.teeth`, driver.teeth, '-');
  const drivenTeeth = entry(`${driven.path}.teeth`, driven.teeth, '-');
  const speed = speedInput(builder, driver.on);
  if (coupling.kind === 'belt') {
    const tooth = gather([['pulleyTeeth', driverTeeth, `${driver.path}.teeth`], ['shaftSpeed', speed, `speed ${driver.on}`]]);
    builder.add({ name: `belt-tooth-frequency ${id}`, title: `Tooth frequency of ${inSentence(title)}`, unit: 'Hz', shown: 'Hz', calculation: 'belt-tooth-frequency', output: 'frequency', ...tooth });
    const length = entry(`${coupling.path}.belt-teeth`, coupling.beltTeeth, '-');
    builder.add({
      name: `belt-frequency ${id}`, title: `Turns of the belt of ${inSentence(title)}`, unit: 'Hz', shown: 'Hz', calculation: 'belt-tooth-frequency', output: 'beltFrequency',
      inputs: { ...tooth.inputs, ...(length ? { beltTeeth: length } : {}) }, missing: [...tooth.missing, ...(length ? [] : [`${coupling.path}.belt-teeth`])],
    });
    return;
  }
  builder.add({ name: `mesh-frequency ${id}`, title: `Mesh frequency of ${inSentence(title)}`, unit: 'Hz', shown: 'Hz', calculation: 'mesh-frequency', output: 'frequency', ...gather([['teeth', driverTeeth, `${driver.path}.teeth`], ['shaftSpeed', speed, `speed ${driver.on}`]]) });
  const driverIsPinion = (driver.teeth ?? 0) <= (driven.teeth ?? 0);
  builder.add({
    name: `hunting ${id}`, title: `Turns of the smaller gear of ${inSentence(title)} until the same teeth meet`, unit: '-', shown: '-', calculation: 'tooth-hunting', output: 'pinionTurnsToRepeat',
    ...gather([['teeth1', driverIsPinion ? driverTeeth : drivenTeeth, `${(driverIsPinion ? driver : driven).path}.teeth`], ['teeth2', driverIsPinion ? drivenTeeth : driverTeeth, `${(driverIsPinion ? driven : driver).path}.teeth`]]),
  });
}

function addSensors(builder: Builder, drive: DriveSolution): void {
  const motions = drive.states.get('driven')?.motions;
  for (const sensor of builder.machine.sensors.values()) {
    const magnets = entry(`${sensor.path}.magnets`, sensor.magnets, '-');
    const pulses = gather([['magnets', magnets, `${sensor.path}.magnets`], ['shaftSpeed', speedInput(builder, sensor.reads), `speed ${sensor.reads}`]]);
    builder.add({ name: `sensor-frequency ${sensor.id}`, title: `Pulses that ${inSentence(sensor.title)} sees in a second`, unit: 'Hz', shown: 'Hz', calculation: 'sensor-pulses', output: 'frequency', ...pulses });
    builder.given(`sensor-pulses ${sensor.id}`, `Pulses that ${inSentence(sensor.title)} sees in one turn of its shaft`, '-', '-', magnets, [`${sensor.path}.magnets`]);
    const read = motions?.get(sensor.reads);
    const main = drive.mainRotor && motions?.get(drive.mainRotor.on);
    const title = `Ratio that a governor asks for at ${inSentence(sensor.title)}: turns of ${sensor.reads} for each turn of the main rotor`;
    if (!read || !main || read.condition === 'stands' || main.condition === 'stands') {
      builder.given(`governor-ratio ${sensor.id}`, title, '-', '-', undefined, [drive.mainRotor ? 'drive' : 'rotors']);
      continue;
    }
    const way = wayBetween(read.path, main.path);
    builder.add({ name: `governor-ratio ${sensor.id}`, title, unit: '-', shown: '-', ...exactBetween(read, main), ...ratioOf(way, 'ratio', { inputSpeed: { constant: 1, unit: 'rad/s', source: 'a ratio is the same at any speed' } }), missing: missingOf(way, read, main), ...contradiction(read), ...contradiction(main) });
  }
}

