import { placesOf, remembered, rememberedOf, type Finding, type Machine, type Stack, type StackPlace } from '@rotorwright/machine';
import type { DriveDirections } from './directions.ts';
import { facingsOf, type Facing } from './facings.ts';
import { findingsOf } from './findings.ts';
import { loadsOf, type StackLoads } from './loads.ts';
import { rolesOf, type BearingRole } from './roles.ts';

/** What follows from the order, the joints and the loads of a stack. */
export interface StackAnalysis {
  /** In the order of the file. */
  readonly places: readonly StackPlace[];
  readonly loads: StackLoads;
  readonly facings: readonly Facing[];
  readonly roles: readonly BearingRole[];
}

/** Sorts a stack into its two columns, follows its loads, and says which way round each thing goes. */
export function analyseStack(machine: Machine, stack: Stack, directions: DriveDirections): StackAnalysis {
  return analysesWith(directions)(machine, stack);
}

const analysesWith = remembered((directions: DriveDirections) => rememberedOf((machine, stack: Stack): StackAnalysis => {
  const places = placesOf(machine, stack);
  const loads = loadsOf(machine, stack, places, directions);
  return { places, loads, facings: facingsOf(machine, stack, places, loads, directions), roles: rolesOf(machine, stack, places, loads) };
}));

/** What is wrong with the stacks of a machine, or not settled by its file. */
export function stackFindings(machine: Machine, directions: DriveDirections): readonly Finding[] {
  return [...machine.stacks.values()].flatMap((stack) => findingsOf(machine, stack, analyseStack(machine, stack, directions)));
}

/** The bearings that carry the push of a coupling's gear on one shaft, by id. */
export function carriersOf(machine: Machine, directions: DriveDirections, coupling: string, shaft: string): readonly string[] {
  return [...machine.stacks.values()].flatMap((stack) => {
    const { loads, places } = analyseStack(machine, stack, directions);
    return loads.known.filter((load) => load.coupling === coupling && load.shaft === shaft).flatMap(({ paths }) => paths.map(({ through }) => places[through]!.id));
  });
}
