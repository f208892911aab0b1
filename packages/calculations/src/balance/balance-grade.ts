import { defineCalculation } from '../define.ts';
import { speedInput } from '../specs.ts';

export const balanceGrade = defineCalculation({
  id: 'balance-grade',
  title: 'Permissible unbalance',
  section: 'Balance and vibration',
  summary: 'How much unbalance a balance quality grade leaves to a rotor at its speed.',
  inputs: {
    grade: { kind: 'number', title: 'Balance quality grade', symbol: 'G', unit: 'm/s', shown: 'mm/s', above: 0, example: 0.0063 },
    speed: { ...speedInput('Highest speed in service', 'n', 1760), above: 0 },
    mass: { kind: 'number', title: 'Mass of the rotor', symbol: 'm', unit: 'kg', shown: 'kg', above: 0, example: 0.8 },
  },
  outputs: {
    permissibleUnbalance: { title: 'Permissible unbalance', symbol: 'U_\\mathrm{per}', unit: 'kg·m', shown: 'g·mm' },
    specificUnbalance: { title: 'Permissible offset of the centre of mass', symbol: 'e_\\mathrm{per}', unit: 'm', shown: 'µm' },
  },
  formulas: [
    { output: 'specificUnbalance', tex: String.raw`e_\mathrm{per} = \frac{G}{\omega}` },
    { output: 'permissibleUnbalance', tex: String.raw`U_\mathrm{per} = m\,e_\mathrm{per}` },
  ],
  source: 'ISO 21940-11: specific unbalance e = G/ω (read in public files that quote it).',
  validity: ['A rigid rotor. With two correction planes the unbalance is shared between them.'],
  compute: ({ grade, speed, mass }) => ({ outputs: { permissibleUnbalance: (mass * grade) / speed, specificUnbalance: grade / speed }, warnings: [] }),
});
