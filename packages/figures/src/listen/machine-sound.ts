import type { Coupling, EntryPath, Machine } from '@rotorwright/machine';
import { hasTeeth } from '../drive/legs.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { solveDrive, type DriveSolution } from '../drive/solve.ts';
import { withTeeth } from '../set/conditions.ts';
import { bearingSounds, type SoundBearing } from './bearing-sounds.ts';

/** Lines that one source of the machine makes, at whole multiples of one frequency. */
export interface SoundFamily {
  /** Stable name: `blades main`, `firing`, `teeth main-mesh`. */
  readonly id: string;
  /** What speaks, as a sentence would call it. */
  readonly title: string;
  readonly group: 'main' | 'tail' | 'engine' | 'mesh';
  readonly shaft: string;
  /** What of the file it is: coupling and parts, whose steps are worth a look. */
  readonly things: readonly string[];
  /** Frequency of the first line over the turns of the main rotor in a second. */
  readonly order: number;
  readonly harmonics: number;
  /** Orders of faint lines besides. */
  readonly faint?: readonly number[];
}

/** A tooth count that the file may have wrong, and what that would do to the ratio of tail or engine. */
export interface OtherCount {
  readonly group: 'tail' | 'engine';
  readonly factor: number;
  /** What would have to be otherwise: "Pinion and main gear: 13 teeth on bell instead of 14". */
  readonly id: string;
  readonly path: EntryPath;
  /** Orders that families of teeth would then have, by their id: only those that change. */
  readonly meshes: Readonly<Record<string, number>>;
}

/** What a machine sounds like, as far as its file says: all of it in turns of the main rotor. */
export interface MachineSound {
  readonly families: readonly SoundFamily[];
  /** Shafts by their turns for one of the main rotor: what names a line that no family explains. */
  readonly shafts: readonly { readonly shaft: string; readonly title: string; readonly order: number; readonly things: readonly string[] }[];
  readonly bearings: readonly SoundBearing[];
  /** Turns of the main rotor in a second that a recording is searched for, Hz. */
  readonly slowest: number;
  readonly fastest: number;
  readonly otherRatios: readonly OtherCount[];
  /** Whether a clutch may let the engine run ahead, or a belt the tail fall behind. */
  readonly slips: readonly ('tail' | 'engine')[];
  /** Entries without which the ear has less to go by. */
  readonly missing: readonly EntryPath[];
}

/** Where the file says no speed: rotors of one to two metres turn within these, Hz (common practice, no source). */
const anySpeed = { slowest: 8, fastest: 60 } as const;
/** How far below and above the speed of the file a rotor is looked for. */
const below = 0.35;
const above = 1.3;

/** The lines of a machine that a recording can be searched for; undefined when the file has no main rotor whose speed hangs together with anything. */
export function machineSound(machine: Machine): MachineSound | undefined {
  const drive = solveDrive(machine);
  const main = drive.mainRotor;
  if (main === undefined) return undefined;
  const order = ordersOf(drive);
  const families: SoundFamily[] = [];
  const missing: EntryPath[] = [];
  for (const rotor of machine.rotors.values()) {
    const turns = order(rotor.on);
    if (turns === undefined) continue;
    if (rotor.blades === undefined) {
      missing.push(`${rotor.path}.blades`);
      continue;
    }
    const isMain = rotor === main;
    const faint = rotor.blades === 1 ? [] : isMain ? [turns, turns * (rotor.blades + 1)] : [turns];
    families.push({ id: `blades ${rotor.id}`, title: `blades of ${inSentence(rotor.title)}`, group: isMain ? 'main' : 'tail', shaft: rotor.on, things: known(rotor.part, machine.shafts.get(rotor.on)?.part), order: turns * rotor.blades, harmonics: isMain ? 16 : 10, faint });
  }
  families.push(...sourceFamilies(machine, drive, order));
  for (const coupling of machine.couplings.values()) families.push(...toothFamilies(coupling, order));
  families.sort((a, b) => groupOrder.indexOf(a.group) - groupOrder.indexOf(b.group));
  if (drive.source === undefined) missing.push('power');
  const speed = governed(drive);
  const shafts = [...machine.shafts.values()].flatMap(({ id, title, part }) => {
    const turns = order(id);
    return turns === undefined ? [] : [{ shaft: id, title, order: turns, things: known(part) }];
  });
  const { bearings, missing: ofBearings } = bearingSounds(machine, turningOf(drive));
  return {
    families,
    shafts,
    bearings,
    ...(speed === undefined ? anySpeed : { slowest: below * speed, fastest: above * speed }),
    otherRatios: otherCounts(machine, drive),
    slips: slipsOf(machine),
    missing: [...missing, ...ofBearings],
  };
}

const groupOrder: readonly SoundFamily['group'][] = ['main', 'tail', 'engine', 'mesh'];

const known = (...things: readonly (string | undefined)[]): readonly string[] => things.filter((each) => each !== undefined);

type OrderOf = (shaft: string) => number | undefined;

