import type { Coupling, CouplingSide, Direction, EntryPath, InstanceId, Machine } from '@rotorwright/machine';
import type { DriveSolution } from '../drive/solve.ts';
import { helixPush as pushOf } from '@rotorwright/mechanics';
import { scale } from '../drive/vectors.ts';
import { directionWord, senseWords } from '../drive/words.ts';
import { spinOf } from './turning.ts';

/** Which way one gear pushes along its shaft while the machine is driven. */
export interface Push {
  readonly coupling: string;
  readonly shaft: string;
  readonly part?: InstanceId;
  /** Unit vector, and its nearest word; absent while unknown. */
  readonly towards?: Direction;
  readonly words: string;
  readonly reason: string;
  readonly missing: readonly EntryPath[];
}

/**
 * The push of every helical and every straight bevel gear in the driven state.
 *
 * Helical: the driving gear, right-hand, pushes along its own spin vector, left-hand against it; the driven gear the
 * opposite way. Bevel: away from the crossing point of the axes.
 *
 * @source equilibrium of the normal force on an inclined tooth: its part along the axis is tangential force · tan(helix)
 */
export function helixPush(machine: Machine, drive: DriveSolution): readonly Push[] {
  return [...drive.legs.values()].flatMap(({ coupling }) => {
    const helical = (coupling.kind === 'external' || coupling.kind === 'internal') && coupling.helix && coupling.helix.angle !== 0;
    if (!helical && coupling.kind !== 'bevel') return [];
    return [coupling.driver, coupling.driven].map((side) => (helical ? helicalPush(machine, drive, coupling, side) : bevelPush(coupling, side)));
  });
}

function helicalPush(machine: Machine, drive: DriveSolution, coupling: Coupling, side: CouplingSide): Push {
  const base = { coupling: coupling.id, shaft: side.on, ...(side.part === undefined ? {} : { part: side.part }) };
  const motions = drive.states.get('driven')?.motions;
  // Power may pass the coupling from its driven to its driver side, where a train branches backwards.
  const hop = [...(motions?.values() ?? [])].flatMap((motion) => motion.path).find((each) => each.leg.coupling === coupling);
  const giving = hop?.forward === false ? coupling.driven : coupling.driver;
  const spin = spinOf(machine, drive, giving.on);
  if (!hop || !spin) {
    const missing = motions?.get(giving.on)?.missingForSense ?? ['power'];
    return { ...base, words: 'push unknown', reason: `Which way ${giving.on} turns is not known.`, missing };
  }
  const written = coupling.helix!.hand;
  const mate = coupling.kind === 'internal' ? written : written === 'left' ? 'right' : 'left';
  const hand = giving === coupling.driver ? written : mate;
  // Both pushes are reckoned along the spin of the gear that drives: its mate is pushed the opposite way.
  const towards = scale(spin, pushOf(hand, 1, 'driver') * (side === giving ? 1 : -1));
  return {
    ...base,
    towards,
    words: `pushes ${directionWord(towards)}`,
    reason: `${giving.on} drives, turns ${senseWords(spin).words} and has a ${hand}-hand helix: it pushes ${hand === 'right' ? 'along' : 'against'} its spin vector${side === giving ? '' : ', its mate the opposite way'}.`,
    missing: [],
  };
}

function bevelPush(coupling: Coupling, side: CouplingSide): Push {
  const base = { coupling: coupling.id, shaft: side.on, ...(side.part === undefined ? {} : { part: side.part }) };
  if (coupling.helix && coupling.helix.angle !== 0) return { ...base, words: 'push unknown', reason: 'Spiral bevel gears are not assessed: their push depends on spiral and cone angle.', missing: [] };
  if (!side.lies) return { ...base, words: 'push unknown', reason: 'Where the gear lies from the crossing point is not said.', missing: [`${side.path}.lies`] };
  return { ...base, towards: side.lies, words: `pushes ${directionWord(side.lies)}`, reason: `Straight bevel gears push each other apart, away from the crossing point; this one lies ${directionWord(side.lies)} from it.`, missing: [] };
}
