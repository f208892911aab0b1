import type { Holds } from './holds.ts';

/**
 * Steps that ask for a second look: those of which one slip alone ends in a crash or an injury. Leaving out a whole step
 * is one slip, so four screws of which three suffice ask for it too; what takes two slips is left to its own signature.
 *
 * @returns ids of joints and stacks, which are the ids of their steps
 * @source flight controls, rotors and drive as what is looked at again: EASA AMC 145.A.48(b) (read); one slip as the measure: our own choice, decision record 0008
 */
export function asksSecondLook({ hazards }: Holds): ReadonlySet<string> {
  const grave = [...hazards.values()].filter(({ hazard }) => hazard.endsIn === 'crash' || hazard.endsIn === 'injury');
  return new Set(grave.flatMap(({ singlePoints }) => singlePoints.map(({ step }) => step)));
}