/** Turns of each shaft for one of the main rotor, with their sense, while everything is driven. */
function turningOf({ states, mainRotor }: DriveSolution): OrderOf {
  const motions = states.get('driven')?.motions ?? states.get('autorotation')?.motions;
  const main = motions?.get(mainRotor?.on ?? '')?.factor;
  return (shaft) => {
    const own = motions?.get(shaft)?.factor;
    return own === undefined || main === undefined || main === 0 || own === 0 ? undefined : own / main;
  };
}

/** The same without their sense. */
function ordersOf(drive: DriveSolution): OrderOf {
  const turning = turningOf(drive);
  return (shaft) => {
    const own = turning(shaft);
    return own === undefined ? undefined : Math.abs(own);
  };
}

/** Turns of the main rotor in a second at the speed that the file says, Hz. */
function governed({ source, states, mainRotor }: DriveSolution): number | undefined {
  const factor = states.get('driven')?.motions.get(mainRotor?.on ?? '')?.factor;
  const wanted = mainRotor?.wanted;
  if (source?.speed !== undefined && factor !== undefined) return Math.abs(source.speed * factor) / (2 * Math.PI);
  const middle = wanted?.min !== undefined && wanted.max !== undefined ? (wanted.min + wanted.max) / 2 : undefined;
  return middle === undefined ? undefined : middle / (2 * Math.PI);
}

/** What engine or motor makes at its own turns: a four-stroke fires every second turn of each cylinder, a two-stroke every one. */
function sourceFamilies(machine: Machine, { source }: DriveSolution, order: OrderOf): readonly SoundFamily[] {
  const turns = source && order(source.shaft);
  if (!source || turns === undefined) return [];
  if (source.kind === 'motor') return [{ id: 'motor', title: 'motor', group: 'engine', shaft: source.shaft, things: known(machine.shafts.get(source.shaft)?.part), order: turns, harmonics: 12 }];
  const { kind, cylinders = 1 } = machine.power.engine ?? {};
  const firings = cylinders * (/four/iu.test(kind ?? '') ? 0.5 : 1);
  return [{ id: 'firing', title: 'firing of the engine', group: 'engine', shaft: source.shaft, things: known(machine.shafts.get(source.shaft)?.part), order: turns * firings, harmonics: 16, faint: [0.5 * turns * firings, 1.5 * turns * firings] }];
}

/** Teeth that meet. */
function toothFamilies(coupling: Coupling, order: OrderOf): readonly SoundFamily[] {
  const { driver, driven, id, title } = coupling;
  if (!hasTeeth(coupling)) return [];
  const side = [driver, driven].find(({ on, teeth }) => teeth !== undefined && order(on) !== undefined);
  if (side?.teeth === undefined) return [];
  return [{ id: `teeth ${id}`, title: `teeth of ${inSentence(title)}`, group: 'mesh', shaft: side.on, things: known(id, driver.part, driven.part), order: order(side.on)! * side.teeth, harmonics: 2 }];
}

/** A centrifugal clutch lies between engine and rotor; a belt may lie anywhere on the way to the tail. */
function slipsOf(machine: Machine): readonly ('tail' | 'engine')[] {
  const kinds = [...machine.couplings.values()].map(({ kind }) => kind);
  return [...(kinds.includes('centrifugal-clutch') ? ['engine' as const] : []), ...(kinds.includes('belt') ? ['tail' as const] : [])];
}

/** Counts by which the file may be out: by one or two teeth, or by a gear that it offers instead. */
function otherCounts(machine: Machine, drive: DriveSolution): readonly OtherCount[] {
  const now = ordersOf(drive);
  const fitted = meshesOf(machine, now);
  const ends = [['tail', drive.tailRotor?.on], ['engine', drive.source?.shaft]] as const;
  return [...machine.couplings.values()].filter(hasTeeth).flatMap((coupling) =>
    [coupling.driver, coupling.driven].flatMap(({ path, teeth, on, choices }) => {
      if (teeth === undefined) return [];
      const counts = new Set([teeth - 2, teeth - 1, teeth + 1, teeth + 2, ...choices.map((choice) => choice.teeth)]);
      return [...counts].filter((count) => count !== teeth && count > 3).flatMap((count) => {
        const other = withTeeth(machine, { [`${path}.teeth`]: count }).machine;
        const then = ordersOf(solveDrive(other));
        const meshes = meshesOf(other, then);
        const changed = Object.fromEntries(Object.entries(meshes).filter(([id, order]) => Math.abs(order - fitted[id]!) > 1e-9));
        return ends.flatMap(([group, shaft]): readonly OtherCount[] => {
          const before = shaft === undefined ? undefined : now(shaft);
          const after = shaft === undefined ? undefined : then(shaft);
          if (before === undefined || after === undefined || Math.abs(after / before - 1) < 1e-9) return [];
          return [{ group, factor: after / before, id: `${coupling.title}: ${count} teeth on ${on} instead of ${teeth}`, path: `${path}.teeth`, meshes: changed }];
        });
      });
    }),
  );
}

const meshesOf = (machine: Machine, order: OrderOf): Readonly<Record<string, number>> =>
  Object.fromEntries([...machine.couplings.values()].flatMap((coupling) => toothFamilies(coupling, order)).map(({ id, order }) => [id, order]));
