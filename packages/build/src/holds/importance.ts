import { omissionTree, rangeOf, type ChanceRange, type WayOfWorking } from './chance.ts';
import type { BasicEvent } from './events.ts';
import type { HazardHolds, Holds } from './holds.ts';

/** How much one step weighs among all whose omission can bring a hazard about. */
export interface Importance {
  /** Thing id of the joint or stack, which is the step whose signature guards it. */
  readonly step: string;
  /** Its omission that matters most. */
  readonly event: BasicEvent;
  /** It is enough by itself. */
  readonly alone: boolean;
  /** What the hazard's chance gains when that omission goes from impossible to certain (Birnbaum). */
  readonly gain: ChanceRange;
  /** Share of the hazard's chance that would fall away if the step were never left out (Fussell–Vesely). The shares of all steps may come to more than 1. */
  readonly share: ChanceRange;
}

/**
 * The steps that a hazard's chance hangs on, the weightiest first, at both ends and the middle of the published ranges.
 *
 * @returns nothing where `hazardChance` has nothing
 * @source NUREG/CR-3385, Measures of risk importance (1983): Birnbaum; Fussell–Vesely as 1 − P(step never missed)/P (from memory)
 */
export function importances(holds: Holds, hazard: HazardHolds, way: WayOfWorking): readonly Importance[] | undefined {
  const tree = omissionTree(holds, hazard);
  if (tree === undefined) return undefined;
  const whole = { low: tree.solve(way, 'low'), middle: tree.solve(way, 'middle'), high: tree.solve(way, 'high') };
  const single = new Set(hazard.singlePoints.flatMap(({ events }) => events.map(({ id }) => id)));
  const first = new Map<string, BasicEvent>();
  for (const event of tree.events) {
    const known = first.get(event.step);
    if (known === undefined || whole.middle.birnbaum[event.id]! > whole.middle.birnbaum[known.id]!) first.set(event.step, event);
  }
  return [...first]
    .map(([step, event]): Importance => ({
      step, event, alone: single.has(event.id),
      gain: inOrder(rangeOf((end) => whole[end].birnbaum[event.id]!)),
      share: inOrder(rangeOf((end) => (whole[end].probability === 0 ? 0 : 1 - tree.solve(way, end, step).probability / whole[end].probability))),
    }))
    .toSorted((a, b) => b.share.middle - a.share.middle || b.gain.middle - a.gain.middle);
}

/** Gain and share may fall where the chances rise: their ends are the least and the most. */
function inOrder({ low, middle, high }: ChanceRange): ChanceRange {
  const [least, between, most] = [low, middle, high].toSorted((a, b) => a - b) as [number, number, number];
  return { low: least, middle: between, high: most };
}
