import type { Machine } from '@rotorwright/machine';
import { undoing, unstacking } from '../derive/index.ts';
import { measured } from '../order/index.ts';
import { fitTime, stackTime, strippingCautions, undoTime, undoingToolsOf, wantsHeat } from '../rules/index.ts';
import { stackPhrase, titleOf } from '../words/index.ts';
import { Wants } from './clauses.ts';
import { assemblyGraph, type AssemblyGraph, type Tie } from './graph.ts';
import { reasonWords } from './reasons.ts';
import type { Problem, Sides, Solution } from './problem.ts';
import { search } from './search.ts';
import { isKept, needsOfGoal, needsOfTies, nodesOf, type Why } from './wants.ts';
import type { Reach, Undoing, Way } from './way.ts';

/**
 * What must come apart to have parts bare, joints undone, stacks open or modules out of the machine: the cheapest way
 * in, and others that cost little more.
 *
 * A way is a set of joints and stacks in an order in which each is free to come undone when its turn comes: what keeps
 * it is off, what stands in front is away, a spindle is free of its housing. It costs the work of undoing and of making
 * again. A side that a module keeps, or one of two that can be opened, stays on wherever a way leaves it there.
 *
 * @param goals ids of parts or copies of them, joints, stacks, modules
 * @throws RangeError when the machine has no such thing
 */
export function reach(machine: Machine, goals: readonly string[]): Reach {
  const graph = assemblyGraph(machine);
  const problem: Problem = { graph, needs: needsOfTies(graph, 'kept'), goal: goals.flatMap((goal) => needsOfGoal(graph, goal, 'kept')), sides: sidesOf(graph) };
  const oneSided = search(problem);
  const found = oneSided.solutions.length > 0 || !oneSided.proven ? oneSided : search({ ...problem, needs: needsOfTies(graph, 'open'), goal: goals.flatMap((goal) => needsOfGoal(graph, goal, 'open')), sides: [] });
  return {
    goals,
    ways: found.solutions.filter(({ ties }) => ties.length > 0).map((solution) => wayOf(problem, solution)),
    proven: found.proven,
    lowerBound: found.lowerBound,
    cut: found.cut,
  };
}

/** Modules that open from either side, or that keep one. */
function sidesOf(graph: AssemblyGraph): readonly Sides[] {
  const { machine } = graph;
  return [...machine.modules.values()].flatMap((module): Sides | [] => {
    const named = Object.values(module.openings).flatMap((access) => ('any' in access ? access.any.flatMap((each) => ('off' in each ? [each.off] : [])) : []));
    const parts = [...new Set([...named, ...module.parts.filter((id) => isKept(machine, id))])].filter((id) => machine.parts.has(machine.thingOf.get(id) ?? id));
    const keep = parts.findIndex((id) => isKept(machine, id));
    const ties = parts.map((id) => tiesWithin(graph, module.id, id));
    return parts.length === 0 ? [] : { module: module.id, ties, ...(keep === -1 ? {} : { keep }) };
  });
}

/** Joints that tie a part to others of its own module. */
function tiesWithin(graph: AssemblyGraph, module: string, part: string): readonly number[] {
  const { machine, nodes } = graph;
  const own = nodesOf(graph, part);
  const isInside = (node: number) => machine.parts.get(machine.thingOf.get(nodes[node] ?? '') ?? '')?.module === module;
  return own.flatMap((node) => graph.groupsAt[node] ?? []).flatMap((at) => graph.groups[at] ?? []).filter((group) => group.nodes.some((node) => !own.includes(node) && isInside(node))).map(({ tie }) => tie);
}

function wayOf(problem: Problem, { ties: order }: Solution): Way {
  const { graph } = problem;
  const { machine } = graph;
  const undone = new Uint8Array(graph.ties.length);
  for (const tie of order) undone[tie] = 1;
  const why = reasons(problem, order);
  const undo = order.flatMap((at) => graph.ties[at] ?? []).map((tie) => undoingOf(machine, tie, why.get(tie.index) ?? { why: 'goal', of: tie.id }));
  const place = components(graph, undone);
  const touched = new Set(undo.flatMap(({ id }) => graph.ties[graph.tieOf.get(id) ?? -1]?.nodes ?? []));
  const stays = sliding(graph, place);
  const out = graph.nodes.flatMap((id, node) => (graph.ground.includes(true) && place.isOut(node) && !stays.has(place.of(node)) && (graph.groupsAt[node]?.length ?? 0) > 0 ? [{ id, node }] : []));
  return {
    undo,
    unmeasured: [...machine.measurements.values()].filter((measurement) => machine.couplings.has(measurement.of ?? '') || machine.sensors.has(measurement.of ?? '')).filter((measurement) => {
      const parts = measured(machine, measurement).flatMap((id) => graph.nodeOf.get(id) ?? []);
      return parts.some(place.isOut) && (parts.length < 2 || new Set(parts.map(place.of)).size > 1);
    }).map(({ id }) => id),
    out: out.filter(({ node }) => touched.has(node)).map(({ id }) => id),
    along: out.filter(({ node }) => !touched.has(node)).map(({ id }) => id),
    undoing: undo.reduce((sum, { takes }) => sum + takes, 0),
    again: order.flatMap((at) => graph.ties[at] ?? []).reduce((sum, { thing }) => sum + ('each' in thing ? fitTime(thing.kind, thing.instances.length) : stackTime(thing.order.length, 0)), 0),
    bothSides: sidesOf(graph).filter(({ ties }) => ties.filter((side) => side.length > 0 && side.every((tie) => undone[tie] === 1)).length > 1).map(({ module }) => module),
  };
}

