import { linearBlade as linear } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { countInput, lengthInput, lengthOutput } from '../specs.ts';

const mass = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'kg', shown: 'g', min: 0, example }) as const;
const radial = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', min: 0, example }) as const;

export const linearBlade = defineCalculation({
  id: 'linear-blade',
  title: 'Inertia from mass and centre of mass of a blade',
  section: 'Rotor',
  summary: 'Centre of mass from the rotor axis, and inertia of the rotor, from what a scale and a knife edge tell of one blade.',
  inputs: {
    blades: countInput('Blades', 'b', 2),
    bladeMass: mass('Mass of one blade', 'm', 0.18),
    boltRadius: radial('Blade bolt, from the rotor axis', 'r_B', 0.095),
    bladeCentre: radial('Centre of mass of the blade, from its bolt', 'c', 0.33),
    radius: { ...lengthInput('Radius of the rotor', 'R', 775), optional: true },
    gripMass: { ...mass('What turns with each blade inside the bolt', 'm_G', 0.08), default: 0 },
    gripCentre: { ...radial('Centre of that, from the rotor axis', 'r_G', 0.06), default: 0 },
    hubInertia: { kind: 'number', title: 'What else turns with the rotor', symbol: 'J_H', unit: 'kg·m²', shown: 'kg·m²', min: 0, default: 0, example: 0.0005 },
  },
  outputs: {
    centreOfMass: lengthOutput('Centre of mass of the blade, from the rotor axis', 'r_m'),
    inertia: { title: 'Moment of inertia of one blade about the rotor axis', symbol: 'I', unit: 'kg·m²', shown: 'kg·m²' },
    rotorInertia: { title: 'Moment of inertia of the whole rotor', symbol: 'J', unit: 'kg·m²', shown: 'kg·m²' },
  },
  formulas: [
    { output: 'centreOfMass', tex: String.raw`r_m = r_B + c` },
    { output: 'inertia', tex: String.raw`I = \int_{r_B}^{R} r^2\,m'(r)\,\mathrm{d}r,\quad m'(r)\ \text{linear, of mass } m \text{ and centre } r_m` },
    { output: 'rotorInertia', tex: String.raw`J = b\left(I + m_G\,r_G^2\right) + J_H` },
  ],
  source: 'Definition, with the mass per length changing linearly from bolt to tip.',
  validity: ['The centre of mass must lie between a third and two thirds of the way from bolt to tip.', 'Tip weights and heavy roots make a true blade differ: weigh and swing it for a better figure.'],
  compute: ({ blades, bladeMass, boltRadius, bladeCentre, radius, gripMass, gripCentre, hubInertia }) => {
    const centreOfMass = boltRadius + bladeCentre;
    if (radius === undefined) return { outputs: { centreOfMass }, warnings: ['inertia and rotorInertia are left out: they need radius.'] };
    const length = radius - boltRadius;
    if (!(length > 0)) throw new CalculationError('boltRadius', `${boltRadius} m`, `less than the radius, ${radius} m`);
    const share = bladeCentre / length;
    if (share < 1 / 3 - 1e-12 || share > 2 / 3 + 1e-12) {
      return { outputs: { centreOfMass }, warnings: [`inertia and rotorInertia are left out: a centre of mass at ${Math.round(share * 100)} % of the way from bolt to tip needs the true distribution of mass.`] };
    }
    const { inertia } = linear(bladeMass, boltRadius, radius, centreOfMass);
    return { outputs: { centreOfMass, inertia, rotorInertia: blades * (inertia + gripMass * gripCentre ** 2) + hubInertia }, warnings: [] };
  },
});
