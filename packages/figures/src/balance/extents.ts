import type { Machine, Part } from '@rotorwright/machine';
import { boxInertia, tubeInertia, type Tensor, type Vector3 } from '@rotorwright/mechanics';

/** What a part has of inertia about its own centre, and what it is taken for. */
export interface Extent {
  /** kg·m² */
  readonly inertia: Tensor;
  readonly as: 'rod' | 'cylinder' | 'tube' | 'box';
}

/** How the length of a part lies: as the file says, else the axis of the shaft that it is. */
export const liesOf = ({ shafts }: Machine, { lies }: Part, instance: string): Vector3 | undefined => lies ?? [...shafts.values()].find(({ part }) => part === instance)?.axis;

/** Extent of one copy of a part; undefined of one whose mass, length or direction is not known: it counts as a point. */
export function extentOf(machine: Machine, part: Part, instance: string): Extent | undefined {
  const { mass, sizes } = part;
  const along = liesOf(machine, part, instance);
  const { length, width, height, diameter, inner = 0 } = sizes;
  if (mass === undefined || length === undefined || along === undefined) return undefined;
  const outer = sizes['outer'] ?? diameter;
  if (outer === undefined && width !== undefined && height !== undefined) return { inertia: boxInertia({ mass, length, width, height }, along), as: 'box' };
  if (outer === undefined) return { inertia: tubeInertia({ mass, length }, along), as: 'rod' };
  // A bore that is wider than the outside is a mistake of the file, and no reason to do without the length.
  return { inertia: tubeInertia({ mass, length, outer, inner: Math.min(inner, outer) }, along), as: inner > 0 ? 'tube' : 'cylinder' };
}
