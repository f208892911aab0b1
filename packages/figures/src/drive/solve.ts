import { remembered, type EntryPath, type Finding, type Machine, type Rotor } from '@rotorwright/machine';
import { dot, compareRatios, ratio, ratioText, ratioToNumber, solveTrain, type Contradiction, type Ratio, type TrainCoupling } from '@rotorwright/mechanics';
import { findingAt } from './finding.ts';
import { legsOf, type Leg } from './legs.ts';
import { reach, type Hop, type Reach } from './reach.ts';

/**
 * driven        engine or motor turns everything
 * clutch-open   the engine idles below the speed at which its clutch grips
 * autorotation  the main rotor turns what it can; clutches are open, one-way clutches overrun
 */
export type DriveState = 'driven' | 'clutch-open' | 'autorotation';

/** How one shaft moves in one state. */
export interface Motion {
  readonly shaft: string;
  /**
   * turns         with the source
   * stands        decoupled: nothing turns it in this state
   * unknown       it turns, how fast the file does not settle; `missing` says what would
   * contradicted  two ways to it ask for different speeds
   */
  readonly condition: 'turns' | 'stands' | 'unknown' | 'contradicted';
  /** Speed over that of the source, without sign; only for `turns`. */
  readonly ratio?: Ratio;
  /** The same as text: "7/58". */
  readonly exact?: string;
  /** The same as a number. */
  readonly factor?: number;
  /** 1 when it turns right-handed about its axis, −1 left-handed. */
  readonly sense?: 1 | -1;
  /** The way on which the motion comes from the source. */
  readonly path: readonly Hop[];
  /** Entries that would make the speed known. */
  readonly missing: readonly EntryPath[];
  /** Entries that would make the sense known. */
  readonly missingForSense: readonly EntryPath[];
}

export interface StateSolution {
  readonly state: DriveState;
  /** Shaft whose speed the ratios refer to. */
  readonly source: string;
  readonly motions: ReadonlyMap<string, Motion>;
}

export interface DriveSource {
  readonly kind: 'engine' | 'motor';
  readonly shaft: string;
  readonly path: EntryPath;
  /** Governed speed and idling speed, rad/s. */
  readonly speed?: number;
  readonly idle?: number;
}

export interface DriveSolution {
  readonly source?: DriveSource;
  readonly mainRotor?: Rotor;
  readonly tailRotor?: Rotor;
  /** Only the states that this machine has: no clutch, no `clutch-open`. */
  readonly states: ReadonlyMap<DriveState, StateSolution>;
  readonly legs: ReadonlyMap<string, Leg>;
  readonly findings: readonly Finding[];
}

/** What turns the machine; undefined when the file names neither engine nor motor on a known shaft. */
export function sourceOf(machine: Machine): DriveSource | undefined {
  const { engine, motor } = machine.power;
  if (engine && machine.shafts.has(engine.on)) {
    return { kind: 'engine', shaft: engine.on, path: engine.path, ...(engine.speed === undefined ? {} : { speed: engine.speed }), ...(engine.idle === undefined ? {} : { idle: engine.idle }) };
  }
  if (motor && machine.shafts.has(motor.on)) return { kind: 'motor', shaft: motor.on, path: motor.path, ...(motor.speed === undefined ? {} : { speed: motor.speed }) };
  return undefined;
}

/** The rotor named `main`, else the largest; and the one named `tail`, else the largest of the rest. */
export function rotorsOf(machine: Machine): { readonly main?: Rotor; readonly tail?: Rotor } {
  const largest = (rotors: readonly Rotor[]): Rotor | undefined => rotors.toSorted((a, b) => (b.diameter ?? 0) - (a.diameter ?? 0))[0];
  const all = [...machine.rotors.values()].filter((rotor) => machine.shafts.has(rotor.on));
  const main = all.find((rotor) => rotor.id === 'main') ?? largest(all.filter((rotor) => rotor.id !== 'tail'));
  const tail = all.find((rotor) => rotor.id === 'tail') ?? largest(all.filter((rotor) => rotor !== main));
  return { ...(main ? { main } : {}), ...(tail ? { tail } : {}) };
}

