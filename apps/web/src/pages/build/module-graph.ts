/** A box of the graph, in reading order of layers: whatever comes first stands further left. */
export interface GraphBox {
  readonly id: string;
  readonly layer: number;
  readonly row: number;
  readonly x: number;
  readonly y: number;
}

export interface GraphArrow {
  readonly from: string;
  readonly to: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

export interface ModuleGraph {
  readonly boxes: readonly GraphBox[];
  readonly arrows: readonly GraphArrow[];
  readonly layers: readonly (readonly string[])[];
  readonly width: number;
  readonly height: number;
}

export interface GraphNode {
  readonly id: string;
  /** Ids of what comes first. */
  readonly after: readonly string[];
}

export interface GraphMetrics {
  readonly boxWidth: number;
  readonly boxHeight: number;
  readonly gapX: number;
  readonly gapY: number;
}

type Edge = readonly [from: string, to: string];

/**
 * Lays modules out in layers by longest path, with crossings lowered by sweeping averages, and routes arrows in the
 * gaps between. Arrows that others imply are left out. In a loop the arrow that closes it is left out: the plan
 * reports the loop itself.
 */
export function layModules(nodes: readonly GraphNode[], metrics: GraphMetrics): ModuleGraph {
  const known = new Set(nodes.map((node) => node.id));
  const edges = withoutLoops(nodes.map((node) => node.id), nodes.flatMap((node) => [...new Set(node.after)].filter((id) => known.has(id) && id !== node.id).map((id): Edge => [id, node.id])));
  const reduced = edges.filter(([from, to]) => !reaches(edges, from, to, true));
  const layerOf = longestPaths(nodes.map((node) => node.id), reduced);
  const { layers, chains } = order(nodes, reduced, layerOf);
  return route(layers, chains, metrics, known);
}

const successors = (edges: readonly Edge[], id: string): readonly string[] => edges.flatMap(([from, to]) => (from === id ? [to] : []));

/** Whether `to` can be reached from `from`; `longer`: by more than the direct arrow. */
function reaches(edges: readonly Edge[], from: string, to: string, longer: boolean): boolean {
  const seen = new Set<string>();
  const stack = successors(edges, from).filter((id) => !longer || id !== to);
  for (let id = stack.pop(); id !== undefined; id = stack.pop()) {
    if (id === to) return true;
    if (!seen.has(id)) {
      seen.add(id);
      stack.push(...successors(edges, id));
    }
  }
  return false;
}

function withoutLoops(ids: readonly string[], edges: readonly Edge[]): readonly Edge[] {
  const kept: Edge[] = [];
  const rank = new Map(ids.map((id, index) => [id, index]));
  const forwardFirst = [...edges].sort(([a, b], [c, d]) => Number((rank.get(a) ?? 0) > (rank.get(b) ?? 0)) - Number((rank.get(c) ?? 0) > (rank.get(d) ?? 0)));
  for (const edge of forwardFirst) if (!reaches(kept, edge[1], edge[0], false) && edge[0] !== edge[1]) kept.push(edge);
  return kept;
}

function longestPaths(ids: readonly string[], edges: readonly Edge[]): ReadonlyMap<string, number> {
  const layer = new Map<string, number>();
  const visit = (id: string): number => {
    const done = layer.get(id);
    if (done !== undefined) return done;
    const at = Math.max(-1, ...edges.flatMap(([from, to]) => (to === id ? [visit(from)] : []))) + 1;
    layer.set(id, at);
    return at;
  };
  for (const id of ids) visit(id);
  return layer;
}

interface Ordered {
  readonly layers: readonly (readonly string[])[];
  /** Each arrow as the places that it passes, with its way points in the layers between. */
  readonly chains: readonly (readonly string[])[];
}

function order(nodes: readonly GraphNode[], edges: readonly Edge[], layerOf: ReadonlyMap<string, number>): Ordered {
  const chains = edges.map(([from, to]) => {
    const first = layerOf.get(from) ?? 0;
    const between = Array.from({ length: (layerOf.get(to) ?? 0) - first - 1 }, (_, index) => `${from}>${first + index + 1}`);
    return [from, ...between, to];
  });
  const layers: string[][] = [];
  const put = (id: string, layer: number): void => {
    const list = (layers[layer] ??= []);
    if (!list.includes(id)) list.push(id);
  };
  for (const node of nodes) put(node.id, layerOf.get(node.id) ?? 0);
  for (const chain of chains) {
    const first = layerOf.get(chain[0] ?? '') ?? 0;
    chain.slice(1, -1).forEach((id, index) => put(id, first + index + 1));
  }
  const neighbours = (id: string, step: 1 | -1): readonly string[] => chains.flatMap((chain) => chain.flatMap((one, index) => (one === id ? (chain[index + step] ?? []) : [])));
  let sorted: readonly (readonly string[])[] = layers;
  let best = sorted;
  let fewest = crossings(sorted, chains);
  for (let sweep = 0; sweep < 8 && fewest > 0; sweep += 1) {
    const step = sweep % 2 === 0 ? -1 : 1;
    const next = sorted.map((layer) => [...layer]);
    const down = next.map((_, index) => index);
    const sequence = step === -1 ? down : down.toReversed();
    for (const at of sequence) {
      const beside = next[at + step];
      if (!beside) continue;
      const middle = (id: string, index: number): number => {
        const places = neighbours(id, step).map((other) => beside.indexOf(other)).filter((place) => place >= 0);
        return places.length === 0 ? index : places.reduce((sum, place) => sum + place, 0) / places.length;
      };
      next[at] = (next[at] ?? []).map((id, index) => ({ id, key: middle(id, index), index })).sort((a, b) => a.key - b.key || a.index - b.index).map(({ id }) => id);
    }
    sorted = next;
    const count = crossings(sorted, chains);
    if (count < fewest) {
      fewest = count;
      best = sorted;
    }
  }
  return { layers: best, chains };
}

/** How many pairs of arrows cross between neighbouring layers. */
export function crossings(layers: readonly (readonly string[])[], chains: readonly (readonly string[])[]): number {
  const place = new Map(layers.flatMap((layer, at) => layer.map((id, row) => [id, { at, row }] as const)));
  const links = chains.flatMap((chain) => chain.slice(1).map((to, index) => ({ a: place.get(chain[index] ?? ''), b: place.get(to) })));
  let count = 0;
  for (const [index, one] of links.entries()) {
    for (const other of links.slice(index + 1)) {
      if (!one.a || !one.b || !other.a || !other.b || one.a.at !== other.a.at) continue;
      if ((one.a.row - other.a.row) * (one.b.row - other.b.row) < 0) count += 1;
    }
  }
  return count;
}

function route(layers: readonly (readonly string[])[], chains: readonly (readonly string[])[], metrics: GraphMetrics, known: ReadonlySet<string>): ModuleGraph {
  const { boxWidth, boxHeight, gapX, gapY } = metrics;
  const pitch = boxHeight + gapY;
  // Way points need only a thin lane.
  const tall = (id: string): number => (known.has(id) ? pitch : gapY);
  const heights = layers.map((layer) => layer.reduce((sum, id) => sum + tall(id), 0));
  const total = Math.max(0, ...heights);
  const boxes: GraphBox[] = [];
  const middles = new Map<string, { readonly left: number; readonly right: number; readonly y: number }>();
  layers.forEach((layer, at) => {
    let y = (total - (heights[at] ?? 0)) / 2;
    layer.forEach((id, row) => {
      const x = at * (boxWidth + gapX);
      if (known.has(id)) boxes.push({ id, layer: at, row, x, y: y + gapY / 2 });
      middles.set(id, { left: x, right: x + boxWidth, y: y + tall(id) / 2 });
      y += tall(id);
    });
  });
  // Arrows that leave one box share one track; tracks of a gap stand apart.
  const tracks = new Map<string, number>();
  const usedIn = new Map<number, number>();
  const trackOf = (id: string, layer: number): number => {
    const key = `${layer}:${id}`;
    const found = tracks.get(key);
    if (found !== undefined) return found;
    const next = usedIn.get(layer) ?? 0;
    usedIn.set(layer, next + 1);
    tracks.set(key, next);
    return next;
  };
  const arrows = chains.map((chain): GraphArrow => {
    const points: (readonly [number, number])[] = [];
    chain.forEach((id, index) => {
      const here = middles.get(id);
      const next = middles.get(chain[index + 1] ?? '');
      if (!here) return;
      if (index === 0) points.push([here.right, here.y]);
      else if (index < chain.length - 1) points.push([here.left, here.y], [here.right, here.y]);
      if (!next) {
        points.push([here.left, here.y]);
      } else if (Math.abs(next.y - here.y) > 0.5) {
        const layer = Math.round(here.left / (boxWidth + gapX));
        const x = here.right + gapX * (0.25 + 0.12 * (trackOf(id, layer) % 4));
        points.push([x, here.y], [x, next.y]);
      }
    });
    return { from: chain[0] ?? '', to: chain.at(-1) ?? '', points };
  });
  return { boxes, arrows, layers: layers.map((layer) => layer.filter((id) => known.has(id))), width: Math.max(0, layers.length * (boxWidth + gapX) - gapX), height: total };
}
