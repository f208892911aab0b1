import type { Access, Module, Stack, Thing } from '@rotorwright/machine';
import { beforeRules, type Precedence } from './before.ts';
import { tiesAt, type AssemblyGraph, type Tie } from './graph.ts';

/** Something that must be so before a tie can be undone, or before the goal is reached. Undoing more never spoils it. */
export type Want =
  | { readonly undone: number }
  | Away
  | { readonly all: readonly Want[] }
  | { readonly any: readonly Want[] };

/** No way is left through ties from any of `away` to any of `from`, or to the ground; ties in `past` do not count. None of `away` is in `from`, or is ground. */
export interface Away {
  readonly away: readonly number[];
  readonly from: ReadonlySet<number>;
  readonly ground: boolean;
  readonly past: ReadonlySet<number>;
}

/** Why a tie has to go. `of` names what wants it: a joint, a stack, a part or a module. */
export type Why =
  | { readonly why: 'goal'; readonly of: string }
  | { readonly why: Precedence; readonly of: string }
  /** `blocker` is in the way of `of`. */
  | { readonly why: 'in-the-way'; readonly of: string; readonly blocker: string }
  /** Spindle and housing of the stack `of` must come apart. */
  | { readonly why: 'apart'; readonly of: string };

export interface Need {
  readonly reason: Why;
  readonly want: Want;
}

const none: ReadonlySet<number> = new Set();

/**
 * For each tie what must be so before it can be undone.
 *
 * @param sides 'kept': where either of two sides can be opened, the one that the module keeps is none of them
 */
export function needsOfTies(graph: AssemblyGraph, sides: 'kept' | 'open'): readonly (readonly Need[])[] {
  const { machine, ties, tieOf } = graph;
  const needs: Need[][] = ties.map(({ thing }) => ('order' in thing ? apart(graph, thing) : []));
  for (const { first, later, why } of beforeRules(machine)) {
    const undone = tieOf.get(first);
    const waiting = tieOf.get(later);
    if (undone !== undefined && waiting !== undefined) needs[waiting]?.push({ reason: { why, of: later }, want: { undone } });
  }
  for (const tie of ties) if ('each' in tie.thing && tie.thing.behind !== undefined) needs[tie.index]?.push(...gate(graph, tie.thing, tie.thing.behind, tie.nodes, sides));
  for (const part of machine.parts.values()) if (part.behind !== undefined) for (const tie of placing(graph, part.id)) needs[tie.index]?.push(...gate(graph, part, part.behind, nodesOf(graph, part.id), sides));
  for (const module of machine.modules.values()) if (module.behind !== undefined) for (const tie of mounting(graph, module)) needs[tie.index]?.push(...gate(graph, module, module.behind, tie.nodes, sides));
  return needs;
}

/** A part bare and out of the machine: nothing ties it any more, but for what is pressed or bonded into it, which rides along. A module: out of the machine. */
export function needsOfGoal(graph: AssemblyGraph, goal: string, sides: 'kept' | 'open'): readonly Need[] {
  const { machine, tieOf } = graph;
  const reason: Why = { why: 'goal', of: goal };
  const thingId = machine.thingOf.get(goal) ?? goal;
  const tie = tieOf.get(thingId);
  if (tie !== undefined) return [{ reason, want: { undone: tie } }];
  const module = machine.modules.get(goal);
  if (module !== undefined) return [{ reason, want: outOfMachine(graph, module) }];
  const part = machine.parts.get(thingId);
  if (part === undefined) throw new RangeError(`reach: the machine has no part, joint, stack or module ${goal}`);
  const nodes = nodesOf(graph, goal);
  const bare = tiesAt(graph, nodes).filter(({ thing }) => !staysOn(graph, thing, nodes));
  const free: Need = { reason, want: offGround(graph, nodes, none) };
  return [...bare.map(({ index }): Need => ({ reason, want: { undone: index } })), free, ...(part.behind === undefined ? [] : gate(graph, part, part.behind, nodes, sides))];
}

/** What is pressed or glued into a part stays on it. */
function staysOn(graph: AssemblyGraph, thing: Tie['thing'], nodes: readonly number[]): boolean {
  return 'each' in thing && (thing.kind === 'press' || thing.kind === 'bond') && !thing.each.some(({ holds }) => holds.some((held) => nodes.includes(graph.nodeOf.get(held) ?? -1)));
}

/** To draw a spindle out of its housing, nothing else may hold the two together but stacks that slide apart with this one. */
function apart(graph: AssemblyGraph, stack: Stack): Need[] {
  const { machine, nodeOf, tieOf } = graph;
  const spindle = nodeOf.get(stack.spindle);
  const housing = new Set(stack.housing.flatMap((id) => nodeOf.get(id) ?? []).filter((node) => node !== spindle));
  if (spindle === undefined || housing.size === 0) return [];
  const past = new Set([...machine.stacks.values()].filter((other) => other.spindle === stack.spindle).flatMap(({ id }) => tieOf.get(id) ?? []));
  return [{ reason: { why: 'apart', of: stack.id }, want: { away: [spindle], from: housing, ground: false, past } }];
}

