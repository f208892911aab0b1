import type { EntryPath, Machine, Window } from '@rotorwright/machine';
import { reach } from '../drive/reach.ts';
import type { DriveSolution } from '../drive/solve.ts';
import type { FigureSet } from '../set/figure-set.ts';
import { add, monomialOf, powersOf, type Monomial } from './monomials.ts';

/** Why a combination is ruled out. `exclusionText` puts it into words. */
export interface Exclusion {
  readonly kind: 'band' | 'limit' | 'centre' | 'loop';
  /** Figure, or coupling, that it concerns. */
  readonly of: string;
  /** Entry that sets the limit. */
  readonly path: EntryPath;
  readonly value?: number;
  readonly min?: number;
  readonly max?: number;
  readonly shown?: string;
}

/** A figure that must stay within a window, or a loop that must close: all follow from one product of tooth counts. */
export interface Rule {
  readonly monomial: Monomial;
  readonly exclusion: Omit<Exclusion, 'value'>;
  readonly min: number;
  readonly max: number;
}

/** What a combination must keep: wanted bands of the rotors, limits of the file, loops that close. */
export function rulesOf(machine: Machine, drive: DriveSolution, base: FigureSet, bands: Readonly<Record<string, Window>> | undefined): { readonly rules: readonly Rule[]; readonly notAssessed: readonly string[] } {
  const rules: Rule[] = [];
  const notAssessed: string[] = [];
  const within = (kind: 'band' | 'limit', name: string, path: EntryPath, { min, max }: Window): void => {
    const monomial = monomialOf(machine, drive, base, name);
    if (!monomial) {
      notAssessed.push(name);
      return;
    }
    const shown = base.get(name)!.shown;
    rules.push({ monomial, exclusion: { kind, of: name, path, ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }), shown }, min: min ?? -Infinity, max: max ?? Infinity });
  };
  for (const rotor of machine.rotors.values()) {
    const band = bands?.[rotor.id] ?? rotor.wanted;
    if (band && (band.min !== undefined || band.max !== undefined)) within('band', `speed ${rotor.on}`, `${rotor.path}.wanted`, band);
  }
  for (const limit of machine.limits.values()) within('limit', limit.of, limit.path, limit.window);
  return { rules: [...rules, ...loopRules(drive)], notAssessed };
}

/** Couplings that close a loop must agree with the other way round it: their product is 1. */
function loopRules(drive: DriveSolution): readonly Rule[] {
  const driven = drive.states.get('driven');
  if (!driven) return [];
  const { engaged, paths } = reach(drive.legs, driven.source, { clutchesOpen: false });
  const used = new Set([...paths.values()].flat().map((hop) => hop.leg));
  const counts = new Map([...drive.legs.values()].flatMap(({ coupling }) => [coupling.driver, coupling.driven].map((side) => [`${side.path}.teeth` as EntryPath, side.teeth] as const)));
  return [...drive.legs.values()].filter((leg) => engaged.has(leg.coupling.id) && !used.has(leg) && leg.missing.length === 0).map((leg): Rule => {
    const powers = powersOf([...paths.get(leg.driver)!, { leg, forward: true, from: leg.driver, to: leg.driven }]);
    for (const [path, power] of powersOf(paths.get(leg.driven)!, -1)) add(powers, path, power);
    let base = 1;
    for (const [path, power] of powers) base *= (counts.get(path) ?? Number.NaN) ** power;
    // Two ways of whole tooth counts that differ at all differ by far more than rounding does.
    return { monomial: { name: leg.coupling.id, base, powers }, exclusion: { kind: 'loop', of: leg.coupling.id, path: leg.coupling.path }, min: 1 - 1e-11, max: 1 + 1e-11 };
  });
}

/** What to be near to: the middles of the bands; without any, the speeds with what is fitted. */
export function aimsOf(rules: readonly Rule[], fallback: readonly (Monomial | undefined)[]): readonly { readonly monomial: Monomial; readonly middle: number }[] {
  const bands = rules.filter(({ exclusion, min, max }) => exclusion.kind === 'band' && Number.isFinite(min + max) && min + max > 0).map(({ monomial, min, max }) => ({ monomial, middle: (min + max) / 2 }));
  if (bands.length > 0) return bands;
  return fallback.flatMap((monomial) => (monomial && monomial.base > 0 ? [{ monomial, middle: monomial.base }] : []));
}
