import type { Machine } from '@rotorwright/machine';
import { hasTeeth } from '../drive/legs.ts';
import type { Hop } from '../drive/reach.ts';
import type { DriveSolution } from '../drive/solve.ts';
import type { FigureSet } from '../set/figure-set.ts';
import type { Axis } from './axes.ts';

/**
 * Every figure that follows from tooth counts alone is a product of powers of them: its value with the gears as they
 * are, times one factor for each gear that is changed.
 */
export interface Monomial {
  readonly name: string;
  /** With the gears of the base. */
  readonly base: number;
  /** Power to which a tooth count enters, by the path of its entry. */
  readonly powers: ReadonlyMap<string, number>;
}

/** Powers of tooth counts in the speed at the end of a way. */
export function powersOf(path: readonly Hop[], power = 1): Map<string, number> {
  const powers = new Map<string, number>();
  for (const { leg: { coupling }, forward } of path) {
    if (!hasTeeth(coupling)) continue;
    const sign = forward ? power : -power;
    add(powers, `${coupling.driver.path}.teeth`, sign);
    add(powers, `${coupling.driven.path}.teeth`, -sign);
  }
  return powers;
}

export function add(powers: Map<string, number>, path: string, power: number): void {
  powers.set(path, (powers.get(path) ?? 0) + power);
}

/** The figure of a name as a monomial; undefined when it is not known or does not follow from speeds. */
export function monomialOf(machine: Machine, drive: DriveSolution, base: FigureSet, name: string): Monomial | undefined {
  const value = base.get(name)?.value;
  if (value === undefined) return undefined;
  const [kind = '', ...rest] = name.split(' ');
  const id = rest.join(' ');
  const motions = drive.states.get('driven')?.motions;
  const way = (shaft: string | undefined, power = 1): Map<string, number> | undefined => {
    const motion = shaft === undefined ? undefined : motions?.get(shaft);
    return motion && powersOf(motion.path, power);
  };
  const powers = ((): Map<string, number> | undefined => {
    switch (kind) {
      case 'speed':
        return way(id);
      case 'ratio':
        return way(id, -1);
      case 'turns': {
        const own = way(id);
        for (const [path, power] of way(drive.mainRotor?.on, -1) ?? []) if (own) add(own, path, power);
        return own;
      }
      case 'mesh-frequency':
      case 'belt-tooth-frequency':
      case 'belt-frequency': {
        const coupling = machine.couplings.get(id);
        const own = way(coupling?.driver.on);
        if (coupling && own) add(own, `${coupling.driver.path}.teeth`, 1);
        return own;
      }
      case 'sensor-frequency':
        return way(machine.sensors.get(id)?.reads);
      case 'blade-passing':
      case 'tip-speed':
      case 'tip-mach':
        return way(machine.rotors.get(id)?.on);
      case 'blade-pull':
      case 'bolt-pull':
      case 'stored-energy':
        return way(machine.rotors.get(id)?.on, 2);
      default:
        return undefined;
    }
  })();
  return powers && { name, base: value, powers };
}

/** Factor by which each option of an axis changes a monomial. */
export function factorsOf(monomial: Monomial, axis: Axis, baseTeeth: number): Float64Array {
  const power = monomial.powers.get(axis.path) ?? 0;
  return Float64Array.from(axis.options, (option) => (option.teeth / baseTeeth) ** power);
}
