import type { Machine } from '@rotorwright/machine';
import { solveDrive } from '../drive/solve.ts';
import { axesOf } from './axes.ts';
import { countOf } from './columns.ts';
import { evaluate } from './evaluate.ts';
import { mostCombinations } from './gear-choices.ts';
import type { ChoiceConditions, GearOption } from './option.ts';
import { powersOf } from './monomials.ts';

/** A combination, and how far it is from the speed that was asked for. */
export interface CloseOption extends GearOption {
  /** Speed of the rotor, rad/s. */
  readonly speed: number;
  /** Speed less what was asked for, rad/s. */
  readonly off: number;
}

/**
 * Which gears give a rotor a wanted speed? Only gears on the way to that rotor are changed. Closest first, then
 * fewest to buy; what is ruled out stays in the list with its reasons, and its rank tells where it stands otherwise.
 *
 * @param rotor  id of a rotor
 * @param speed  wanted, rad/s
 * @returns      empty when the machine has no such rotor, or its speed is not known
 */
export function choicesFor(machine: Machine, rotor: string, speed: number, conditions: ChoiceConditions = {}): readonly CloseOption[] {
  const shaft = machine.rotors.get(rotor)?.on;
  const path = shaft === undefined ? undefined : solveDrive(machine).states.get('driven')?.motions.get(shaft)?.path;
  if (!path) return [];
  const powers = powersOf(path);
  const axes = axesOf(machine).filter((axis) => powers.get(axis.path));
  if (countOf(axes) > mostCombinations) return [];
  const { order, column, toBuy, option } = evaluate(machine, axes, conditions);
  const speeds = column(`speed ${shaft}`);
  if (!speeds) return [];
  const off = (index: number): number => Math.abs(speeds[index]! - speed);
  return Array.from(order, (index, position) => ({ index, rank: position + 1 }))
    .toSorted((a, b) => off(a.index) - off(b.index) || toBuy[a.index]! - toBuy[b.index]! || a.rank - b.rank)
    .slice(0, conditions.show ?? 200)
    .map(({ index, rank }): CloseOption => ({ ...option(index, rank), speed: speeds[index]!, off: speeds[index]! - speed }));
}
