/** Somebody's step comes first, another's then. `cured`: what is done first must also have cured. */
export interface Edge {
  readonly first: string;
  readonly later: string;
  readonly cured?: boolean;
}

const noneAfter: ReadonlyMap<string, boolean> = new Map();
const noneBefore: ReadonlySet<string> = new Set();

/** Which step must follow which. Grows while the order is worked out; nobody outside this folder sees it. */
export class OrderGraph {
  readonly nodes: readonly string[];
  readonly #known: ReadonlySet<string>;
  readonly #next = new Map<string, Map<string, boolean>>();
  readonly #previous = new Map<string, Set<string>>();

  constructor(nodes: readonly string[]) {
    this.nodes = nodes;
    this.#known = new Set(nodes);
  }

  /** Edges of a step to itself, and of what is no step, mean nothing. */
  add({ first, later, cured = false }: Edge): void {
    if (first === later || !this.#known.has(first) || !this.#known.has(later)) return;
    const out = this.#next.get(first);
    if (out === undefined) this.#next.set(first, new Map([[later, cured]]));
    else out.set(later, cured || (out.get(later) ?? false));
    const before = this.#previous.get(later);
    if (before === undefined) this.#previous.set(later, new Set([first]));
    else before.add(first);
  }

  remove(first: string, later: string): void {
    this.#next.get(first)?.delete(later);
    this.#previous.get(later)?.delete(first);
  }

  /** Steps that come after, and whether they wait for the cure. */
  next(first: string): ReadonlyMap<string, boolean> {
    return this.#next.get(first) ?? noneAfter;
  }

  /** Steps that come before. */
  previous(later: string): ReadonlySet<string> {
    return this.#previous.get(later) ?? noneBefore;
  }

  reaches(from: string, to: string): boolean {
    const seen = new Set([from]);
    const open = [from];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      if (at === to) return true;
      for (const next of this.next(at).keys()) {
        if (seen.has(next)) continue;
        seen.add(next);
        open.push(next);
      }
    }
    return false;
  }

  /** True when all these edges can be added without closing a loop through any of them. */
  takes(edges: readonly Edge[]): boolean {
    const added: Edge[] = [];
    let fits = true;
    for (const edge of edges) {
      if (edge.first === edge.later || this.next(edge.first).has(edge.later)) continue;
      fits = !this.reaches(edge.later, edge.first);
      if (!fits) break;
      this.add(edge);
      added.push(edge);
    }
    for (const { first, later } of added) this.remove(first, later);
    return fits;
  }
}
