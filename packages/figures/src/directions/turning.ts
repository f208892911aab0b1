import type { Direction, EntryPath, Machine } from '@rotorwright/machine';
import type { DriveSolution, DriveState, Motion } from '../drive/solve.ts';
import { scale } from '../drive/vectors.ts';
import { senseWords, type SenseWords } from '../drive/words.ts';

/** Which way one shaft turns, in words. */
export interface Turning {
  readonly shaft: string;
  readonly condition: Motion['condition'];
  /** Unit vector about which it turns right-handed. */
  readonly spin?: Direction;
  readonly sense?: SenseWords;
  /** One line: "counter-clockwise from above", "stands", "sense unknown: power.engine.turns is missing". */
  readonly words: string;
  readonly missing: readonly EntryPath[];
}

/** Spin vector of a shaft in one state; undefined when it stands or its sense is not known. */
export function spinOf(machine: Machine, drive: DriveSolution, shaft: string, state: DriveState = 'driven'): Direction | undefined {
  const axis = machine.shafts.get(shaft)?.axis;
  const sense = drive.states.get(state)?.motions.get(shaft)?.sense;
  return axis && sense ? scale(axis, sense) : undefined;
}

/** Which way every shaft turns in a state, in the order of the file; empty when the machine has no such state. */
export function turning(machine: Machine, drive: DriveSolution, state: DriveState = 'driven'): readonly Turning[] {
  const motions = drive.states.get(state)?.motions;
  if (!motions) return [];
  return [...motions.values()].map((motion): Turning => {
    const { shaft, condition, missingForSense } = motion;
    if (condition === 'stands') return { shaft, condition, words: 'stands', missing: [] };
    if (condition === 'contradicted') return { shaft, condition, words: 'jammed: two ways to it contradict each other', missing: [] };
    const spin = spinOf(machine, drive, shaft, state);
    if (!spin) return { shaft, condition, words: `sense unknown: ${missingForSense.join(', ')} missing`, missing: missingForSense };
    const sense = senseWords(spin);
    return { shaft, condition, spin, sense, words: sense.words, missing: [] };
  });
}
