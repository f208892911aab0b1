import type { EntryPath, InstanceId, Machine } from '@rotorwright/machine';
import type { DriveSolution } from '../drive/solve.ts';
import { reach, type Hop } from '../drive/reach.ts';

/** By which parts torque enters and leaves one shaft. */
export interface TorqueWay {
  readonly enters?: InstanceId;
  readonly leaves: readonly InstanceId[];
  /** Entries that would name the parts that are not known. */
  readonly missing: readonly EntryPath[];
}

interface Ends {
  enters?: InstanceId;
  leaves: InstanceId[];
  missing: EntryPath[];
}

/** Torque on its way from a source over hops; `ends` are the parts that give and take it at the ends of the way. */
function waysOver(machine: Machine, hops: readonly Hop[], source: string, sourcePart: InstanceId | undefined, sinks: readonly { readonly shaft: string; readonly part: InstanceId | undefined; readonly path: EntryPath }[]): ReadonlyMap<string, TorqueWay> {
  const ways = new Map<string, Ends>();
  const at = (shaft: string): Ends => {
    const known = ways.get(shaft);
    if (known) return known;
    const fresh: Ends = { leaves: [], missing: [] };
    ways.set(shaft, fresh);
    return fresh;
  };
  const body = (shaft: string): InstanceId | undefined => machine.shafts.get(shaft)?.part;
  const first = sourcePart ?? body(source);
  if (first === undefined) at(source).missing.push(`shafts.${source}.part`);
  else at(source).enters = first;
  for (const { leg, forward, from, to } of hops) {
    const [giving, taking] = forward ? [leg.coupling.driver, leg.coupling.driven] : [leg.coupling.driven, leg.coupling.driver];
    const leaves = giving.part ?? body(from);
    const enters = taking.part ?? body(to);
    if (leaves === undefined) at(from).missing.push(`${giving.path}.part`);
    else at(from).leaves.push(leaves);
    if (enters === undefined) at(to).missing.push(`${taking.path}.part`);
    else at(to).enters = enters;
  }
  for (const sink of sinks) {
    const leaves = sink.part ?? body(sink.shaft);
    if (leaves === undefined) at(sink.shaft).missing.push(sink.path);
    else at(sink.shaft).leaves.push(leaves);
  }
  return ways;
}

/** Every coupling that the motion comes through, once. */
function hopsOf(paths: Iterable<readonly Hop[]>): readonly Hop[] {
  const hops = new Map<string, Hop>();
  for (const path of paths) for (const hop of path) hops.set(hop.leg.coupling.id, hop);
  return [...hops.values()];
}

/** Torque from engine or motor to the rotors. */
export function drivenWays(machine: Machine, drive: DriveSolution): ReadonlyMap<string, TorqueWay> {
  const driven = drive.states.get('driven');
  if (!driven) return new Map();
  const rotors = [...machine.rotors.values()].filter((rotor) => driven.motions.get(rotor.on)?.condition !== 'stands');
  return waysOver(machine, hopsOf([...driven.motions.values()].map((motion) => motion.path)), driven.source, undefined,
    rotors.map((rotor) => ({ shaft: rotor.on, part: rotor.part, path: `${rotor.path}.part` })));
}

/** Torque from a starter shaft to the engine; undefined where the drive has none. */
export function startingWays(machine: Machine, drive: DriveSolution): ReadonlyMap<string, TorqueWay> | undefined {
  const driven = drive.states.get('driven');
  if (drive.source?.kind !== 'engine' || !driven) return undefined;
  for (const motion of driven.motions.values()) {
    if (motion.condition !== 'stands') continue;
    const path = reach(drive.legs, motion.shaft, { clutchesOpen: true }).paths.get(drive.source.shaft);
    if (path) return waysOver(machine, path, motion.shaft, undefined, [{ shaft: drive.source.shaft, part: undefined, path: `shafts.${drive.source.shaft}.part` }]);
  }
  return undefined;
}