/** What stands behind something waits until that is out of the way. */
function gate(graph: AssemblyGraph, thing: Pick<Thing, 'id'> & { readonly module?: string }, behind: Access, anchors: readonly number[], sides: 'kept' | 'open'): readonly Need[] {
  const home = thing.module ?? thing.id;
  if ('all' in behind) return behind.all.flatMap((each) => gate(graph, thing, each, anchors, sides));
  return [{ reason: { why: 'in-the-way', of: thing.id, blocker: firstOff(behind) }, want: wantOf({ graph, home, anchors, sides }, behind, []) }];
}

/** The side of a module that stays as reference. */
export function isKept(machine: AssemblyGraph['machine'], id: string): boolean {
  const part = machine.parts.get(machine.thingOf.get(id) ?? id);
  const keep = part === undefined ? undefined : machine.modules.get(part.module)?.keep;
  return part !== undefined && keep !== undefined && (keep === part.id || `${part.module}/${keep}` === part.id);
}

function firstOff(access: Access): string {
  if ('off' in access) return access.off;
  const [first] = 'all' in access ? access.all : access.any;
  return first === undefined ? '' : firstOff(first);
}

/** Where an access rule stands. */
interface Standpoint {
  readonly graph: AssemblyGraph;
  /** Its module. */
  readonly home: string;
  /** Parts that are to be got at. */
  readonly anchors: readonly number[];
  readonly sides: 'kept' | 'open';
}

/** @param others of which one may be taken off instead: a side that is off is off those too */
function wantOf(from: Standpoint, access: Access, others: readonly string[]): Want {
  const { graph, home, anchors } = from;
  if ('all' in access) return { all: access.all.map((each) => wantOf(from, each, others)) };
  if ('any' in access) {
    const parts = access.any.flatMap((each) => ('off' in each && graph.machine.parts.has(graph.machine.thingOf.get(each.off) ?? each.off) ? [each.off] : []));
    const open = access.any.filter((each) => from.sides === 'open' || !('off' in each) || !isKept(graph.machine, each.off));
    // Where the only side is the one that stays, it has to come off after all.
    return { any: (open.length > 0 ? open : access.any).map((each) => wantOf(from, each, parts)) };
  }
  const { machine, tieOf } = graph;
  const tie = tieOf.get(machine.thingOf.get(access.off) ?? access.off);
  if (tie !== undefined) return { undone: tie };
  const module = machine.modules.get(access.off);
  // Its own module out of the machine: on the bench there is room.
  if (module?.id === home) return outOfMachine(graph, module);
  const blockers = module === undefined ? nodesOf(graph, access.off) : module.parts.flatMap((id) => nodesOf(graph, id));
  const own = new Set(blockers);
  const apartFrom = new Set([...anchors, ...others.filter((side) => isBeside(machine, side, access.off)).flatMap((side) => nodesOf(graph, side))].filter((node) => !own.has(node)));
  return offGround(graph, blockers, apartFrom);
}

/** Sides of one case, such as its two plates. */
function isBeside(machine: AssemblyGraph['machine'], side: string, other: string): boolean {
  const [a, b] = [side, other].map((id) => machine.parts.get(machine.thingOf.get(id) ?? id));
  return a !== undefined && b !== undefined && a.id !== b.id && a.module === b.module;
}

function outOfMachine(graph: AssemblyGraph, module: Module): Want {
  return offGround(graph, module.parts.flatMap((id) => nodesOf(graph, id)), none);
}

/** What is ground itself stays where it is. */
function offGround(graph: AssemblyGraph, nodes: readonly number[], from: ReadonlySet<number>): Want {
  return { away: nodes.filter((node) => graph.ground[node] !== true), from, ground: true, past: none };
}

/** A copy, or all copies of a thing. */
export function nodesOf({ machine, nodeOf }: AssemblyGraph, id: string): readonly number[] {
  const one = nodeOf.get(id);
  return one === undefined ? (machine.parts.get(id)?.instances ?? []).flatMap((instance) => nodeOf.get(instance) ?? []) : [one];
}

/** Joints that hold a part, and stacks that it stands in. */
function placing(graph: AssemblyGraph, part: string): readonly Tie[] {
  const isIt = (id: string) => (graph.machine.thingOf.get(id) ?? id) === part;
  return tiesAt(graph, nodesOf(graph, part)).filter(({ thing }) => !('each' in thing) || thing.each.some(({ holds }) => holds.some(isIt)));
}

/** Joints of a module that reach out of it; where it has none, those of others that hold its parts. */
function mounting(graph: AssemblyGraph, { id, parts }: Module): readonly Tie[] {
  const out = tiesAt(graph, parts.flatMap((part) => nodesOf(graph, part))).filter(({ thing, homes }) => 'each' in thing && homes.size > 1);
  const own = out.filter(({ module }) => module === id);
  return own.length > 0 ? own : out;
}