/**
 * Solves the drive in each of its states: exact speed of every shaft over that of the source, sense of rotation,
 * and what is decoupled. Magnitudes do not wait for directions.
 */
export const solveDrive = remembered((machine: Machine): DriveSolution => {
  const { legs, findings: legFindings } = legsOf(machine);
  const findings: Finding[] = [...legFindings];
  const source = sourceOf(machine);
  const { main, tail } = rotorsOf(machine);
  const states = new Map<DriveState, StateSolution>();
  const found = new Set<string>();
  const solve = (state: DriveState, shaft: string, sense: 1 | -1 | undefined, missingSense: readonly EntryPath[]): void => {
    states.set(state, solveState(machine, legs, state, shaft, sense, missingSense, findings, found));
  };

  if (source) {
    const turns = (machine.power.engine ?? machine.power.motor)?.turns;
    const axis = machine.shafts.get(source.shaft)!.axis;
    const along = turns && axis ? dot(turns, axis) : 0;
    const missing = [...(turns ? [] : [`${source.path}.turns`]), ...(axis ? [] : [`${machine.shafts.get(source.shaft)!.path}.axis`])];
    if (turns && axis && Math.abs(along) < 0.5) {
      findings.push(findingAt(machine, 'drive/axis', `${source.path}.turns`, { shaft: source.shaft, reason: `The ${source.kind} is said to turn about a line across the axis of ${source.shaft}.`, right: `Give its sense as seen along the axis of ${source.shaft}.` }));
      missing.push(`${source.path}.turns`);
    }
    const sense = missing.length > 0 ? undefined : along > 0 ? 1 : -1;
    solve('driven', source.shaft, sense, missing);
    if ([...legs.values()].some((leg) => leg.coupling.kind === 'centrifugal-clutch')) solve('clutch-open', source.shaft, sense, missing);
    findings.push(...undriven(machine, legs, states.get('driven')!));
  }
  if (main) {
    const driven = states.get('driven')?.motions.get(main.on);
    solve('autorotation', main.on, driven?.sense, driven ? driven.missingForSense : ['power']);
  }
  return { ...(source ? { source } : {}), ...(main ? { mainRotor: main } : {}), ...(tail ? { tailRotor: tail } : {}), states, legs, findings };
});

