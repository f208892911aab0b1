import type { Joint, Machine } from '@rotorwright/machine';
import type { Body } from './assembly.ts';
import { locksOf } from './events.ts';
import { eventsOf } from './chance.ts';
import type { HoldGraph } from './hazard-tree.ts';
import type { HazardHolds, Holds } from './holds.ts';
import { otherEnd } from './rank.ts';
import { waysOf, type Stop } from './stack-stops.ts';
import { fastenerWords, lockLabel, thingTitle } from './words.ts';

/** One link of a chain: a stack with its order and facing, a joint, a lock of the joint before it, its witness mark; or the want of a lock. */
export interface Link {
  readonly kind: 'stack' | 'joint' | 'lock' | 'mark' | 'nothing';
  /** Joint or stack that it is, or belongs to: also the id of the step that guards it. */
  readonly step: string;
  readonly words: string;
}

/** A chain of retention: what keeps a part, what keeps that, down to the lock. */
export interface Chain {
  /** The joint at its head. */
  readonly joint: string;
  /** Bodies that it keeps, and what it keeps them on. */
  readonly keeps: readonly Body[];
  readonly on: readonly Body[];
  /** The stack that it closes, where it keeps a part by that. */
  readonly closes?: string;
  readonly links: readonly Link[];
  /** How many of its copies must be lost before it keeps no more. */
  readonly least: number;
  readonly copies: number;
  /** Only wanted when the first line has gone. */
  readonly backup: boolean;
}

/** What keeps one part in its place. */
export interface Kept {
  readonly body: Body;
  readonly state: 'ground' | 'kept' | 'unknown';
  readonly chains: readonly Chain[];
  /** Bodies nearer the ground that it rests on: when one of them goes, it goes. */
  readonly restsOn: readonly Body[];
}

/**
 * What keeps a part, and what keeps that.
 *
 * @param body id of a part or of one of its copies
 * @returns    one answer for each copy; nothing when the machine has no such part
 */
export function keeps({ machine, graph }: Holds, body: Body): readonly Kept[] {
  const bodies = graph.assembly.bodies.has(body) ? [body] : (machine.parts.get(body)?.instances ?? []);
  return bodies.map((one) => keptBy(graph, one));
}

function keptBy(graph: HoldGraph, body: Body): Kept {
  const { assembly, ranks, losses } = graph;
  if (assembly.ground.has(body)) return { body, state: 'ground', chains: [], restsOn: [] };
  if (ranks.of(body) === undefined) return { body, state: 'unknown', chains: [], restsOn: [] };
  const { first, backup } = losses.holds(body);
  const carriers = losses.carriers(body);
  const chains = [...first, ...backup].flatMap(({ ties, least }) => {
    const joints = [...new Set(ties.map(({ joint }) => joint))];
    return joints.map((joint) => chainOf(graph, joint, { keeps: [body], on: distinct(ties.filter((tie) => tie.joint === joint).map((tie) => otherEnd(tie, body))), least }));
  });
  const closing = carriers.flatMap(({ stack, by }) => closersOf(graph, stack.id).map((joint) => chainOf(graph, joint, { keeps: [body], on: by, closes: stack.id, least: leastOf(graph, joint) })));
  const restsOn = distinct([...[...first, ...backup].flatMap(({ ties }) => ties.map((tie) => otherEnd(tie, body))), ...carriers.flatMap(({ by }) => by)]);
  return { body, state: 'kept', chains: [...chains, ...closing], restsOn };
}

/** Joints whose loss lets the spindle of a stack slide. */
function closersOf({ assembly }: HoldGraph, stackId: string): readonly Joint[] {
  const stack = assembly.machine.stacks.get(stackId);
  if (stack === undefined) return [];
  const jointsOf = (stop: Stop): readonly Joint[] => ('joint' in stop ? [stop.joint] : 'ties' in stop ? stop.ties.map(({ joint }) => joint) : []);
  return distinct(waysOf(assembly, stack).flat().flatMap(({ spindle, housing }) => [...spindle, ...housing].flatMap(jointsOf)));
}

/** Every joint of which an event stands in a hazard's tree, as a chain, in the order of the file; joints that only keep other joints are links of theirs. */
export function chainsOf(held: Holds, { tree }: HazardHolds): readonly Chain[] {
  const steps = new Set(tree === undefined ? [] : eventsOf(tree).map((id) => held.events.get(id)!.step));
  const chains = chainsFrom(held, [...held.machine.joints.keys()].filter((id) => steps.has(id)));
  return chains.filter(({ keeps: kept, closes }) => kept.length > 0 || closes !== undefined);
}

