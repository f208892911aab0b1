import { remembered, type Joint, type Machine, type Stack } from '@rotorwright/machine';
import { membersOf, thingIdOf } from '../lookup.ts';
import { fitTime, stackTime, undoTime, wantsHeat, wetLocks } from '../rules/index.ts';

/** A joint with all its copies, or a stack: what is undone as one, and signed as one. */
export interface Tie {
  readonly index: number;
  readonly id: string;
  readonly thing: Joint | Stack;
  readonly module: string;
  /** What it connects: for each copy the nodes that it brings together. */
  readonly groups: readonly (readonly number[])[];
  /** Nodes of all its parts. */
  readonly nodes: readonly number[];
  /** Modules of those parts. */
  readonly homes: ReadonlySet<string>;
  /** s of work: undoing, and making it again; curing and measuring aside. */
  readonly cost: number;
}

/** Parts and what ties them, by number, so that a search can go through them fast. A node is one copy of a part. */
export interface AssemblyGraph {
  readonly machine: Machine;
  /** Instance ids. */
  readonly nodes: readonly string[];
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly ground: readonly boolean[];
  readonly ties: readonly Tie[];
  readonly tieOf: ReadonlyMap<string, number>;
  /** Nodes that one copy of a tie brings together, with the tie. */
  readonly groups: readonly { readonly tie: number; readonly nodes: readonly number[] }[];
  /** For each node the numbers of the groups that it is in. */
  readonly groupsAt: readonly (readonly number[])[];
}

/** What breaking a bond is counted for besides its work, s: the parts may not survive it, so any other way is looked at first. */
const bondBroken = 3600;

/** Cleaning old compound out of one thread, s. Common practice, no source. */
const cleaning = 30;

export const assemblyGraph = remembered((machine: Machine): AssemblyGraph => {
  const parts = [...machine.parts.values()];
  const nodes = parts.flatMap(({ instances }) => instances);
  const nodeOf = new Map(nodes.map((id, at) => [id, at]));
  const ground = parts.flatMap((part) => part.instances.map(() => part.ground));
  const homes = parts.flatMap((part) => part.instances.map(() => part.module));
  const nodesOf = (ids: readonly string[]) => [...new Set(ids.flatMap((id) => partsBehind(machine, id)).flatMap((id) => nodeOf.get(id) ?? []))];

  const things: readonly (Joint | Stack)[] = [...machine.joints.values(), ...machine.stacks.values()];
  const ties = things.map((thing, index): Tie => {
    const groups = ('each' in thing ? thing.each.map(({ seat, holds }) => [...(seat === undefined ? [] : [seat]), ...holds]) : [membersOf(thing)]).map(nodesOf);
    const own = [...new Set(groups.flat())];
    return { index, id: thing.id, thing, module: thing.module, groups, nodes: own, homes: new Set(own.flatMap((node) => homes[node] ?? [])), cost: costOf(machine, thing) };
  });
  // Copies between the same parts connect them only once.
  const groups = ties.flatMap(({ index, groups: own }) => [...new Map(own.map((each) => [each.join(), each])).values()].map((each) => ({ tie: index, nodes: each })));
  const groupsAt: number[][] = nodes.map(() => []);
  for (const [at, group] of groups.entries()) for (const node of group.nodes) groupsAt[node]?.push(at);
  return { machine, nodes, nodeOf, ground, ties, tieOf: new Map(ties.map(({ id, index }) => [id, index])), groups, groupsAt };
});

/** Ties of one or several nodes, each once. */
export function tiesAt({ ties, groups, groupsAt }: AssemblyGraph, nodes: readonly number[]): readonly Tie[] {
  return [...new Set(nodes.flatMap((node) => groupsAt[node] ?? []).flatMap((at) => groups[at]?.tie ?? []))].flatMap((at) => ties[at] ?? []);
}

/** A part by itself; a joint by the part that it sits in: a link on a stud hangs on what carries the stud. */
function partsBehind(machine: Machine, id: string, seen: ReadonlySet<string> = new Set()): readonly string[] {
  const thingId = thingIdOf(machine, id);
  if (machine.parts.has(thingId)) return id === thingId ? (machine.parts.get(id)?.instances ?? []) : [id];
  const joint = machine.joints.get(thingId);
  if (joint === undefined || seen.has(id)) return [];
  const each = id === thingId ? joint.each : joint.each.filter((one) => one.id === id);
  const next = each.flatMap(({ seat, holds }) => (seat === undefined ? holds : [seat]));
  return next.flatMap((one) => partsBehind(machine, one, new Set([...seen, id])));
}

function costOf(machine: Machine, thing: Joint | Stack): number {
  if (!('each' in thing)) return 1.5 * stackTime(thing.order.length, 0);
  const copies = thing.instances.length;
  const broken = thing.kind === 'bond' || (thing.kind === 'press' && wetLocks(thing).length > 0) ? bondBroken : 0;
  return undoTime(thing.kind, copies, wantsHeat(machine, thing)) + fitTime(thing.kind, copies) + cleaning * copies * Math.min(1, wetLocks(thing).length) + broken;
}
