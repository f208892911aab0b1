import { remembered, type Finding, type Machine } from '@rotorwright/machine';
import { findingAt } from '../drive/finding.ts';
import { solveDrive, type DriveState } from '../drive/solve.ts';
import { ratioToNumber } from '@rotorwright/mechanics';
import { editDistance, showQuantity } from '@rotorwright/units';
import type { Figure } from '../figure.ts';
import { addBalance } from './balance-figures.ts';
import { builderFor, type Memory } from './builder.ts';
import { Outcomes } from './outcomes.ts';
import { addControls } from './control-figures.ts';
import { asTried, type Conditions } from './conditions.ts';
import { addDriveFigures } from './drive-figures.ts';
import type { FigureSet } from './figure-set.ts';
import { addFlight } from './flight-figures.ts';
import { addHover } from './hover-figures.ts';
import { addAir, addRotor } from './rotor-figures.ts';
import { standing } from './standing-figures.ts';

/** Every figure that follows from the file, with its working. What cannot be known says what is missing. */
export function figures(machine: Machine, conditions: Conditions = {}): FigureSet {
  return figuresWith(machine, conditions, { before: new Outcomes(), now: new Outcomes() });
}

/**
 * As `figures`, for many conditions one after the other: a calculation whose inputs are those of the last time is not done
 * again. A drag of the rotor speed asks no gear for its centre distance.
 */
export function prepareFigures(machine: Machine): (conditions?: Conditions) => FigureSet {
  let before = new Outcomes();
  return (conditions = {}) => {
    const now = new Outcomes();
    const set = figuresWith(machine, conditions, { before, now });
    before = now;
    return set;
  };
}

function figuresWith(machine: Machine, conditions: Conditions, memory: Memory): FigureSet {
  const state = conditions.state ?? 'driven';
  const tried = asTried(machine, conditions);
  const drive = solveDrive(tried.fitted);
  const main = tried.machine.rotors.get('main');
  // What was measured in flight was measured on the machine as its file has it.
  const builder = builderFor(tried.machine, state === 'driven' ? standing.flown(machine) : [], memory);
  addDriveFigures(builder, drive, state, conditions);
  addAir(builder, conditions);
  for (const rotor of tried.machine.rotors.values()) if (builder.get(`speed ${rotor.on}`)) addRotor(builder, rotor);
  if (main && builder.get(`speed ${main.on}`)) {
    addHover(builder, main);
    if (state === 'driven') addFlight(builder, drive, main);
  }
  builder.take(standing.elements(tried.fitted));
  builder.take(standing.masses(tried.fitted));
  addBalance(builder, conditions);
  builder.take(standing.setUp(tried.fitted));
  addControls(builder);
  return {
    all: builder.all(),
    get: builder.get,
    outputs: builder.outputs,
    findings: [...tried.findings, ...drive.findings, ...flownUntold(machine), ...unknownLimits(tried.machine, builder.all()), ...(state === 'driven' ? exceeded(tried.machine, builder.get) : [])],
    state,
    conditions,
    machine: tried.machine,
    fitted: tried.fitted,
    drive,
  };
}

/** Limits of the file that the figures do not keep. A figure that is not known is not assessed, and no finding. */
function exceeded(machine: Machine, get: FigureSet['get']): readonly Finding[] {
  // What the centre of mass is bound to, it is bound to with the tank full and empty as well.
  const named = (of: string): readonly string[] => (of === 'centre-ahead' ? [of, `${of} full`, `${of} empty`] : [of]);
  return [...machine.limits.values()].flatMap((limit) => named(limit.of).map((name) => [limit, name] as const)).flatMap(([limit, name]): Finding[] => {
    const figure = get(name);
    const value = figure?.value;
    const { min = -Infinity, max = Infinity } = limit.window;
    if (!figure || value === undefined || (value >= min && value <= max)) return [];
    const show = (each: number): string => showQuantity(each, figure.shown, { significant: 6 });
    return [findingAt(machine, 'limit/exceeded', limit.path, { figure: figure.title, name: figure.name, value: show(value), limit: show(value > max ? max : min), ...(limit.source === undefined ? {} : { source: limit.source }) })];
  });
}

/** A flight that was measured, but not with which mass or at which rotor speed: it would be read anew with every change of the machine’s. */
const flownUntold = remembered((machine: Machine): readonly Finding[] => {
  const { hover } = machine.flown;
  if (!hover || (hover.fuelFlow === undefined && hover.current === undefined && hover.collective === undefined)) return [];
  const { source, states } = solveDrive(machine);
  const factor = states.get('driven')?.motions.get(machine.rotors.get('main')?.on ?? '')?.factor;
  return [
    ...(hover.mass !== undefined || machine.mass === undefined ? [] : [findingAt(machine, 'flown/mass', hover.path, { path: hover.path, mass: showQuantity(machine.mass, 'kg') })]),
    ...(hover.rotorSpeed !== undefined || source?.speed === undefined || factor === undefined ? [] : [findingAt(machine, 'flown/rotor-speed', hover.path, { path: hover.path, speed: showQuantity(source.speed * factor, 'rpm') })]),
  ];
});

/** Limits of figures that do not exist: a slip of the pen must not pass for a limit that is kept. */
function unknownLimits(machine: Machine, all: readonly Figure[]): readonly Finding[] {
  const names = all.map((figure) => figure.name);
  return [...machine.limits.values()].filter((limit) => !names.includes(limit.of)).map((limit) => {
    const nearest = names.toSorted((a, b) => editDistance(limit.of, a) - editDistance(limit.of, b))[0];
    return findingAt(machine, 'ref/unknown', `${limit.path}.of`, { wanted: 'figure', ref: limit.of, ...(nearest === undefined ? {} : { nearest }) });
  });
}

/** A drive that is solved once, for speeds many times a second. */
export interface PreparedDrive {
  readonly state: DriveState;
  /** In the order of `factors`. */
  readonly shafts: readonly string[];
  /** Signed speed of each shaft over that of the source, about its axis; without sign where the sense is not known. NaN where the speed is not known. */
  readonly factors: Float64Array;
}

/** Solves the drive once, so that a drag costs a multiplication for each shaft. */
export function prepareDrive(machine: Machine, state: DriveState = 'driven'): PreparedDrive {
  const motions = [...(solveDrive(machine).states.get(state)?.motions.values() ?? [])];
  const factor = (motion: (typeof motions)[number]): number =>
    motion.condition === 'stands' ? 0 : motion.ratio ? ratioToNumber(motion.ratio) * (motion.sense ?? 1) : Number.NaN;
  return { state, shafts: motions.map((motion) => motion.shaft), factors: Float64Array.from(motions, factor) };
}

/**
 * Speed of every shaft whose speed is known, rad/s, signed about its axis.
 *
 * @param sourceSpeed  [rad/s]
 */
export function speedsAt(prepared: PreparedDrive, sourceSpeed: number): ReadonlyMap<string, number> {
  const speeds = new Map<string, number>();
  prepared.shafts.forEach((shaft, index) => {
    const speed = prepared.factors[index]! * sourceSpeed;
    if (Number.isFinite(speed)) speeds.set(shaft, speed);
  });
  return speeds;
}
