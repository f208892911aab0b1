import { stopOf, type Machine, type Member, type Stack, type StackPlace } from '@rotorwright/machine';
import { listed } from '../words/index.ts';
import { stopName } from './facings.ts';
import type { StackLoads } from './loads.ts';

/** What a bearing does in its stack. */
export interface BearingRole {
  readonly id: string;
  readonly carries: boolean;
  /** "carries the push of the front bevels up", "guides only" */
  readonly does: string;
  /** The same as a sentence, with what stops its rings. */
  readonly words: string;
}

/** What each bearing carries; which of its rings is clamped between two stops, stopped on one side, or floats. */
export function rolesOf(machine: Machine, stack: Stack, places: readonly StackPlace[], { known }: StackLoads): readonly BearingRole[] {
  return places.flatMap((place, index): readonly BearingRole[] => {
    if (place.kind !== 'radial' && place.kind !== 'thrust') return [];
    const carried = known.filter(({ paths }) => paths.some(({ through }) => through === index)).map(({ words }) => words);
    const rings = place.kind === 'thrust' ? '' : ` ${ringWords(machine, stack, places, index)}`;
    const does = carried.length > 0 ? `carries ${listed(carried)}` : 'guides only';
    return [{ id: place.id, carries: carried.length > 0, does, words: `${carried.length > 0 ? `Carries ${listed(carried)}.` : 'Guides only: no load along the axis.'}${rings}` }];
  });
}

function ringWords(machine: Machine, stack: Stack, places: readonly StackPlace[], index: number): string {
  const ring = (member: Member): string => {
    const stops = [stopOf(places, index, -1, member), stopOf(places, index, 1, member)].flatMap((at) => (at === undefined ? [] : [stopName(machine, stack, places[at]!)]));
    if (stops.length === 2) return `clamped between ${listed(stops)}`;
    return stops.length === 1 ? `against ${stops[0]}` : 'floats';
  };
  return `Inner ring ${ring('spindle')}; outer ring ${ring('housing')}.`;
}
