import { centrifugalForce, storedEnergy, uniformBlade as uniform } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { countInput, lengthInput, lengthOutput, speedInput } from '../specs.ts';

export const uniformBlade = defineCalculation({
  id: 'uniform-blade',
  title: 'Blade of even mass',
  section: 'Rotor',
  summary: 'Pull, inertia and stored energy when nothing is known of a blade but its mass and where it begins and ends.',
  inputs: {
    blades: countInput('Blades', 'b', 2),
    bladeMass: { kind: 'number', title: 'Mass of one blade', symbol: 'm', unit: 'kg', shown: 'g', min: 0, example: 0.18 },
    rootRadius: { kind: 'number', title: 'Where the blade begins, from the rotor axis', symbol: 'r_0', unit: 'm', shown: 'mm', min: 0, default: 0, example: 0.1 },
    radius: lengthInput('Radius of the rotor', 'R', 775),
    speed: speedInput('Speed of the rotor', 'n', 1760),
  },
  outputs: {
    centreOfMass: lengthOutput('Centre of mass, from the rotor axis', 'r_m'),
    staticMoment: { title: 'Static moment of one blade', symbol: 'S', unit: 'kg·m', shown: 'kg·m' },
    inertia: { title: 'Moment of inertia of one blade about the rotor axis', symbol: 'I', unit: 'kg·m²', shown: 'kg·m²' },
    rotorInertia: { title: 'Moment of inertia of all blades', symbol: 'J', unit: 'kg·m²', shown: 'kg·m²' },
    centrifugalForce: { title: 'Pull of one blade', symbol: 'F', unit: 'N', shown: 'N' },
    storedEnergy: { title: 'Energy stored in the blades', symbol: 'E', unit: 'J', shown: 'J' },
  },
  formulas: [
    { output: 'centreOfMass', tex: String.raw`r_m = \frac{R + r_0}{2}` },
    { output: 'staticMoment', tex: String.raw`S = m\,r_m` },
    { output: 'inertia', tex: String.raw`I = \frac{m}{3}\left(R^2 + R\,r_0 + r_0^2\right)` },
    { output: 'rotorInertia', tex: String.raw`J = b\,I` },
    { output: 'centrifugalForce', tex: String.raw`F = \Omega^2 S` },
    { output: 'storedEnergy', tex: String.raw`E = \tfrac{1}{2}\,J\,\Omega^2` },
  ],
  source: 'Definition, with the mass spread evenly from root to tip.',
  validity: ['A real blade is heavier towards its root: the pull and the energy come out too high rather than too low, unless tip weights are fitted.', 'Hub and grips are left out.'],
  compute: ({ blades, bladeMass, rootRadius, radius, speed }) => {
    if (rootRadius >= radius) throw new CalculationError('rootRadius', `${rootRadius} m`, `less than the radius, ${radius} m`);
    const { centreOfMass, staticMoment, inertia } = uniform(bladeMass, rootRadius, radius);
    const rotorInertia = blades * inertia;
    return {
      outputs: { centreOfMass, staticMoment, inertia, rotorInertia, centrifugalForce: centrifugalForce(staticMoment, speed), storedEnergy: storedEnergy(rotorInertia, speed) },
      warnings: [],
    };
  },
});