function solveState(
  machine: Machine, legs: ReadonlyMap<string, Leg>, state: DriveState, source: string,
  sourceSense: 1 | -1 | undefined, missingSense: readonly EntryPath[], findings: Finding[], found: Set<string>,
): StateSolution {
  const numbers = new Map([...machine.shafts.keys()].map((shaft, index) => [shaft, index]));
  const reached = reach(legs, source, { clutchesOpen: state !== 'driven' });
  // Legs by which reached shafts are tied to each other; a one-way clutch off the way of the motion may overrun.
  const tied = [...legs.values()].filter((leg) => reached.engaged.has(leg.coupling.id));
  const sized = tied.filter((leg) => leg.multiply !== undefined && leg.divide !== undefined);
  const signed = tied.filter((leg) => leg.sense !== undefined);
  const train = (list: readonly Leg[], ratioOf: (leg: Leg) => Ratio): TrainCoupling[] =>
    list.map((leg) => ({ a: numbers.get(leg.driver)!, b: numbers.get(leg.driven)!, ratio: ratioOf(leg), engaged: true }));
  const speeds = solveTrain(numbers.size, train(sized, (leg) => ratio(leg.multiply!, leg.divide!)), numbers.get(source)!);
  const senses = solveTrain(numbers.size, train(signed, (leg) => ratio(leg.sense!)), numbers.get(source)!);

  const jammed = new Set<string>();
  const note = (list: readonly Leg[], contradictions: readonly Contradiction[], what: 'speed' | 'sense'): void => {
    for (const { shaft, couplings, ratios } of contradictions) {
      const loop = couplings.map((index) => list[index]!);
      reportLoop(machine, loop, [...numbers.keys()][shaft]!, ratios, what, findings, found);
      for (const jam of jammedShafts(loop, reached)) jammed.add(jam);
    }
  };
  note(sized, speeds.contradictions, 'speed');
  note(signed, senses.contradictions, 'sense');
  for (const leg of reached.overrunning) {
    const own = speeds.ratios[numbers.get(leg.driver)!]!;
    const other = speeds.ratios[numbers.get(leg.driven)!]!;
    if (own === 'decoupled' || other === 'decoupled' || compareRatios(own, other) <= 0) continue;
    // The one-way clutch would have to slip in the direction in which it locks.
    reportLoop(machine, [leg], leg.driven, [other, own], 'speed', findings, found);
    jammed.add(leg.driven);
  }

  const motions = new Map<string, Motion>();
  for (const [shaft, index] of numbers) {
    const path = reached.paths.get(shaft);
    if (!path) {
      motions.set(shaft, { shaft, condition: 'stands', path: [], missing: [], missingForSense: [] });
      continue;
    }
    const speed = speeds.ratios[index]!;
    const sense = senses.ratios[index]!;
    const missing = [...new Set(path.flatMap((hop) => hop.leg.missing))];
    const missingForSense = [...new Set([...missingSense, ...path.flatMap((hop) => hop.leg.missingForSense)])];
    const condition = jammed.has(shaft) || path.some((hop) => jammed.has(hop.from)) ? 'contradicted' : speed === 'decoupled' ? 'unknown' : 'turns';
    motions.set(shaft, {
      shaft,
      condition,
      ...(condition === 'turns' && speed !== 'decoupled' ? { ratio: speed, exact: ratioText(speed), factor: ratioToNumber(speed) } : {}),
      ...(condition !== 'contradicted' && sense !== 'decoupled' && sourceSense ? { sense: (sense.numerator > 0n ? sourceSense : -sourceSense) as 1 | -1 } : {}),
      path,
      missing,
      missingForSense,
    });
  }
  return { state, source, motions };
}

/** Shafts of a contradictory loop, without the one at which the motion enters it. */
function jammedShafts(loop: readonly Leg[], reached: Reach): readonly string[] {
  const shafts = [...new Set(loop.flatMap((leg) => [leg.driver, leg.driven]))];
  const depth = (shaft: string): number => reached.paths.get(shaft)?.length ?? Infinity;
  const entry = shafts.toSorted((a, b) => depth(a) - depth(b))[0];
  return shafts.filter((shaft) => shaft !== entry);
}

function reportLoop(machine: Machine, loop: readonly Leg[], shaft: string, ratios: readonly [Ratio, Ratio], what: 'speed' | 'sense', findings: Finding[], found: Set<string>): void {
  const couplings = loop.map((leg) => leg.coupling.id);
  const key = couplings.toSorted().join(' ');
  // The same loop jams in every state, and a wrong count is not told a second time as a wrong sense.
  if (found.has(key)) return;
  found.add(key);
  const text = (value: Ratio): string => (what === 'speed' ? `${shaft} at ${ratioText(value)} of the source` : value.numerator > 0n ? `${shaft} one way` : `${shaft} the other way`);
  findings.push(findingAt(machine, 'drive/loop', loop.at(-1)!.coupling.path, { loop: couplings, shaft, ratioOne: text(ratios[0]), ratioTwo: text(ratios[1]), what }));
}

/** Shafts that nothing turns while the engine runs; a starter, which itself can turn the engine and no rotor, is none. */
function undriven(machine: Machine, legs: ReadonlyMap<string, Leg>, driven: StateSolution): Finding[] {
  const findings: Finding[] = [];
  for (const motion of driven.motions.values()) {
    if (motion.condition !== 'stands') continue;
    const turnsWith = reach(legs, motion.shaft, { clutchesOpen: false }).paths;
    const still = [...machine.rotors.values()].some((rotor) => turnsWith.has(rotor.on) && driven.motions.get(rotor.on)?.condition === 'stands');
    if (turnsWith.has(driven.source) && !still) continue;
    findings.push(findingAt(machine, 'drive/undriven', machine.shafts.get(motion.shaft)!.path, { shaft: motion.shaft, source: driven.source }));
  }
  return findings;
}
