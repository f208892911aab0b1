import type { AssemblyGraph } from './graph.ts';
import { incidenceOf, type Incidence } from './incidence.ts';
import type { Away } from './wants.ts';

/** 1 for each tie that may not be chosen. */
export type Barred = Uint8Array;

/** Finds how parts still hang together. Keeps its working space from one search to the next: there are thousands. */
export class WayFinder {
  readonly #graph: AssemblyGraph;
  readonly #places: Incidence;
  /** By node and by group: the search that met it last; then, by node, where it was met from. */
  readonly #metNode: Int32Array;
  readonly #metGroup: Int32Array;
  readonly #fromNode: Int32Array;
  readonly #byTie: Int32Array;
  #layer: Int32Array;
  #next: Int32Array;
  #turn = 0;

  constructor(graph: AssemblyGraph) {
    const { length } = graph.nodes;
    this.#graph = graph;
    this.#places = incidenceOf(graph);
    this.#metNode = new Int32Array(length);
    this.#fromNode = new Int32Array(length);
    this.#byTie = new Int32Array(length);
    this.#metGroup = new Int32Array(graph.groups.length);
    this.#layer = new Int32Array(length);
    this.#next = new Int32Array(length);
  }

  /**
   * A way from parts to one that they should be away from, which can be cut at as few places as possible.
   *
   * Breadth first, in layers by the number of ties that may be chosen; ties that may not cost nothing.
   *
   * @param undone 1 for each tie that is undone
   * @param used   1 for each tie that does not count besides
   * @returns      its ties from the parts outwards, so that of equal cuts the nearest is taken; nothing when all ways are cut
   */
  way({ away, from, ground, past }: Away, undone: Uint8Array, barred?: Barred, used?: Uint8Array): readonly number[] | undefined {
    const { ground: grounded } = this.#graph;
    const { tieOf, firstOfGroup, nodeAt, groupAt, firstOfNode, placesOfNodes } = this.#places;
    const [metNode, metGroup, turn] = [this.#metNode, this.#metGroup, this.#turn + 1];
    const [hasFrom, hasPast] = [from.size > 0, past.size > 0];
    this.#turn = turn;
    let count = 0;
    for (const node of away) {
      if (metNode[node] === turn) continue;
      metNode[node] = turn;
      this.#byTie[node] = -1;
      this.#layer[count] = node;
      count += 1;
    }
    while (count > 0) {
      let later = 0;
      for (let at = 0; at < count; at += 1) {
        const node = this.#layer[at]!;
        if ((ground && grounded[node] === true) || (hasFrom && from.has(node))) return this.#traced(node);
        const end = firstOfNode[node + 1]!;
        for (let index = firstOfNode[node]!; index < end; index += 1) {
          const group = groupAt[placesOfNodes[index]!]!;
          if (metGroup[group] === turn) continue;
          metGroup[group] = turn;
          const tie = tieOf[group]!;
          if (undone[tie] === 1 || used?.[tie] === 1 || (hasPast && past.has(tie))) continue;
          const isFree = barred?.[tie] === 1;
          const last = firstOfGroup[group + 1]!;
          for (let place = firstOfGroup[group]!; place < last; place += 1) {
            const other = nodeAt[place]!;
            if (metNode[other] === turn) continue;
            metNode[other] = turn;
            this.#fromNode[other] = node;
            this.#byTie[other] = tie;
            if (isFree) this.#layer[count++] = other;
            else this.#next[later++] = other;
          }
        }
      }
      [this.#layer, this.#next] = [this.#next, this.#layer];
      count = later;
    }
    return undefined;
  }

  #traced(end: number): readonly number[] {
    const ties: number[] = [];
    for (let node = end; this.#byTie[node] !== -1; node = this.#fromNode[node]!) {
      const tie = this.#byTie[node]!;
      if (!ties.includes(tie)) ties.push(tie);
    }
    return ties.toReversed();
  }
}
