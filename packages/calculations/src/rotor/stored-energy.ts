import { storedEnergy as energy } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { speedInput } from '../specs.ts';

export const storedEnergy = defineCalculation({
  id: 'stored-energy',
  title: 'Energy stored in the rotor',
  section: 'Rotor',
  summary: 'Kinetic energy of the turning rotor: what carries an autorotation, and what a blade strike lets loose.',
  inputs: {
    rotorInertia: { kind: 'number', title: 'Moment of inertia of the whole rotor', symbol: 'J', unit: 'kg·m²', shown: 'kg·m²', min: 0, example: 0.09 },
    speed: speedInput('Speed of the rotor', 'n', 1760),
  },
  outputs: { storedEnergy: { title: 'Stored energy', symbol: 'E', unit: 'J', shown: 'J' } },
  formulas: [{ output: 'storedEnergy', tex: String.raw`E = \tfrac{1}{2}\,J\,\Omega^2` }],
  source: 'Definition.',
  validity: ['The tail rotor and the drive that turn with it are left out.'],
  compute: ({ rotorInertia, speed }) => ({ outputs: { storedEnergy: energy(rotorInertia, speed) }, warnings: [] }),
});
