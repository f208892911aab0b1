import { severityOf, type Access, type Finding, type Machine } from '@rotorwright/machine';
import { Queue } from '../queue.ts';
import { closersOf, moduleOf } from '../lookup.ts';
import { AcyclicOrder } from './acyclic.ts';
import { OrderGraph, type Edge } from './graph.ts';
import { knots, loopThrough } from './loops.ts';
import { moduleOrder } from './modules.ts';
import { placingIn, reachesOut, type Placing } from './placing.ts';
import { orderRules, type AccessRule } from './rules.ts';

/** Where a step stands in the order of work. */
export interface Ordered {
  readonly id: string;
  readonly after: readonly string[];
  readonly cured: readonly string[];
}

export interface WorkOrder {
  readonly modules: readonly { readonly id: string; readonly after: readonly string[] }[];
  readonly steps: readonly Ordered[];
  readonly findings: readonly Finding[];
}

/**
 * The order of work: what the file demands, then what usually follows, then the order of the file.
 *
 * @param steps ids of all steps, module by module, as the file has them
 * @param homeOf module of a step
 */
export function workOrder(machine: Machine, steps: readonly string[], homeOf: (step: string) => string): WorkOrder {
  const placing = placingIn(machine);
  const rules = orderRules(machine, placing);
  const graph = new OrderGraph(steps);
  for (const edge of rules.must) graph.add(edge);
  for (const rule of rules.access) require(graph, placing, rule, rule.behind, false);
  for (const rule of rules.access) require(graph, placing, rule, rule.behind, true);

  const place = new Map(steps.map((id, at) => [id, at]));
  const filePlace = (id: string) => place.get(id) ?? steps.length;
  const findings = untie(machine, graph, filePlace);
  const acyclic = new AcyclicOrder(graph, sorted(graph, filePlace));
  for (const edge of rules.usual) acyclic.add(edge);

  const modules = moduleOrder(machine, graph, homeOf);
  const moduleRank = new Map(modules.map(({ id }, at) => [id, at]));
  const closers = new Set([...machine.stacks.values()].flatMap((stack) => closersOf(machine, stack)));
  // Module by module, then by urgency, then as the file has it.
  const rank = (id: string): number => ((moduleRank.get(homeOf(id)) ?? 0) * urgencies + urgency(machine, closers, id)) * steps.length + filePlace(id);
  return { modules, steps: reduced(graph, sorted(graph, rank)), findings };
}

/** Takes an access rule into the graph: plain parts of it first, then, where one of several will do, the first that closes no loop. */
function require(graph: OrderGraph, placing: Placing, rule: AccessRule, access: Access, choices: boolean): void {
  if ('all' in access) {
    for (const each of access.all) require(graph, placing, rule, each, choices);
  } else if ('any' in access) {
    if (!choices) return;
    const kept = (each: Access) => 'off' in each && rule.keep !== undefined && (each.off === rule.keep || each.off.endsWith(`/${rule.keep}`));
    const alternatives = [...access.any.filter((each) => !kept(each)), ...access.any.filter(kept)].map((each) => edgesFor(placing, rule, each));
    const chosen = alternatives.find((edges) => graph.takes(edges)) ?? alternatives[0] ?? [];
    for (const edge of chosen) graph.add(edge);
  } else if (!choices) {
    for (const edge of edgesFor(placing, rule, access)) graph.add(edge);
  }
}

function edgesFor(placing: Placing, rule: AccessRule, access: Access): readonly Edge[] {
  if ('off' in access) {
    const closing = placing.of(access.off).filter((step) => !rule.steps.includes(step));
    return rule.steps.flatMap((first) => closing.map((later) => ({ first, later })));
  }
  // An alternative inside an alternative: its first way stands for it.
  const parts = 'all' in access ? access.all : access.any.slice(0, 1);
  return parts.flatMap((each) => edgesFor(placing, rule, each));
}

