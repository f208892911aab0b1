import type { InstanceId, Machine, Part } from '@rotorwright/machine';
import { bearingFrequencyRatios } from '@rotorwright/mechanics';
import { membersOf } from '../directions/members.ts';
import { supportsAmong } from '../margins/supports.ts';

/** A ball bearing whose flaws can be listened for. */
export interface SoundBearing {
  readonly id: InstanceId;
  readonly title: string;
  readonly shaft: string;
  /** Turns of its rings against each other for one of the main rotor. */
  readonly turns: number;
  /** Strikes of a flaw for one turn of the main rotor. */
  readonly strikes: Readonly<Record<'outer race' | 'inner race' | 'ball', number>>;
}

/** Diameter of a ball as a part of the height between bore and outside (common practice, no source). */
const ballPart = 0.3;

/**
 * Bearings of shafts that turn, with how often their flaws strike. Balls stand half way between bore and outside.
 *
 * @param factor  turns of a shaft for one of the main rotor, with their sense; undefined where it is not known
 * @returns bearings, and the entries without which others cannot be listened for
 */
export function bearingSounds(machine: Machine, factor: (shaft: string) => number | undefined): { readonly bearings: readonly SoundBearing[]; readonly missing: readonly string[] } {
  const members = membersOf(machine);
  const partAt = (instance: InstanceId | undefined): Part | undefined => (instance === undefined ? undefined : machine.parts.get(machine.thingOf.get(instance) ?? instance));
  const missing = new Set<string>();
  const bearings = supportsAmong({ machine, members, partAt, isFirst: () => true }).flatMap(({ shaft, about, bearings: own }) => {
    const turns = factor(shaft);
    const against = about === undefined ? 0 : factor(about);
    if (turns === undefined || against === undefined || turns === against) return [];
    return own.flatMap(({ instance, part }): readonly SoundBearing[] => {
      const { bore, outer } = part.sizes;
      if (part.kind === 'needle') return [];
      if (part.balls === undefined || bore === undefined || outer === undefined || !(outer > bore)) {
        if (part.balls === undefined) missing.add(`${part.type === undefined ? part.path : `types.${part.type}`}.balls`);
        return [];
      }
      const ratios = bearingFrequencyRatios({ rollingElements: part.balls, elementDiameter: ballPart * (outer - bore), pitchDiameter: (outer + bore) / 2, contactAngle: 0 });
      const relative = Math.abs(turns - against);
      // A flaw on a ball strikes twice a turn of the ball: once on each race.
      return [{ id: instance, title: part.title, shaft, turns: relative, strikes: { 'outer race': ratios.outerRace * relative, 'inner race': ratios.innerRace * relative, ball: 2 * ratios.element * relative } }];
    });
  });
  return { bearings, missing: [...missing] };
}
