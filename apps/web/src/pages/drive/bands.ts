import type { Rotor, Window } from '@rotorwright/machine';
import { inUnit, showNumber } from '@rotorwright/units';
import type { MarkState } from '../../sheet/index.ts';

/** Whether a rotor turns within the band that its builder wants, in words. */
export interface BandAnswer {
  readonly mark: MarkState;
  readonly words: string;
}

const rpm = (value: number): string => showNumber(Math.ceil(inUnit(value, 'rpm') - 1e-9), { decimals: 0 });

/**
 * @param name   "Main", "Tail"
 * @param speed  rad/s; undefined when it is not known
 */
export function bandAnswer(name: string, rotor: Pick<Rotor, 'wanted'> | undefined, speed: number | undefined): BandAnswer {
  if (!rotor) return { mark: 'unknown', words: `No ${name.toLowerCase()} rotor in the file` };
  if (speed === undefined) return { mark: 'unknown', words: `${name} not known` };
  const { wanted } = rotor;
  if (!wanted || (wanted.min === undefined && wanted.max === undefined)) return { mark: 'unknown', words: `${name}: no band wanted` };
  if (isBelow(wanted, speed)) return { mark: 'exceeded', words: `${name} ${rpm(wanted.min! - speed)} rpm below its band` };
  if (isAbove(wanted, speed)) return { mark: 'exceeded', words: `${name} ${rpm(speed - wanted.max!)} rpm above its band` };
  return { mark: 'holds', words: `${name} in its band` };
}

/**
 * Whether a clutch stays open at a speed of its driving side.
 *
 * @param speed    rad/s
 * @param engages  rad/s; undefined when the file does not say
 */
export function clutchAnswer(speed: number, engages: number | undefined): BandAnswer {
  if (engages === undefined) return { mark: 'unknown', words: 'The speed at which the clutch grips is not in the file' };
  return speed < engages ? { mark: 'holds', words: 'Clutch open, rotors stand' } : { mark: 'exceeded', words: `The clutch grips from ${rpm(engages)} rpm` };
}

/** To 12 digits: a band that is met exactly is met. */
const isBelow = ({ min }: Window, speed: number): boolean => min !== undefined && speed < min * (1 - 1e-12);
const isAbove = ({ max }: Window, speed: number): boolean => max !== undefined && speed > max * (1 + 1e-12);