/** What slides on something has moved, but it comes out only when that does: the pieces that stay on what is in its place. */
function sliding({ machine, nodeOf }: AssemblyGraph, { of, isOut }: ReturnType<typeof components>): ReadonlySet<number> {
  const pairs = [...machine.parts.values()].flatMap(({ movesOn, instances }) => instances.flatMap((id) => {
    const [slider, host] = [nodeOf.get(id), nodeOf.get(movesOn ?? '')];
    return slider === undefined || host === undefined ? [] : [{ slider, host }];
  }));
  const stays = new Set<number>();
  for (let before = -1; stays.size > before;) {
    before = stays.size;
    for (const { slider, host } of pairs) if (!isOut(host) || stays.has(of(host))) stays.add(of(slider));
  }
  return stays;
}

/** Which parts still hang together, and which of these no longer hang on the ground. */
function components(graph: AssemblyGraph, undone: Uint8Array): { readonly of: (node: number) => number; readonly isOut: (node: number) => boolean } {
  const component = new Int32Array(graph.nodes.length).fill(-1);
  const grounded = new Set<number>();
  for (const [start] of graph.nodes.entries()) {
    if (component[start] !== -1) continue;
    component[start] = start;
    const open = [start];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      if (graph.ground[node] === true) grounded.add(start);
      for (const at of graph.groupsAt[node] ?? []) {
        const group = graph.groups[at];
        if (group === undefined || undone[group.tie] === 1) continue;
        for (const other of group.nodes) {
          if (component[other] !== -1) continue;
          component[other] = start;
          open.push(other);
        }
      }
    }
  }
  const of = (node: number) => component[node] ?? -1;
  return { of, isOut: (node) => !grounded.has(of(node)) };
}

/** For each tie why it is undone: the goal asks for it, something else needs it by name, or would not come undone without it. */
function reasons({ graph, needs, goal }: Problem, order: readonly number[]): ReadonlyMap<number, Why> {
  const found = new Map<number, Why>();
  for (const { reason, want } of [goal, ...order.toReversed().map((tie) => needs[tie] ?? [])].flat()) if ('undone' in want && !found.has(want.undone)) found.set(want.undone, reason);
  const wants = new Wants(graph);
  for (const [at, tie] of order.entries()) if (!found.has(tie)) found.set(tie, firstMissed({ graph, needs, goal }, wants, order, at) ?? { why: 'goal', of: graph.ties[tie]?.id ?? '' });
  return found;
}

/** What comes undone after one of the ties and would not, had that one stayed; in the end the goal. */
function firstMissed({ graph, needs, goal }: Pick<Problem, 'graph' | 'needs' | 'goal'>, wants: Wants, order: readonly number[], at: number): Why | undefined {
  const without = new Uint8Array(graph.ties.length);
  for (const before of order.slice(0, at)) without[before] = 1;
  for (const later of order.slice(at + 1)) {
    const missed = needs[later]?.find(({ want }) => !wants.isMet(want, without));
    if (missed !== undefined) return missed.reason;
    without[later] = 1;
  }
  return goal.find(({ want }) => !wants.isMet(want, without))?.reason;
}

function undoingOf(machine: Machine, { thing, id, module }: Tie, reason: Why): Undoing {
  const joint = 'each' in thing ? thing : undefined;
  const heat = joint !== undefined && (wantsHeat(machine, joint) || joint.kind === 'press');
  const caution = joint === undefined ? [thing.caution ?? []].flat() : strippingCautions(machine, [joint]);
  return {
    id,
    kind: joint === undefined ? 'stack' : 'joint',
    module,
    title: 'order' in thing ? stackPhrase(machine, thing, module) : titleOf(thing),
    action: 'order' in thing ? unstacking(machine, thing) : undoing(machine, thing),
    reason,
    because: reasonWords(machine, reason, id, module),
    ...(caution.length === 0 ? {} : { caution: caution.join(' ') }),
    tools: joint === undefined ? [] : undoingToolsOf(joint, heat),
    heat,
    locks: (joint?.locks ?? []).filter(({ grade }) => grade !== 'none'),
    takes: 'each' in thing ? undoTime(thing.kind, thing.instances.length, wantsHeat(machine, thing)) : stackTime(thing.order.length, 0) / 2,
  };
}
