import { beamFrequencies, type BeamMass, type BeamSupport, type UniformBeam } from '@rotorwright/mechanics';
import { CalculationError } from '../define.ts';

const number = (title: string, symbol: string, unit: string, shown: string, bounds: { readonly min?: number; readonly above?: number; readonly max: number }) =>
  ({ kind: 'number', title, symbol, unit, shown, ...bounds }) as const;

export const place = { ...number('From the left end', 'x', 'm', 'mm', { min: 0, max: 1000 }) } as const;

const support = {
  kind: 'record',
  title: 'Support',
  fields: {
    at: place,
    kind: { kind: 'choice', title: 'What it is', choices: ['pinned', 'clamped', 'spring'] },
    stiffness: { ...number('Stiffness of a spring', 'k', 'N/m', 'N/mm', { min: 0, max: 1e12 }), default: 0 },
    rotationalStiffness: { ...number('Rotational stiffness of a spring', 'k_r', 'N·m/rad', 'N·m/rad', { min: 0, max: 1e12 }), default: 0 },
  },
} as const;

/** Mass on the beam and its moment of inertia about the transverse axis. */
export const massFields = {
  at: place,
  mass: number('Mass', 'm', 'kg', 'g', { min: 0, max: 1e6 }),
  inertia: { ...number('Moment of inertia about the transverse axis', 'J', 'kg·m²', 'g·mm²', { min: 0, max: 1e6 }), default: 0 },
} as const;

/** Inputs of a beam of one section. Bounds keep to what a workshop holds. */
export const beamInputs = {
  length: { ...number('Length', 'l', 'm', 'mm', { min: 1e-3, max: 1000 }), example: 0.9 },
  bendingStiffness: { ...number('Bending stiffness', 'EI', 'N·m²', 'N·m²', { min: 1e-9, max: 1e12 }), example: 9.8 },
  massPerLength: { ...number('Mass per length', 'm\'', 'kg/m', 'g/m', { min: 0, max: 1e6 }), example: 0.055 },
  supports: {
    kind: 'list',
    title: 'Supports; where there is none, an end is free',
    of: support,
    example: [
      { at: 0, kind: 'pinned' },
      { at: 0.28, kind: 'pinned' },
      { at: 0.58, kind: 'pinned' },
      { at: 0.9, kind: 'pinned' },
    ],
  },
} as const;

export const modesInput = (title: string) => ({ kind: 'number', title, symbol: 'N', unit: '-', shown: '-', whole: true, min: 1, max: 20, default: 4, example: 4 }) as const;

interface Given {
  readonly length: number;
  readonly bendingStiffness: number;
  readonly massPerLength: number;
  readonly supports: readonly BeamSupport[];
}

/** kg */
const LEAST_MASS = 1e-9;

/** Places nearer to each other than this share of the length are one. */
const SAME_PLACE = 1e-6;

/**
 * The beam of the inputs, with places that differ by rounding alone put together.
 *
 * @throws CalculationError when something lies off the beam, or there is no mass at all
 */
export function readBeam({ length, bendingStiffness, massPerLength, supports }: Given, masses: readonly BeamMass[]): UniformBeam {
  const known = [0, length];
  const placed = <Item extends { readonly at: number }>(items: readonly Item[], list: string): Item[] =>
    items.map((item, index) => {
      const same = known.find((at) => Math.abs(at - item.at) <= SAME_PLACE * length);
      if (same !== undefined) return { ...item, at: same };
      if (item.at > length) throw new CalculationError(`${list}[${index}].at`, `${item.at} m`, `a place on the beam, 0 to ${length} m`);
      known.push(item.at);
      return item;
    });
  const beam = { length, bendingStiffness, massPerLength, supports: placed(supports, 'supports'), masses: placed(masses, 'masses') };
  const total = massPerLength * length + masses.reduce((sum, { mass }) => sum + mass, 0);
  if (!(total >= LEAST_MASS)) throw new CalculationError('massPerLength', `${massPerLength} kg/m, ${total} kg in all`, `mass of the beam or on it, ${LEAST_MASS} kg or more in all`);
  return beam;
}

/**
 * Natural frequencies of bending, rad/s.
 *
 * @throws CalculationError when springs are so soft beside the beam that their frequencies drown in rounding
 */
export function frequenciesOf(beam: UniformBeam, wanted: number): number[] {
  const found = beamFrequencies(beam, wanted);
  if (!found.every((omega) => omega > 0)) throw new CalculationError('supports', 'springs far softer than the beam is stiff', 'springs that the beam can be told from: it moves on these like a rigid body');
  return found;
}

export const beamSource = 'Euler–Bernoulli beam by cubic elements fine enough for 10⁻⁵; Thomson, Theory of Vibration, chapter 9 and appendix D (table read, method from memory).';
