import type { Machine } from '@rotorwright/machine';
import { namedBy, thingIdOf } from '../lookup.ts';
import type { OrderGraph } from './graph.ts';

/**
 * Modules in the order of work. A module waits for those whose parts its joints and stacks are built on. Measuring does
 * not count: a mesh is measured when both of its modules stand, and neither waits for that. Where modules lean on each
 * other, the file's order decides.
 */
export function moduleOrder(machine: Machine, graph: OrderGraph, homeOf: (step: string) => string): readonly { readonly id: string; readonly after: readonly string[] }[] {
  const before = new Map([...machine.modules.keys()].map((id) => [id, new Set<string>()]));
  const builds = (step: string) => machine.joints.has(step) || machine.stacks.has(step);
  for (const first of graph.nodes.filter(builds)) {
    for (const later of graph.next(first).keys()) if (builds(later) && homeOf(first) !== homeOf(later)) before.get(homeOf(later))?.add(homeOf(first));
  }
  const leaning = leanings(machine);
  const left = new Set(machine.modules.keys());
  const done: { id: string; after: readonly string[] }[] = [];
  const isReady = (edges: ReadonlyMap<string, ReadonlySet<string>>, id: string) => ![...(edges.get(id) ?? [])].some((other) => left.has(other));
  while (left.size > 0) {
    const all = [...left];
    const id = all.find((each) => isReady(before, each) && isReady(leaning, each)) ?? all.find((each) => isReady(before, each)) ?? all[0] ?? '';
    left.delete(id);
    const waitsFor = new Set([...(before.get(id) ?? []), ...(leaning.get(id) ?? [])]);
    done.push({ id, after: done.flatMap((each) => (waitsFor.has(each.id) ? [each.id] : [])) });
  }
  return done;
}

/** Modules whose parts a module's joints seat in, hold, or whose parts its stacks stand on. */
function leanings(machine: Machine): ReadonlyMap<string, ReadonlySet<string>> {
  const leaning = new Map<string, Set<string>>();
  const lean = (module: string, id: string) => {
    const thing = thingIdOf(machine, id);
    const home = (machine.parts.get(thing) ?? machine.joints.get(thing))?.module;
    if (home !== undefined && home !== module) leaning.set(module, (leaning.get(module) ?? new Set()).add(home));
  };
  for (const joint of machine.joints.values()) for (const id of namedBy(joint)) lean(joint.module, id);
  for (const stack of machine.stacks.values()) for (const id of [stack.spindle, ...stack.housing]) lean(stack.module, id);
  return leaning;
}
