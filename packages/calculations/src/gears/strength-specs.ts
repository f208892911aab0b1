import type { ElasticFlank } from '@rotorwright/mechanics';
import { materialInput, propertyOf } from '../materials.ts';

const strength = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'Pa', shown: 'MPa', above: 0, max: 1e11, optional: true }) as const;

/** Material of a gear: elastic constants by name or value, and the strengths that its maker or the standard gives. */
export function gearMaterialInput(title: string, example: string) {
  const material = materialInput(title, example, 'youngsModulus', 'poissonsRatio');
  return {
    ...material,
    fields: {
      ...material.fields,
      contactStrength: strength('Endurance limit of the flank, σ_Hlim', '\\sigma_{H\\mathrm{lim}}'),
      rootStrength: strength('Nominal stress number of the root, σ_Flim', '\\sigma_{F\\mathrm{lim}}'),
    },
  } as const;
}

interface GivenMaterial {
  readonly name?: string;
  readonly youngsModulus?: number;
  readonly poissonsRatio?: number;
}

/** @throws CalculationError when a constant is neither given nor in the table */
export const flankOf = (given: GivenMaterial, path: string): ElasticFlank => ({ youngsModulus: propertyOf('youngsModulus', given, path), poissonsRatio: propertyOf('poissonsRatio', given, path) });
