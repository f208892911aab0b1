import type { GateBook, Loss } from './gate-book.ts';
import { grouped } from './grouping.ts';

/** From, to, and when that leg is cut; several legs between the same two back each other up. */
export interface Leg {
  readonly from: string;
  readonly to: string;
  readonly cut: Loss;
}

/** A network of bodies. */
export interface Network {
  /** Legs that lead away from a body, and those that lead to it. */
  readonly out: ReadonlyMap<string, readonly Leg[]>;
  readonly into: ReadonlyMap<string, readonly Leg[]>;
  /** When a body is of no use any more. */
  readonly lost: (body: string) => Loss;
  /** Whether anything goes through a body at all. */
  readonly passes: (body: string) => boolean;
}

export function networkOf(legs: readonly Leg[], lost: Network['lost']): Network {
  return { out: grouped(legs, ({ from }) => from), into: grouped(legs, ({ to }) => to), lost, passes: () => true };
}

/**
 * When nothing leads from one body to another any more.
 *
 * Bodies in between are taken out one by one, that with the fewest neighbours first; each leaves behind the legs that led
 * through it. That is exact for any network, circles too, because to have come somewhere twice is no better than once.
 *
 * @returns nothing when no leg leads there at all
 */
export function cutBetween(book: GateBook, network: Network, source: string, target: string): { readonly cut: Loss } | undefined {
  const reachable = onTheWay(network, source, target);
  if (!reachable.has(source)) return undefined;
  const inside = withoutDeadEnds(network, reachable, source, target);
  const out = new Map<string, Map<string, Loss>>();
  const into = new Map<string, Set<string>>();
  for (const body of inside) {
    out.set(body, new Map());
    into.set(body, new Set());
  }
  const lay = (from: string, to: string, cut: Loss): void => {
    const legs = out.get(from);
    if (from === to || legs === undefined || !inside.has(to) || from === target || to === source) return;
    legs.set(to, legs.has(to) ? book.all([legs.get(to), cut]) : cut);
    into.get(to)?.add(from);
  };
  for (const body of inside) for (const { from, to, cut } of network.out.get(body) ?? []) lay(from, to, cut);

  const between = new Set([...inside].filter((body) => body !== source && body !== target));
  const takeOut = (body: string): void => {
    between.delete(body);
    const before = [...(into.get(body) ?? [])];
    const after = [...(out.get(body) ?? [])];
    for (const from of before) {
      const first = out.get(from)?.get(body);
      out.get(from)?.delete(body);
      for (const [to, second] of after) if (to !== from) lay(from, to, book.any([first, network.lost(body), second]));
    }
    for (const [to] of after) into.get(to)?.delete(body);
  };
  const degree = (body: string): number => (out.get(body)?.size ?? 0) * (into.get(body)?.size ?? 0);
  while (between.size > 0) takeOut([...between].reduce((best, other) => (degree(other) < degree(best) ? other : best)));
  return { cut: book.any([network.lost(source), out.get(source)?.get(target), network.lost(target)]) };
}

/** Dead ends are most of a machine, and what leads into one leads nowhere else: they go, each with the one that it makes. */
function withoutDeadEnds({ out, into }: Network, bodies: ReadonlySet<string>, source: string, target: string): ReadonlySet<string> {
  const left = new Set(bodies);
  const neighbours = (body: string): readonly string[] => {
    const found: string[] = [];
    const meet = (other: string): void => {
      if (other !== body && left.has(other) && !found.includes(other)) found.push(other);
    };
    for (const { to } of out.get(body) ?? []) if (to !== source) meet(to);
    for (const { from } of into.get(body) ?? []) if (from !== target) meet(from);
    return found;
  };
  const ends = [...bodies];
  for (const body of ends) {
    if (body === source || body === target || !left.has(body)) continue;
    const beside = neighbours(body);
    if (beside.length > 1) continue;
    left.delete(body);
    ends.push(...beside);
  }
  return left;
}

/** Bodies that can be reached from the source and from which the target can be. Empty when the target cannot be reached. */
function onTheWay({ out, into, passes }: Network, source: string, target: string): ReadonlySet<string> {
  const ahead = reached(out, source, 'to', passes);
  if (!ahead.has(target)) return new Set();
  const behind = reached(into, target, 'from', passes);
  return new Set([...ahead].filter((body) => behind.has(body)));
}

function reached(legs: Network['out'], start: string, end: 'from' | 'to', passes: Network['passes']): ReadonlySet<string> {
  const found = new Set([start]);
  for (const body of found) for (const leg of legs.get(body) ?? []) if (passes(leg[end])) found.add(leg[end]);
  return found;
}
