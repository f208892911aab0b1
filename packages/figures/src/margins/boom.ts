import { remembered, type Machine, type Part } from '@rotorwright/machine';
import { structureOf, type Structure } from './bench.ts';

/** The long tube that the frame holds and that does not turn, and what holds it. */
export interface HeldBoom {
  readonly part: Part;
  /** On the frame. */
  readonly clamps: readonly Part[];
  /** On the tube, at the ends of braces. */
  readonly braced: readonly Part[];
}

export const boomOf = remembered((machine: Machine): HeldBoom | undefined => {
  const structure = structureOf(machine);
  const part = longTube(structure);
  if (!part) return undefined;
  const own = new Set(part.instances);
  const meeting = [...machine.joints.values()].flatMap(({ each }) => each);
  const seats = meeting.flatMap(({ seat, holds }) => (holds.some((id) => own.has(id)) ? [structure.partAt(seat)] : []));
  const held = meeting.flatMap(({ seat, holds }) => (seat !== undefined && own.has(seat) ? holds.map(structure.partAt) : []));
  const known = (parts: readonly (Part | undefined)[]): readonly Part[] => [...new Set(parts.filter((each) => each !== undefined))];
  return { part, clamps: known(seats).filter((clamp) => isGrounded(structure, clamp)), braced: known(held).filter(({ key }) => /brace/u.test(key)) };
});

function longTube({ machine, partAt }: Structure): Part | undefined {
  const turning = new Set([...machine.shafts.values()].map(({ part }) => part));
  const held = new Set([...machine.joints.values()].flatMap(({ each }) => each.flatMap(({ seat, holds }) => (partAt(seat)?.kind === 'housing' ? holds : []))));
  return [...machine.parts.values()].filter((part) => part.kind === 'tube' && !part.instances.some((each) => turning.has(each)) && part.instances.some((each) => held.has(each)))
    .toSorted((a, b) => (b.sizes['length'] ?? 0) - (a.sizes['length'] ?? 0))[0];
}

/** Whether a joint ties a part to what everything is mounted on. */
function isGrounded({ machine, partAt }: Structure, part: Part): boolean {
  const own = new Set(part.instances);
  const ground = (instance: string | undefined): boolean => partAt(instance)?.ground === true;
  return [...machine.joints.values()].some(({ each }) => each.some(({ seat, holds }) => (seat !== undefined && own.has(seat) && holds.some(ground)) || (ground(seat) && holds.some((held) => own.has(held)))));
}
