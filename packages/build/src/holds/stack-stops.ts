import { haltsOf, placesOf, type Joint, type Stack, type StackPlace } from '@rotorwright/machine';
import { carries, type Assembly, type Body, type Tie } from './assembly.ts';
import { otherEnd } from './rank.ts';

/** What stops one column of a stack: a shoulder, which stays; a joint that closes it; or a part that joints keep on its column. */
export type Stop = { readonly shoulder: Body } | { readonly joint: Joint } | { readonly part: Body; readonly ties: readonly Tie[] };

/** What keeps the spindle from sliding one way: stops of either column that run against each other. On each side that is the nearest with those that it leans on, of which all must go; or a shoulder that it leans on. */
export interface Way {
  readonly spindle: readonly Stop[];
  readonly housing: readonly Stop[];
}

/**
 * What keeps the spindle of a stack from sliding in its housing, either way.
 *
 * @returns ways for the spindle going to the second end, and to the first; a direction without ways is open
 */
export function waysOf(assembly: Assembly, stack: Stack): readonly [readonly Way[], readonly Way[]] {
  const columns = { spindle: [stack.spindle], housing: stack.housing };
  const stops = new Map<StackPlace, Stop>();
  const places = placesOf(assembly.machine, stack).map((place): StackPlace => {
    // What closes a stack without naming either column closes the spindle.
    const known: StackPlace = 'joint' in place.item && place.member === undefined ? { ...place, kind: 'stop', member: 'spindle' } : place;
    if (known.kind !== 'stop' || known.member === undefined) return known;
    const stop = stopAt(assembly, known, columns[known.member]);
    // What only turns with its column can be pushed along it.
    if (stop === undefined) return { ...known, kind: 'loose' };
    stops.set(known, stop);
    return known;
  });
  const stopsAt = (indices: readonly number[]): readonly Stop[] => {
    const all = indices.flatMap((index) => stops.get(places[index]!) ?? []);
    // What leans on a shoulder stays, whatever becomes of its joints.
    const shoulder = all.find((stop) => 'shoulder' in stop);
    return shoulder === undefined ? all : [shoulder];
  };
  const towards = (end: 0 | 1): readonly Way[] => haltsOf(places, 'spindle', end).map(({ own, other }) => ({ spindle: stopsAt(own), housing: stopsAt(other) }));
  return [towards(1), towards(0)];
}

function stopAt(assembly: Assembly, { item, id }: StackPlace, column: readonly Body[]): Stop | undefined {
  if ('shoulder' in item || column.includes(id)) return { shoulder: id };
  if ('joint' in item) {
    const joint = assembly.machine.joints.get(assembly.machine.thingOf.get(id) ?? id);
    return joint === undefined ? undefined : { joint };
  }
  const ties = tiesTo(assembly, id, column);
  return ties === undefined ? undefined : { part: id, ties };
}

/** The ties that keep a part on its column, by as few joints as can be; nothing where none keep it in place. */
function tiesTo(assembly: Assembly, part: Body, column: readonly Body[]): readonly Tie[] | undefined {
  const from = new Map<Body, Body>([[part, part]]);
  const placing = (body: Body): readonly Tie[] => (assembly.ties.get(body) ?? []).filter(({ joint }) => carries(joint, 'place'));
  for (const body of from.keys()) {
    if (column.includes(body)) {
      const ties: Tie[] = [];
      for (let at = body; at !== part; at = from.get(at)!) ties.push(...placing(from.get(at)!).filter((tie) => otherEnd(tie, from.get(at)!) === at));
      return ties;
    }
    if (!assembly.ground.has(body)) for (const tie of placing(body)) if (!from.has(otherEnd(tie, body))) from.set(otherEnd(tie, body), body);
  }
  return undefined;
}
