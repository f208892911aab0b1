import type { Edge, OrderGraph } from './graph.ts';

/**
 * Takes further edges into a graph without loops as long as they close none. It keeps every step in a place after all
 * that it waits for: an edge that runs with the places needs no look, and one against them only at what lies between.
 *
 * @source D. Pearce, P. Kelly, A dynamic topological sort algorithm for directed acyclic graphs, J. Exp. Algorithmics 11 (2006) (from memory)
 */
export class AcyclicOrder {
  readonly #graph: OrderGraph;
  readonly #place: Map<string, number>;

  /** @param order all steps of the graph, each after those that it waits for */
  constructor(graph: OrderGraph, order: readonly string[]) {
    this.#graph = graph;
    this.#place = new Map(order.map((id, at) => [id, at]));
  }

  /** Leaves out an edge that would close a loop. */
  add(edge: Edge): void {
    const [least, most] = [this.#place.get(edge.later), this.#place.get(edge.first)];
    if (least === undefined || most === undefined) return;
    if (least < most) {
      // 1. What follows on the later step, up to the place of the first: that itself would be a loop.
      const ahead = this.#met(edge.later, (id) => this.#graph.next(id).keys(), (place) => place <= most);
      if (ahead.includes(edge.first)) return;
      // 2. What leads to the first step, down to the place of the later.
      const behind = this.#met(edge.first, (id) => this.#graph.previous(id), (place) => place >= least);
      // 3. These move in front of those, into the places that both have now.
      const moved = [...this.#inPlace(behind), ...this.#inPlace(ahead)];
      const places = moved.map((id) => this.#placeOf(id)).sort((a, b) => a - b);
      moved.forEach((id, at) => this.#place.set(id, places[at] ?? 0));
    }
    this.#graph.add(edge);
  }

  #placeOf(id: string): number {
    return this.#place.get(id) ?? 0;
  }

  #inPlace(ids: readonly string[]): readonly string[] {
    return ids.toSorted((a, b) => this.#placeOf(a) - this.#placeOf(b));
  }

  #met(start: string, next: (id: string) => Iterable<string>, isBetween: (place: number) => boolean): readonly string[] {
    const met = new Set([start]);
    for (const id of met) for (const other of next(id)) if (isBetween(this.#placeOf(other))) met.add(other);
    return [...met];
  }
}
