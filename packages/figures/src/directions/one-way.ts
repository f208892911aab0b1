import type { Direction, EntryPath, Machine } from '@rotorwright/machine';
import type { DriveSolution } from '../drive/solve.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { scale } from '../drive/vectors.ts';
import { senseWords } from '../drive/words.ts';
import { spinOf } from './turning.ts';

/** Which way a one-way clutch must be fitted. */
export interface OneWayFacing {
  readonly coupling: string;
  /** Spin of the driver in which it must lock, and take the driven shaft along. */
  readonly locks?: Direction;
  /** How it must lock and overrun, with the viewer named. */
  readonly words: string;
  /** How to prove it on the bench by hand. */
  readonly test: string;
  readonly missing: readonly EntryPath[];
}

/** The facing of every one-way clutch, from the sense in which its shafts must turn. */
export function oneWayFacing(machine: Machine, drive: DriveSolution): readonly OneWayFacing[] {
  return [...drive.legs.values()].filter((leg) => leg.coupling.kind === 'one-way').map(({ coupling, driver, driven }): OneWayFacing => {
    const name = (shaft: string): string => inSentence(machine.shafts.get(shaft)!.title);
    // The driver of a starter's clutch stands while the engine runs: its sense is that of what it must turn.
    const locks = spinOf(machine, drive, driver) ?? spinOf(machine, drive, driven);
    if (!locks) {
      const motions = drive.states.get('driven')?.motions;
      const missing = motions?.get(driven)?.missingForSense ?? ['power'];
      return { coupling: coupling.id, words: `facing unknown: ${missing.join(', ')} missing`, test: '', missing };
    }
    const { words, viewer } = senseWords(locks);
    const back = senseWords(scale(locks, -1)).words;
    return {
      coupling: coupling.id,
      locks,
      words: `locks when the ${name(driver)} turns ${words} against the ${name(driven)}; lets the ${name(driven)} run on ${words} when the ${name(driver)} slows`,
      test: `Hold the ${name(driver)}. Look ${viewer}. The ${name(driven)} must turn freely ${words} and lock ${back}.`,
      missing: [],
    };
  });
}
