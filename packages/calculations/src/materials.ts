import { materials, type Material } from '@rotorwright/mechanics';
import { CalculationError } from './define.ts';

type Property = Exclude<keyof Material, 'name'>;

const specs = {
  density: { kind: 'number', title: 'Density', symbol: '\\rho', unit: 'kg/m³', shown: 'kg/m³', above: 0, max: 1e5, optional: true },
  youngsModulus: { kind: 'number', title: 'Young’s modulus', symbol: 'E', unit: 'Pa', shown: 'GPa', above: 0, max: 1e13, optional: true },
  shearModulus: { kind: 'number', title: 'Shear modulus', symbol: 'G', unit: 'Pa', shown: 'GPa', above: 0, max: 1e13, optional: true },
  poissonsRatio: { kind: 'number', title: 'Poisson’s ratio', symbol: '\\nu', unit: '-', shown: '-', min: 0, max: 0.5, optional: true },
  swell: { kind: 'number', title: 'Growth from dry to soaked, per length', symbol: 's', unit: '-', shown: '%', min: 0, max: 0.5, optional: true },
  expansion: { kind: 'number', title: 'Expansion by heat, per kelvin', symbol: '\\alpha', unit: '1/K', shown: '1/K', above: 0, max: 0.01, optional: true },
} as const;

/** Inputs for one property of a material each; given beside a name, the value counts and not the table’s. */
export const propertyInputs = specs;

/** Names of the built-in materials that have all the properties asked for. */
export const materialsWith = (...properties: readonly Property[]): readonly string[] =>
  materials.filter((one) => properties.every((property) => one[property] !== undefined)).map(({ name }) => name);

/** A choice among the materials that have all the properties asked for. */
export const materialChoice = (title: string, example: string, ...properties: readonly Property[]) =>
  ({ kind: 'choice', title, choices: materialsWith(...properties), optional: true, example }) as const;

/** A material: its name, or the properties asked for. */
export function materialInput<const Asked extends keyof typeof specs>(title: string, example: string, ...asked: readonly Asked[]) {
  const fields = Object.fromEntries(asked.map((property) => [property, specs[property]])) as Pick<typeof specs, Asked>;
  return { kind: 'record', title, shorthand: 'name', fields: { name: materialChoice('Name of the material', example, ...asked), ...fields } } as const;
}

/**
 * The value of a property: as given, else from the table.
 *
 * @param path   of the input, for the refusal
 * @throws CalculationError when there is neither
 */
export function propertyOf(property: Property, given: { readonly [name in Property]?: number } & { readonly name?: string }, path: string): number {
  const value = given[property] ?? materials.find(({ name }) => name === given.name)?.[property]?.value;
  if (value === undefined) throw new CalculationError(`${path}.${property}`, 'nothing', `a value, or name: one of ${materialsWith(property).map((name) => `"${name}"`).join(', ')}`);
  return value;
}
