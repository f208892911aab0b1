import { remembered } from '@rotorwright/machine';
import type { AssemblyGraph } from './graph.ts';

/** Which node is in which group, laid out for searches that go through all of a machine many times. A place is one node in one group. */
export interface Incidence {
  /** Tie of each group. */
  readonly tieOf: Int32Array;
  /** Places group by group: where those of each group begin, and last where all end; and the node of each place, and its group. */
  readonly firstOfGroup: Int32Array;
  readonly nodeAt: Int32Array;
  readonly groupAt: Int32Array;
  /** The same places node by node: where those of each node begin, and last where all end. */
  readonly firstOfNode: Int32Array;
  readonly placesOfNodes: Int32Array;
}

export const incidenceOf = remembered(({ groups, nodes }: AssemblyGraph): Incidence => {
  const nodeAt = Int32Array.from(groups.flatMap((group) => group.nodes));
  const placesOf: number[][] = nodes.map(() => []);
  for (const [place, node] of nodeAt.entries()) placesOf[node]?.push(place);
  return {
    tieOf: Int32Array.from(groups, ({ tie }) => tie),
    firstOfGroup: startsOf(groups.map((group) => group.nodes.length)),
    nodeAt,
    groupAt: Int32Array.from(groups.flatMap((group, at) => group.nodes.map(() => at))),
    firstOfNode: startsOf(placesOf.map((places) => places.length)),
    placesOfNodes: Int32Array.from(placesOf.flat()),
  };
});

/** Where each of some rows begins when they stand one after the other, and last where all of them end. */
function startsOf(lengths: readonly number[]): Int32Array {
  const starts = new Int32Array(lengths.length + 1);
  for (const [at, length] of lengths.entries()) starts[at + 1] = (starts[at] as number) + length;
  return starts;
}
