import { minimalCutSets, omission, probabilitySolver, type FaultTree, type ListKind, type SecondLook, type TopProbability } from '@rotorwright/reliability';
import type { BasicEvent } from './events.ts';
import { withOnly } from './gate-book.ts';
import type { HazardHolds, Holds } from './holds.ts';

/** Four ways of working, from the one that leaves most out to the one that leaves least. */
export type WayOfWorking = 'no list' | 'list' | 'ticked list' | 'second look';

export const waysOfWorking: readonly WayOfWorking[] = ['no list', 'list', 'ticked list', 'second look'];

/** Chances never stand alone: published figures differ by such factors. */
export interface ChanceRange {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

const habits: Readonly<Record<WayOfWorking, readonly [ListKind, SecondLook]>> = {
  'no list': ['none', 'none'],
  list: ['unticked', 'none'],
  'ticked list': ['ticked', 'none'],
  'second look': ['ticked', 'listed'],
};

/**
 * Chance that one item of a list is left out and nobody sees it.
 *
 * @param items of the list that it stands in: its module's steps
 * @source NUREG/CR-1278 (from memory), by `omission`: an ordering of habits and no forecast
 */
export function omissionRange(way: WayOfWorking, items: number): ChanceRange {
  const { perStep, errorFactor } = omission(Math.max(1, items), ...habits[way]);
  return { low: perStep / errorFactor, middle: perStep, high: Math.min(1, perStep * errorFactor) };
}

/** How many steps stand in one list with each step: those of its module. */
export function listLengths({ machine }: Holds): (step: string) => number {
  const lengths = new Map([...machine.modules.values()].map(({ id, joints, stacks, measurements, steps }) => [id, joints.length + stacks.length + measurements.length + steps.length]));
  return (step) => lengths.get((machine.joints.get(step) ?? machine.stacks.get(step))?.module ?? '') ?? 1;
}

/** A tree that needs more nodes than this takes longer than a page may wait. */
const largestDiagram = 200_000;

const isOmission = ({ kind }: BasicEvent): boolean => kind === 'undone' || kind === 'skipped' || kind === 'wrong';

/** The part of a hazard's tree that omissions make, ready to be solved for any way of working. */
export interface OmissionTree {
  readonly events: readonly BasicEvent[];
  /** Chance and slopes at one end of the published ranges; steps in `never` are taken as done for certain. */
  readonly solve: (way: WayOfWorking, end: keyof ChanceRange, never?: string) => TopProbability;
}

/**
 * Nobody has published how often a lock gives way, so locks are taken to hold.
 *
 * @returns nothing when omissions alone cannot bring the hazard about, or when the tree is too large to be solved exactly
 * @neglects that one slip brings the next: steps, and copies within a step, are taken as independent
 */
export function omissionTree(holds: Holds, { tree }: HazardHolds): OmissionTree | undefined {
  const omissions = tree && withOnly(tree, (id) => isOmission(holds.events.get(id)!));
  const solve = omissions && probabilitySolver(omissions, largestDiagram);
  if (omissions === undefined || solve === undefined) return undefined;
  const lengthOf = listLengths(holds);
  const events = eventsOf(omissions).map((id) => holds.events.get(id)!);
  return { events, solve: (way, end, never) => solve(Object.fromEntries(events.map(({ id, step }) => [id, step === never ? 0 : omissionRange(way, lengthOf(step))[end]]))) };
}

/** Chance that omissions alone bring a hazard about, in each way of working, exact for independent events; nothing where it cannot be solved. */
export function hazardChance(holds: Holds, hazard: HazardHolds): Readonly<Record<WayOfWorking, ChanceRange>> | undefined {
  const tree = omissionTree(holds, hazard);
  return tree && (Object.fromEntries(waysOfWorking.map((way) => [way, rangeOf((end) => tree.solve(way, end).probability)])) as Record<WayOfWorking, ChanceRange>);
}

/** The same at the low end, the middle and the high end of the published figures. */
export function rangeOf(at: (end: keyof ChanceRange) => number): ChanceRange {
  return { low: at('low'), middle: at('middle'), high: at('high') };
}

/** Smallest combinations of two events that bring a hazard about, none of them alone. */
export function pairsOf({ tree }: HazardHolds): readonly (readonly string[])[] {
  return tree === undefined ? [] : minimalCutSets(tree, 2).sets().filter((set) => set.length === 2);
}

/** Names of the basic events below the top. */
export function eventsOf(tree: FaultTree): readonly string[] {
  const found = new Set([tree.top]);
  for (const name of found) for (const input of tree.gates[name]?.inputs ?? []) found.add(input);
  return [...found].filter((name) => tree.gates[name] === undefined);
}