/** Names each loop, and cuts it where it runs against the order of the file, so that there is still a plan. */
function untie(machine: Machine, graph: OrderGraph, filePlace: (id: string) => number): readonly Finding[] {
  return knots(graph).map((knot) => {
    const [start = ''] = knot.toSorted((a, b) => filePlace(a) - filePlace(b));
    const loop = loopThrough(graph, start);
    const members = new Set(knot);
    for (const first of knot) for (const later of graph.next(first).keys()) if (members.has(later) && filePlace(later) < filePlace(first)) graph.remove(first, later);
    return cycleFinding(machine, loop);
  });
}

function cycleFinding(machine: Machine, loop: readonly string[]): Finding {
  const [start = ''] = loop;
  const path = machine.modules.get(start)?.path ?? thingPath(machine, start);
  const place = machine.places.get(path);
  return { code: 'order/cycle', severity: severityOf('order/cycle'), path, ...(place === undefined ? {} : { place }), values: { loop: [...loop, start].join(' → '), steps: loop } };
}

function thingPath(machine: Machine, id: string): string {
  return (machine.joints.get(id) ?? machine.stacks.get(id) ?? machine.measurements.get(id) ?? machine.steps.get(id) ?? machine.parts.get(id))?.path ?? id;
}

/** How many urgencies there are. */
const urgencies = 5;

/** What is done first among steps that could all be done, from 0 on: prove and close what was just assembled, mount the module last. */
function urgency(machine: Machine, closers: ReadonlySet<string>, id: string): number {
  const written = machine.steps.get(id);
  if (machine.measurements.has(id) || (written !== undefined && written.after.length > 0)) return 0;
  if (written !== undefined) return written.before.length > 0 ? 1 : 4;
  const joint = machine.joints.get(id);
  if (joint === undefined) return machine.modules.has(id) ? 0 : 2;
  const keeps = joint.each.some(({ holds }) => holds.some((held) => machine.joints.has(machine.thingOf.get(held) ?? held) && moduleOf(machine, held) === joint.module));
  if (closers.has(id) || keeps) return 1;
  return reachesOut(machine, joint) ? 3 : 2;
}

/** Kahn's algorithm; of the steps that are free, the one of the lowest rank goes next. No two ranks are alike; the graph has no loops any more. */
function sorted(graph: OrderGraph, rank: (id: string) => number): readonly string[] {
  const waiting = new Map<string, number>();
  const free = new Queue(rank);
  for (const id of graph.nodes) {
    const count = graph.previous(id).size;
    if (count === 0) free.push(id);
    else waiting.set(id, count);
  }
  const order: string[] = [];
  for (let next = free.pop(); next !== undefined; next = free.pop()) {
    order.push(next);
    for (const later of graph.next(next).keys()) {
      const left = (waiting.get(later) ?? 0) - 1;
      waiting.set(later, left);
      if (left === 0) free.push(later);
    }
  }
  return order;
}

/** Leaves out what follows from the rest: if c waits for b, and b for a, c need not name a. Waiting for a cure is always named. */
function reduced(graph: OrderGraph, order: readonly string[]): readonly Ordered[] {
  const place = new Map(order.map((id, at) => [id, at]));
  const placeOf = (id: string) => place.get(id) ?? 0;
  // For each step a bit for every one that comes before it.
  const words = Math.ceil(order.length / 32);
  const before = new Uint32Array(order.length * words);
  const isBefore = (early: number, late: number) => ((before[late * words + (early >> 5)] ?? 0) & (1 << (early & 31))) !== 0;
  return order.map((id, at) => {
    const places = Array.from(graph.previous(id), placeOf).sort((a, b) => a - b);
    for (const early of places) {
      for (let word = 0; word < words; word += 1) before[at * words + word]! |= before[early * words + word]!;
      before[at * words + (early >> 5)]! |= 1 << (early & 31);
    }
    const after: string[] = [];
    const cured: string[] = [];
    for (const early of places) {
      const first = order[early]!;
      const cures = graph.next(first).get(id) === true;
      if (cures) cured.push(first);
      if (cures || !places.some((other) => isBefore(early, other))) after.push(first);
    }
    return { id, after, cured };
  });
}
