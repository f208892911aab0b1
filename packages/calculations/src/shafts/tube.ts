import { tubeSection } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { materialChoice, propertyInputs, propertyOf } from '../materials.ts';
import { lengthInput } from '../specs.ts';

/** Outer and inner diameter of a tube. */
export const tubeInputs = {
  outer: lengthInput('Outer diameter', 'D', 28),
  inner: { kind: 'number', title: 'Inner diameter; 0 for a solid bar', symbol: 'd', unit: 'm', shown: 'mm', min: 0, default: 0, example: 0.026 },
} as const;

/** @throws CalculationError when the bore is as wide as the tube */
export function checkBore(outer: number, inner: number): void {
  if (inner >= outer) throw new CalculationError('inner', `${inner} m`, `less than the outer diameter, ${outer} m`);
}

export const tube = defineCalculation({
  id: 'tube',
  title: 'Section of a tube',
  section: 'Shafts and beams',
  summary: 'Area, moments, mass and stiffness of a round tube or bar.',
  inputs: {
    ...tubeInputs,
    material: materialChoice('Material; or its properties below, which go before the table’s', 'aluminium 6061', 'density', 'youngsModulus', 'shearModulus'),
    youngsModulus: propertyInputs.youngsModulus,
    shearModulus: propertyInputs.shearModulus,
    density: propertyInputs.density,
  },
  outputs: {
    area: { title: 'Area', symbol: 'A', unit: 'm²', shown: 'mm²' },
    secondMoment: { title: 'Second moment of area about a diameter', symbol: 'I', unit: 'm⁴', shown: 'mm⁴' },
    polarMoment: { title: 'Polar moment of area', symbol: 'I_p', unit: 'm⁴', shown: 'mm⁴' },
    massPerLength: { title: 'Mass per length', symbol: "m'", unit: 'kg/m', shown: 'g/m' },
    bendingStiffness: { title: 'Bending stiffness', symbol: 'EI', unit: 'N·m²', shown: 'N·m²' },
    torsionalStiffnessPerLength: { title: 'Torsional stiffness: torque over twist per length', symbol: 'GI_p', unit: 'N·m²', shown: 'N·m²' },
  },
  formulas: [
    { output: 'area', tex: String.raw`A = \frac{\pi}{4}\left(D^2 - d^2\right)` },
    { output: 'secondMoment', tex: String.raw`I = \frac{\pi}{64}\left(D^4 - d^4\right)` },
    { output: 'polarMoment', tex: String.raw`I_p = 2I` },
    { output: 'massPerLength', tex: String.raw`m' = \rho A` },
    { output: 'bendingStiffness', tex: String.raw`EI` },
    { output: 'torsionalStiffnessPerLength', tex: String.raw`G I_p` },
  ],
  source: 'Geometry of the circle; materials with a source for each value in the table of materials.',
  validity: [
    'A round section of even wall. A wound tube is stiffer or softer with the angles of its layers: measure it where it matters.',
    'Without a material, what its missing properties are needed for is left out.',
  ],
  compute: ({ outer, inner, material, ...own }) => {
    checkBore(outer, inner);
    const { area, secondMoment, polarMoment } = tubeSection(outer, inner);
    const valueOf = (property: 'density' | 'youngsModulus' | 'shearModulus'): number | undefined =>
      material === undefined ? own[property] : propertyOf(property, { ...own, name: material }, 'material');
    const products = [
      ['massPerLength', 'density', area],
      ['bendingStiffness', 'youngsModulus', secondMoment],
      ['torsionalStiffnessPerLength', 'shearModulus', polarMoment],
    ] as const;
    return {
      outputs: {
        area,
        secondMoment,
        polarMoment,
        ...Object.fromEntries(
          products.flatMap(([output, property, factor]) => {
            const value = valueOf(property);
            return value === undefined ? [] : [[output, value * factor]];
          }),
        ),
      },
      warnings: products.flatMap(([output, property]) => (valueOf(property) === undefined ? [`${output} is left out: it needs a material or ${property}.`] : [])),
    };
  },
});
