import type { EntryPath } from '@rotorwright/machine';
import { ratio, ratioText } from '@rotorwright/mechanics';
import type { DriveSolution } from '../drive/solve.ts';
import { add, powersOf } from './monomials.ts';

/** Powers of tooth counts in the turns of one shaft for each turn of another, of the source when none is named. */
export function turnsOf(drive: DriveSolution, shaft: string | undefined, over?: string): ReadonlyMap<EntryPath, number> | undefined {
  const motions = drive.states.get('driven')?.motions;
  const motion = shaft === undefined ? undefined : motions?.get(shaft);
  const below = over === undefined ? undefined : motions?.get(over);
  if (motion?.condition !== 'turns' || (over !== undefined && below?.condition !== 'turns')) return undefined;
  const powers = powersOf(motion.path);
  for (const [path, power] of below ? powersOf(below.path, -1) : []) add(powers, path, power);
  return powers;
}

/** A product of powers of tooth counts as text: "58/7". */
export function exactText(powers: ReadonlyMap<EntryPath, number>, teeth: (path: EntryPath) => number): string {
  let above = 1n;
  let below = 1n;
  for (const [path, power] of powers) {
    const each = BigInt(teeth(path)) ** BigInt(Math.abs(power));
    if (power > 0) above *= each;
    else below *= each;
  }
  return ratioText(ratio(above, below));
}
