import type { Leg } from './legs.ts';

/** One coupling on the way of the motion; `forward` when it passes from the coupling's driver to its driven side. */
export interface Hop {
  readonly leg: Leg;
  readonly forward: boolean;
  readonly from: string;
  readonly to: string;
}

export interface Reach {
  /** Way to every shaft that turns, the source included with an empty one. */
  readonly paths: ReadonlyMap<string, readonly Hop[]>;
  /** Couplings that tie turning shafts to each other. */
  readonly engaged: ReadonlySet<string>;
  /** One-way clutches between turning shafts that the motion does not come through. */
  readonly overrunning: readonly Leg[];
}

/**
 * Which shafts turn with a source, and on which way the motion comes.
 *
 * A one-way clutch passes motion from driver to driven only: what comes from its driven side overruns it.
 * Ways of known tooth counts and without one-way clutches are taken first; the rest wait until no other is left.
 */
export function reach(legs: ReadonlyMap<string, Leg>, source: string, options: { readonly clutchesOpen: boolean }): Reach {
  const usable = [...legs.values()].filter((leg) => !(options.clutchesOpen && leg.coupling.kind === 'centrifugal-clutch') && leg.driver !== leg.driven);
  const meeting = new Map<string, Leg[]>();
  for (const leg of usable) for (const shaft of [leg.driver, leg.driven]) meeting.set(shaft, [...(meeting.get(shaft) ?? []), leg]);
  const paths = new Map<string, readonly Hop[]>([[source, []]]);
  const engaged = new Set<string>();
  let ready = [source];
  const waiting: Hop[] = [];
  const take = (hop: Hop): void => {
    if (paths.has(hop.to)) return;
    paths.set(hop.to, [...paths.get(hop.from)!, hop]);
    engaged.add(hop.leg.coupling.id);
    ready.push(hop.to);
  };
  while (ready.length > 0) {
    const shafts = ready;
    ready = [];
    for (const shaft of shafts) {
      for (const leg of meeting.get(shaft) ?? []) {
        const forward = leg.driver === shaft;
        if (leg.coupling.kind === 'one-way' && !forward) continue;
        const hop = { leg, forward, from: shaft, to: forward ? leg.driven : leg.driver };
        if (leg.coupling.kind === 'one-way' || leg.missing.length > 0) waiting.push(hop);
        else take(hop);
      }
    }
    while (ready.length === 0 && waiting.length > 0) take(waiting.shift()!);
  }
  const between = usable.filter((leg) => paths.has(leg.driver) && paths.has(leg.driven));
  for (const leg of between) if (leg.coupling.kind !== 'one-way') engaged.add(leg.coupling.id);
  return { paths, engaged, overrunning: between.filter((leg) => leg.coupling.kind === 'one-way' && !engaged.has(leg.coupling.id)) };
}
