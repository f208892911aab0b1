/** A property and the document that gives it. */
export interface Sourced {
  /** SI */
  readonly value: number;
  readonly source: string;
}

/** What the calculations need to know of a material. What no single number describes is left out: the Poisson's ratio of a wound tube, for one. */
export interface Material {
  readonly name: string;
  /** kg/m³ */
  readonly density: Sourced;
  /** Pa; of a tube or plate along its length */
  readonly youngsModulus: Sourced;
  /** Pa */
  readonly shearModulus?: Sourced;
  readonly poissonsRatio?: Sourced;
  /** Linear, around room temperature, 1/K; carbon shrinks along its fibres */
  readonly expansion?: Sourced;
  /** How much longer a part grows from dry to soaked, per length; absent where damp does nothing */
  readonly swell?: Sourced;
  /** Pa, stress at which it stays deformed: of the softest usual state, where there are several */
  readonly yieldStrength?: Sourced;
  /** Pa, of a thread that strips */
  readonly shearStrength?: Sourced;
}

const callister = 'Callister, Materials Science and Engineering, appendix B, table B.6';
const callisterMemory = 'Callister, Materials Science and Engineering, appendix B, tables B.1 to B.3 (from memory)';
const catalogue = 'public catalogue of a bearing maker, appendix table 8';
const handbook = 'ASM Handbook, volume 2, data sheet of the alloy (from memory)';
const usual = 'common practice, no source';
const strengths = 'Callister, table B.4 (from memory)';
const soaked = 'growth of plastics from dry to soaked in water (from memory)';
const plastics = 'data sheets of plastics, dry, 23 °C (from memory)';

const sheared = 'data sheets of plastics, ASTM D732, dry, 23 °C, short pull (from memory)';
const sixTenths = (what: string): string => `0.6 of the tensile strength, ${what} (Callister, table B.4, from memory)`;

type Given = readonly [value: number, source: string];

const sourced = ([value, source]: Given): Sourced => ({ value, source });

/** An isotropic material: its shear modulus follows from the other two constants. */
function isotropic(name: string, density: Given, youngsModulus: Given, poissonsRatio: Given, expansion: Given, shearStrength?: Given): Material {
  return {
    name,
    density: sourced(density),
    youngsModulus: sourced(youngsModulus),
    shearModulus: { value: youngsModulus[0] / (2 * (1 + poissonsRatio[0])), source: 'isotropy: G = E/(2(1 + ν))' },
    poissonsRatio: sourced(poissonsRatio),
    expansion: sourced(expansion),
    ...(shearStrength && { shearStrength: sourced(shearStrength) }),
  };
}

/** The built-in materials, by the names that a machine file may use. */
export const materials: readonly Material[] = [
  { ...isotropic('steel', [7850, callisterMemory], [207e9, callisterMemory], [0.3, callisterMemory], [11.7e-6, `${callister}, steel 1020`], [237e6, sixTenths('395 MPa of steel 1020, annealed')]), yieldStrength: sourced([295e6, `steel 1020, annealed: ${strengths}`]) },
  { ...isotropic('hardened steel', [7850, callisterMemory], [207e9, callisterMemory], [0.3, callisterMemory], [12.3e-6, `${callister}, steel 4340`]), yieldStrength: sourced([1620e6, `steel 4340, oil-quenched, tempered at 315 °C: ${strengths}`]) },
  isotropic('bearing steel', [7830, catalogue], [208e9, catalogue], [0.3, callisterMemory], [12.5e-6, catalogue]),
  { ...isotropic('stainless steel', [8000, callisterMemory], [193e9, callisterMemory], [0.3, callisterMemory], [17.2e-6, `${callister}, steel 304`], [309e6, sixTenths('515 MPa of steel 304, annealed')]), yieldStrength: sourced([205e6, `steel 304, annealed: ${strengths}`]) },
  isotropic('stainless bearing steel', [7680, catalogue], [200e9, catalogue], [0.3, callisterMemory], [10.1e-6, `${catalogue}, 440C`]),
  { ...isotropic('aluminium 7075', [2810, handbook], [71.7e9, handbook], [0.33, handbook], [23.4e-6, callister], [331e6, handbook]), yieldStrength: sourced([505e6, `T6: ${strengths}`]) },
  { ...isotropic('aluminium 6061', [2700, handbook], [68.9e9, handbook], [0.33, handbook], [23.6e-6, callister], [207e6, handbook]), yieldStrength: sourced([276e6, `T6: ${strengths}`]) },
  isotropic('aluminium 5754', [2670, handbook], [70e9, handbook], [0.33, handbook], [23.7e-6, handbook]),
  { ...isotropic('titanium', [4430, callisterMemory], [114e9, callisterMemory], [0.34, callisterMemory], [8.6e-6, `${callister}, Ti-6Al-4V`], [550e6, handbook]), yieldStrength: sourced([830e6, `Ti-6Al-4V, annealed: ${strengths}`]) },
  isotropic('brass', [8530, callisterMemory], [110e9, callisterMemory], [0.35, callisterMemory], [19.9e-6, 'Callister, the same table, brass C26000 (from memory)']),
  { ...isotropic('POM', [1410, plastics], [2.8e9, plastics], [0.35, plastics], [110e-6, plastics]), swell: sourced([0.002, soaked]), shearStrength: sourced([53e6, sheared]) },
  { ...isotropic('PA 66', [1140, plastics], [3e9, plastics], [0.39, plastics], [80e-6, plastics]), swell: sourced([0.025, soaked]), shearStrength: sourced([60e6, sheared]) },
  { name: 'carbon tube', density: sourced([1600, usual]), youngsModulus: sourced([70e9, usual]), shearModulus: sourced([5e9, `${usual}: layers along and across; layers at ±45° give several times as much`]) },
  { name: 'carbon along the fibre', density: sourced([1700, callisterMemory]), youngsModulus: sourced([220e9, callisterMemory]), expansion: sourced([-0.5e-6, `${callister}, high-modulus fibres in epoxy, 60 % by volume`]) },
  { name: 'carbon across the fibre', density: sourced([1700, callisterMemory]), youngsModulus: sourced([6.9e9, callisterMemory]), expansion: sourced([32e-6, `${callister}, high-modulus fibres in epoxy, 60 % by volume`]) },
  { name: 'carbon plate', density: sourced([1550, usual]), youngsModulus: sourced([55e9, usual]), expansion: sourced([2.5e-6, `${usual}: in the plane, fibres along and across`]) },
];

/**
 * A built-in material.
 *
 * @param name  as a machine file writes it
 * @returns     undefined when the table has none of that name
 * @source each value names its own
 * @example material('aluminium 7075').expansion.value // 0.0000234
 */
export function material(name: string): Material | undefined {
  return materials.find((one) => one.name === name);
}
