import type { InstanceId } from '@rotorwright/machine';
import { inFirstCopy, membersOf, partAt } from '../directions/members.ts';
import { builderFor } from '../set/builder.ts';
import type { FigureSet } from '../set/figure-set.ts';
import { bearingCare, bearingsOf, type BearingCare } from './bearings.ts';
import { meshCare, type MeshCare } from './meshes.ts';

/** What the bench asks of meshes and bearings beyond their loads: where to set, how warm, when to grease. */
export interface Care {
  /** The figures of the machine and those of its care: any of them opens into its working. */
  readonly set: FigureSet;
  readonly meshes: readonly MeshCare[];
  readonly bearings: readonly BearingCare[];
}

/**
 * Where to set each external mesh, how warm each housing must be, and when each bearing wants fresh grease.
 *
 * @param set  figures of the driven machine
 */
export function careOf(set: FigureSet): Care {
  const { machine } = set;
  const builder = builderFor(machine, set.all);
  const meshes = [...machine.couplings.values()].filter(({ kind }) => kind === 'external').map((coupling) => meshCare(builder, coupling));
  const members = membersOf(machine);
  const bearings = bearingsOf(builder, inFirstCopy(machine)).map((one) => bearingCare(builder, members, one));
  return { set: { ...set, all: builder.all(), get: builder.get, outputs: (name) => builder.outputs(name) ?? set.outputs(name) }, meshes, bearings };
}

/** Bearings that a step puts in: those of its stack, or of its press fit. A step of a second copy has those of the first. */
export function careAt({ set: { machine }, bearings }: Care, step: string): readonly BearingCare[] {
  const stack = machine.stacks.get(step);
  const joint = machine.joints.get(step);
  const placed = stack ? stack.order.flatMap((item) => ('part' in item ? [item.part] : [])) : (joint?.each.flatMap(({ holds }) => holds) ?? []);
  const alike = new Set(placed.flatMap((instance) => keyOf(machine, instance) ?? []));
  return bearings.filter(({ instance }) => alike.has(keyOf(machine, instance) ?? ''));
}

/** The same for the same part of every copy of a module. */
function keyOf(machine: FigureSet['machine'], instance: InstanceId): string | undefined {
  const part = partAt(machine, instance);
  return part && instance.replace(part.module, machine.modules.get(part.module)?.key ?? part.module);
}
