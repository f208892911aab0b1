import { placeOf, remembered, severityOf, type Finding, type FindingCode, type Hazard, type Machine } from '@rotorwright/machine';
import { singleCauses, type FaultTree } from '@rotorwright/reliability';
import { filePlaces } from '../lookup.ts';
import { titleOf } from '../words/index.ts';
import { assemblyOf, type Body } from './assembly.ts';
import type { BasicEvent } from './events.ts';
import { grouped } from './grouping.ts';
import { hazardTrees, type HoldGraph } from './hazard-tree.ts';
import { lossesOf } from './losses.ts';
import { ranksOf } from './rank.ts';

/** A joint or stack of which one failure brings a hazard about. */
export interface SinglePoint {
  /** Thing id, which is the id of the step whose signature guards it. */
  readonly step: string;
  /** What can fail, each enough by itself: one copy, one lock, or the whole step with all its copies. */
  readonly events: readonly BasicEvent[];
  /** One copy is enough; otherwise only all of them left out together. */
  readonly oneIsEnough: boolean;
}

/** What brings a hazard about, by the rules of what keeps what in place. */
export interface HazardHolds {
  readonly hazard: Hazard;
  /** Absent when nothing that the file tells can bring it about. */
  readonly tree?: FaultTree;
  /** Why some of it cannot be followed. */
  readonly gaps: readonly string[];
  /** In the order of the file. */
  readonly singlePoints: readonly SinglePoint[];
}

/** What holds what in a machine, and what comes of it when it does not. */
export interface Holds {
  readonly machine: Machine;
  /** In the order of the file. */
  readonly hazards: ReadonlyMap<string, HazardHolds>;
  readonly events: ReadonlyMap<string, BasicEvent>;
  /** Parts of which the file does not say what keeps them; hazards that it does not explain; joints that keep each other in a circle. */
  readonly findings: readonly Finding[];
  /** For `keeps`, `missing` and their like. */
  readonly graph: HoldGraph;
}

/**
 * Derives from a machine what keeps each part in place, and from its hazards a fault tree each. Nothing of it is typed: the
 * events are joints left undone, locks that give way, stacks put together wrong; parts that break are left out.
 *
 * @source fault trees: IEC 61025 in spirit (from memory); which joint counts as what: decision record 0008
 */
export const holds = remembered((machine: Machine): Holds => {
  const assembly = assemblyOf(machine);
  const ranks = ranksOf(assembly);
  const losses = lossesOf(assembly, ranks);
  const treeOf = hazardTrees({ assembly, ranks, losses });
  const { events } = losses.events;
  const hazards = new Map([...machine.hazards.values()].map((hazard): [string, HazardHolds] => {
    const { top, gaps } = treeOf(hazard);
    if (top === undefined) return [hazard.id, { hazard, gaps, singlePoints: [] }];
    const tree = { top, gates: losses.book.gates };
    return [hazard.id, { hazard, tree, gaps, singlePoints: singlePoints(machine, singleCauses(tree).map((id) => events.get(id)!)) }];
  }));
  return { machine, hazards, events, findings: findingsOf(machine, { assembly, ranks, losses }, hazards), graph: { assembly, ranks, losses } };
});

function singlePoints(machine: Machine, causes: readonly BasicEvent[]): readonly SinglePoint[] {
  const bySteps = grouped(causes, ({ step }) => step);
  const places = filePlaces(machine);
  return [...bySteps].sort(([a], [b]) => places.get(a)! - places.get(b)!).map(([step, events]) => ({ step, events, oneIsEnough: events.some(({ kind }) => kind !== 'skipped') }));
}

function findingsOf(machine: Machine, { assembly, ranks, losses }: HoldGraph, hazards: ReadonlyMap<string, HazardHolds>): readonly Finding[] {
  const finding = (code: FindingCode, path: string, values: Finding['values']): Finding => {
    const place = placeOf(machine, path);
    return { code, severity: severityOf(code), path, ...(place === undefined ? {} : { place }), values };
  };
  const unknown = (body: Body) => ranks.of(body) === undefined;
  // A file that has come to no ground or no joints yet has nothing to be told part by part.
  const loose = machine.joints.size === 0 || assembly.ground.size === 0 ? [] : [...machine.parts.values()].filter(({ instances }) => instances.some(unknown));
  return [
    ...loose.map((part) => finding('place/unknown', part.path, { part: `${titleOf(part)} (${part.id})` })),
    ...[...hazards.values()].flatMap(({ hazard, gaps }) => gaps.map((reason) => finding('hazard/gap', hazard.path, { hazard: hazard.title, reason }))),
    ...[...losses.circles].map((copy) => finding('hold/circle', machine.joints.get(assembly.machine.thingOf.get(copy) ?? copy)?.path ?? '', { joint: copy })),
  ];
}
