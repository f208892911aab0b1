import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { solveDrive } from '../drive/solve.ts';
import { axesOf } from './axes.ts';
import { choicesOver, type ChoiceConditions, type Exclusion, type GearOption } from './gear-choices.ts';
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
 * fewest to buy; what is ruled out stays in the list with its reasons.
 *
 * @param rotor  id of a rotor
 * @param speed  wanted, rad/s
 */
export function choicesFor(machine: Machine, rotor: string, speed: number, conditions: ChoiceConditions = {}): readonly CloseOption[] {
  const drive = solveDrive(machine);
  const shaft = machine.rotors.get(rotor)?.on;
  const path = shaft === undefined ? undefined : drive.states.get('driven')?.motions.get(shaft)?.path;
  if (shaft === undefined || !path || drive.source === undefined) return [];
  const powers = powersOf(path);
  const source = conditions.sourceSpeed ?? drive.source.speed;
  if (source === undefined) return [];
  const axes = axesOf(machine).filter((axis) => powers.get(axis.path));
  const teeth = new Map<string, number | undefined>([...machine.couplings.values()].flatMap((coupling) => [coupling.driver, coupling.driven].map((side) => [`${side.path}.teeth`, side.teeth] as const)));
  return choicesOver(machine, axes, conditions).options
    .map((option): CloseOption => {
      let turns = source;
      for (const [entry, power] of powers) turns *= (option.teeth[entry] ?? teeth.get(entry) ?? Number.NaN) ** power;
      return { ...option, speed: turns, off: turns - speed };
    })
    .filter((option) => Number.isFinite(option.speed))
    .toSorted((a, b) => Math.abs(a.off) - Math.abs(b.off) || a.changes.length - b.changes.length);
}

/** Why a combination is ruled out, in a sentence. */
export function exclusionText({ kind, of, value, min, max, shown }: Exclusion): string {
  if (kind === 'loop') return `The two ways round ${of} ask for different speeds.`;
  const show = (each: number): string => showQuantity(each, shown ?? '-', { significant: 5 });
  const given = value === undefined ? 'not known' : show(value);
  const window = min !== undefined && max !== undefined ? (min === max ? show(min) : `${show(min)} to ${show(max)}`) : min !== undefined ? `at least ${show(min)}` : `at most ${show(max ?? 0)}`;
  if (kind === 'centre') return `${of} needs a centre distance of ${given}; the frame allows ${window}.`;
  return `${of} is ${given}; ${kind === 'band' ? 'wanted' : 'allowed'} is ${window}.`;
}
