import { CalculationError, defineCalculation } from '../define.ts';
import { torqueOutput } from '../specs.ts';

const speed = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'rad/s', shown: 'rpm' }) as const;
const torque = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'N·m', shown: 'N·m', min: 0, max: 1e9 }) as const;

export const shaftTorque = defineCalculation({
  id: 'shaft-torque',
  title: 'Torque in a shaft',
  section: 'Loads and margins',
  summary: 'What a shaft passes on to all that hangs on it, with what meshes and belts lose on the way, and how roughly it is driven.',
  inputs: {
    branches: {
      kind: 'list',
      title: 'What it drives',
      atLeast: 1,
      of: {
        kind: 'record',
        title: 'Branch',
        fields: {
          torque: torque('Torque at the end of the branch', 'T'),
          speed: speed('Speed there', 'n'),
          efficiency: { kind: 'number', title: 'Efficiency of the way there', symbol: '\\eta', unit: '-', shown: '%', above: 0, max: 1, default: 1 },
        },
      },
      example: [{ torque: 6.5, speed: 183, efficiency: 0.98 }, { torque: 0.24, speed: 900, efficiency: 0.95 }],
    },
    speed: { ...speed('Speed of the shaft', 'n_0'), example: 1492 },
    applicationFactor: { kind: 'number', title: 'Application factor: how roughly it is driven', symbol: 'K_A', unit: '-', shown: '-', min: 0.5, max: 10, default: 1, example: 1.5 },
    limit: { ...torque('Torque that engine or motor can give at this shaft; the rotors live on their own energy beyond it', 'T_\\mathrm{max}'), optional: true, example: 1.57 },
  },
  outputs: { torque: torqueOutput('Torque', 'T_0'), steadyTorque: torqueOutput('Without the application factor', 'T_s') },
  formulas: [
    { output: 'steadyTorque', tex: String.raw`T_s = \min\left(\sum_i \frac{T_i\,|n_i|}{\eta_i\,|n_0|},\ T_\mathrm{max}\right)` },
    { output: 'torque', tex: String.raw`T_0 = K_A\,T_s` },
  ],
  source: 'Conservation of power. Application factors: ISO 6336-6, table of driving and driven machines (from memory).',
  validity: ['Steady running. The application factor stands for the firing pulses of an engine and for jerks; a torsional resonance is not in it.'],
  compute: ({ branches, speed: own, applicationFactor, limit }) => {
    if (own === 0) throw new CalculationError('speed', '0 rad/s', 'a speed other than zero: a shaft that stands passes nothing on');
    const all = branches.reduce((sum, branch) => sum + (branch.torque * Math.abs(branch.speed)) / (branch.efficiency * Math.abs(own)), 0);
    const steadyTorque = Math.min(all, limit ?? Infinity);
    return { outputs: { torque: applicationFactor * steadyTorque, steadyTorque }, warnings: limit !== undefined && limit < all ? ['The rotors ask for more than engine or motor can give: the rest comes out of their own energy, and they slow down.'] : [] };
  },
});