/** Joints, each as the head of a chain; a stack as those that close it. */
export function chainsFrom({ machine, graph }: Holds, things: readonly string[]): readonly Chain[] {
  const closed = new Map([...machine.stacks.keys()].flatMap((stack) => closersOf(graph, stack).map((joint) => [joint.id, stack] as const)));
  const joints = distinct(things.flatMap((id) => machine.joints.get(machine.thingOf.get(id) ?? id) ?? closersOf(graph, id)));
  return joints.map((joint) => {
    const ties = graph.assembly.allTies.filter((tie) => tie.joint === joint);
    const closes = closed.get(joint.id);
    const higher = ties.map(({ between: [a, b] }) => ((graph.ranks.of(a) ?? Infinity) > (graph.ranks.of(b) ?? Infinity) ? [a, b] : [b, a]) as [Body, Body]);
    return chainOf(graph, joint, { keeps: distinct(higher.map(([kept]) => kept)), on: distinct(higher.map(([, on]) => on)), ...(closes === undefined ? {} : { closes }), least: leastOf(graph, joint) });
  });
}

function leastOf({ assembly }: HoldGraph, joint: Joint): number {
  return Math.min(joint.each.length, (assembly.groupOf.get(joint.id)?.spare ?? 0) + 1);
}

function chainOf(graph: HoldGraph, joint: Joint, about: Pick<Chain, 'keeps' | 'on' | 'closes' | 'least'>): Chain {
  const stack: readonly Link[] = about.closes === undefined ? [] : [{ kind: 'stack', step: about.closes, words: 'order and facing' }];
  return { joint: joint.id, ...about, links: [...stack, ...linksOf(graph, joint, new Set())], copies: joint.each.length, backup: joint.backup };
}

/** The joint, its locks, then what keeps it; each joint once, also where joints keep each other in a circle. */
function linksOf(graph: HoldGraph, joint: Joint, seen: Set<string>): readonly Link[] {
  seen.add(joint.id);
  const { keepers } = graph.assembly;
  const keeping = distinct(joint.each.flatMap(({ id }) => (keepers.get(id) ?? []).map((keeper) => keeper.joint))).filter(({ id }) => !seen.has(id));
  const locks = locksOf(joint);
  return [
    { kind: 'joint', step: joint.id, words: fastenerWords(joint) },
    ...locks.map((lock): Link => ({ kind: 'lock', step: joint.id, words: lockLabel(lock) })),
    ...(joint.mark ? [{ kind: 'mark', step: joint.id, words: 'witness mark' } as const] : []),
    ...keeping.flatMap((keeper) => linksOf(graph, keeper, seen)),
    ...(locks.length === 0 && keeping.length === 0 ? [{ kind: 'nothing', step: joint.id, words: joint.locks === undefined ? 'lock not stated' : 'no lock' } as const] : []),
  ];
}

/** "Tail pinion on the input shaft"; what closes a stack keeps the stack together. */
export function chainTitle(machine: Machine, { joint, keeps: kept, on, closes }: Chain): { readonly part: string; readonly on: string } {
  const from = machine.joints.get(joint)?.module ?? '';
  if (closes === undefined && kept.length === 0) {
    // A joint that keeps a joint: the set screw on the pin.
    const held = machine.joints.get(joint)?.each.flatMap(({ holds }) => holds) ?? [];
    return { part: thingTitle(machine, held[0] ?? joint, from), on: '' };
  }
  if (closes !== undefined && kept.length === 0) return { part: thingTitle(machine, closes, from), on: '' };
  const names = (bodies: readonly Body[]): string => named(machine, bodies, from);
  return { part: names(kept), on: names(on) };
}

function named(machine: Machine, bodies: readonly Body[], from: string): string {
  const things = distinct(bodies.map((body) => machine.thingOf.get(body) ?? body));
  const first = bodies.length === 1 ? bodies[0]! : (things[0] ?? '');
  return first === '' ? '' : `${thingTitle(machine, first, from)}${things.length > 1 ? ' and others' : ''}`;
}

function distinct<Item>(items: readonly Item[]): Item[] {
  return [...new Set(items)];
}
