import type { InstanceId, Member } from '../model/assembly.ts';
import type { StackPlace } from './columns.ts';

/** One way in which a push passes from one member into the other; indices into the places of the stack. */
export interface LoadPath {
  /** The stop that pushes. */
  readonly from: number;
  /** The bearing that carries. */
  readonly through: number;
  /** The stop that resists. */
  readonly to: number;
}

export interface LoadPaths {
  readonly paths: readonly LoadPath[];
  /** Things of unknown member that stand where a stop was wanted. */
  readonly unknown: readonly InstanceId[];
}

/**
 * Index of what stops a ring of a bearing on one side. Loose things and bearings that touch pass the push on; a thrust
 * bearing does not: inside it the load changes over. A thing of the other member holds the rings beyond it apart.
 */
export function stopOf(places: readonly StackPlace[], bearing: number, step: 1 | -1, member: Member, doubtful: Set<InstanceId> = new Set()): number | undefined {
  let across = false;
  for (let index = bearing + step; places[index]; index += step) {
    const place = places[index]!;
    if (place.kind === 'thrust' || (place.kind === 'radial' && across)) return undefined;
    if (place.kind === 'radial') continue;
    if (place.member === member) {
      if (place.kind === 'stop') return index;
      across = false;
      continue;
    }
    if (place.kind === 'unknown') doubtful.add(place.id);
    across = true;
  }
  return undefined;
}

/**
 * The ways of a push along the stack. A bearing carries it when the pushed member backs it on the side that the push comes
 * from, and the other member on the side that it goes to.
 *
 * @param towards 0 or 1: the end of the stack that the member is pushed to
 * @returns one path for each bearing that carries
 */
export function loadPaths(places: readonly StackPlace[], pushed: Member, towards: 0 | 1): LoadPaths {
  const ahead = towards === 1 ? 1 : -1;
  const other: Member = pushed === 'spindle' ? 'housing' : 'spindle';
  const unknown = new Set<InstanceId>();
  const paths = places.flatMap((place, through): readonly LoadPath[] => {
    if (place.kind !== 'radial' && place.kind !== 'thrust') return [];
    const doubts = [new Set<InstanceId>(), new Set<InstanceId>()] as const;
    const from = stopOf(places, through, ahead === 1 ? -1 : 1, pushed, doubts[0]);
    const to = stopOf(places, through, ahead, other, doubts[1]);
    if (from !== undefined && to !== undefined) return [{ from, through, to }];
    if (from === undefined) for (const id of doubts[0]) unknown.add(id);
    if (to === undefined) for (const id of doubts[1]) unknown.add(id);
    return [];
  });
  return { paths, unknown: [...unknown] };
}

/** What keeps a member from moving: stops of its own, and stops of the other member that they run against, on each side the nearest first and behind it those that it leans on. */
export interface Halt {
  readonly own: readonly number[];
  readonly other: readonly number[];
}

/**
 * What keeps a member from moving to one end: each bearing that then carries, between a stop behind it and one ahead of it;
 * where none carries, stops of the two members that stand face to face.
 *
 * @returns no halt: nothing keeps it
 */
export function haltsOf(places: readonly StackPlace[], member: Member, towards: 0 | 1): readonly Halt[] {
  const ahead = towards === 1 ? 1 : -1;
  const behind = ahead === 1 ? -1 : 1;
  const other: Member = member === 'spindle' ? 'housing' : 'spindle';
  const { paths } = loadPaths(places, member, towards);
  const pairs = paths.length > 0 ? paths : facesOf(places, member, ahead);
  return [...new Map(pairs.map(({ from, to }) => [`${from} ${to}`, { own: leaning(places, from, behind, member), other: leaning(places, to, ahead, other) }])).values()];
}

/** Stops of a member, each with the next stop of the other member ahead of it, and no other stop of its own and no bearing between. */
function facesOf(places: readonly StackPlace[], member: Member, ahead: 1 | -1): readonly Pick<LoadPath, 'from' | 'to'>[] {
  return places.flatMap(({ kind, member: own }, from) => {
    if (kind !== 'stop' || own !== member) return [];
    for (let to = from + ahead; places[to]; to += ahead) {
      const met = places[to]!;
      if (met.kind === 'stop') return met.member === member ? [] : [{ from, to }];
      if (met.kind === 'radial' || met.kind === 'thrust') return [];
    }
    return [];
  });
}

/** A stop, and those of its member that stop it in its turn, should what fixes it let go: a pinned bevel leans on the shoulder behind it. A shoulder leans on nothing; what closes a stack leaves a gap. */
function leaning(places: readonly StackPlace[], stop: number, step: 1 | -1, member: Member): readonly number[] {
  if (!('part' in places[stop]!.item)) return [stop];
  const next = stopOf(places, stop, step, member);
  return next === undefined ? [stop] : [stop, ...leaning(places, next, step, member)];
}
