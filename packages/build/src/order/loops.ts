import type { OrderGraph } from './graph.ts';

/**
 * Groups of steps that all wait for each other.
 *
 * Tarjan's strongly connected components, with the stack of calls written out, so that a long chain cannot overflow it.
 *
 * @source R. Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1 (1972) (from memory)
 */
export function knots(graph: OrderGraph): readonly (readonly string[])[] {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const path: string[] = [];
  const onPath = new Set<string>();
  const found: string[][] = [];

  const enter = (node: string) => {
    index.set(node, index.size);
    low.set(node, index.size - 1);
    path.push(node);
    onPath.add(node);
    return { node, todo: [...graph.next(node).keys()] };
  };
  const lower = (node: string, to: number) => low.set(node, Math.min(low.get(node) ?? to, to));

  for (const start of graph.nodes) {
    if (index.has(start)) continue;
    const calls = [enter(start)];
    for (let call = calls.at(-1); call !== undefined; call = calls.at(-1)) {
      const next = call.todo.pop();
      if (next !== undefined) {
        if (!index.has(next)) calls.push(enter(next));
        else if (onPath.has(next)) lower(call.node, index.get(next) ?? 0);
        continue;
      }
      calls.pop();
      const caller = calls.at(-1);
      if (caller !== undefined) lower(caller.node, low.get(call.node) ?? 0);
      if (low.get(call.node) !== index.get(call.node)) continue;
      const knot = path.splice(path.indexOf(call.node));
      for (const member of knot) onPath.delete(member);
      if (knot.length > 1) found.push(knot);
    }
  }
  return found;
}

/** A shortest loop through a step, starting with it; the last one leads back to the first. */
export function loopThrough(graph: OrderGraph, start: string): readonly string[] {
  const from = new Map<string, string>();
  const open = [start];
  for (let at = open.shift(); at !== undefined; at = open.shift()) {
    for (const next of graph.next(at).keys()) {
      if (next === start) {
        const loop = [at];
        for (let before = from.get(at); before !== undefined; before = from.get(before)) loop.unshift(before);
        return loop;
      }
      if (from.has(next)) continue;
      from.set(next, at);
      open.push(next);
    }
  }
  return [start];
}
