import type { AssemblyGraph } from './graph.ts';
import type { Away } from './wants.ts';

/** Whether a tie may not be chosen. */
export type Barred = (tie: number) => boolean;

const nothing: ReadonlySet<number> = new Set();

/** Finds how parts still hang together. Keeps its working space from one search to the next: there are thousands. */
export class WayFinder {
  readonly #graph: AssemblyGraph;
  /** By node and by group: the search that met it last; then, by node, where it was met from. */
  readonly #metNode: Int32Array;
  readonly #metGroup: Int32Array;
  readonly #fromNode: Int32Array;
  readonly #byTie: Int32Array;
  #turn = 0;

  constructor(graph: AssemblyGraph) {
    this.#graph = graph;
    this.#metNode = new Int32Array(graph.nodes.length);
    this.#fromNode = new Int32Array(graph.nodes.length);
    this.#byTie = new Int32Array(graph.nodes.length);
    this.#metGroup = new Int32Array(graph.groups.length);
  }

  /**
   * A way from parts to one that they should be away from, which can be cut at as few places as possible.
   *
   * Breadth first, in layers by the number of ties that may be chosen; ties that may not cost nothing.
   *
   * @param undone 1 for each tie that is undone
   * @param used   ties that do not count besides
   * @returns      its ties from the parts outwards, so that of equal cuts the nearest is taken; nothing when all ways are cut
   */
  way({ away, from, ground, past }: Away, undone: Uint8Array, barred?: Barred, used = nothing): readonly number[] | undefined {
    const { groups, groupsAt, ground: grounded } = this.#graph;
    this.#turn += 1;
    for (const node of away) {
      this.#metNode[node] = this.#turn;
      this.#byTie[node] = -1;
    }
    let layer = [...away];
    while (layer.length > 0) {
      const next: number[] = [];
      for (let at = 0; at < layer.length; at += 1) {
        const node = layer[at] as number;
        if ((ground && grounded[node] === true) || from.has(node)) return this.#traced(node);
        for (const number of groupsAt[node] as readonly number[]) {
          if (this.#metGroup[number] === this.#turn) continue;
          this.#metGroup[number] = this.#turn;
          const { tie, nodes } = groups[number] as AssemblyGraph['groups'][number];
          if (undone[tie] === 1 || past.has(tie) || used.has(tie)) continue;
          const into = barred?.(tie) === true ? layer : next;
          for (const other of nodes) {
            if (this.#metNode[other] === this.#turn) continue;
            this.#metNode[other] = this.#turn;
            this.#fromNode[other] = node;
            this.#byTie[other] = tie;
            into.push(other);
          }
        }
      }
      layer = next;
    }
    return undefined;
  }

  #traced(end: number): readonly number[] {
    const ties: number[] = [];
    for (let node = end; this.#byTie[node] !== -1; node = this.#fromNode[node] as number) {
      const tie = this.#byTie[node] as number;
      if (!ties.includes(tie)) ties.unshift(tie);
    }
    return ties;
  }
}
