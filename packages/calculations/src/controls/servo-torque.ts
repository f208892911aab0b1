import { servoTorque as torqueOf } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { countInput, degrees, torqueOutput } from '../specs.ts';

const angle = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'rad', shown: '°', min: degrees(-60), max: degrees(60), example: degrees(example) }) as const;
const gain = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'rad/rad', shown: 'rad/rad', min: -100, max: 100, default: 0, example }) as const;

export const servoTorque = defineCalculation({
  id: 'servo-torque',
  title: 'Torque at a servo',
  section: 'Controls',
  summary: 'What the blades, which want to lie flat, ask of one servo at most, over all sticks and a turn of the rotor.',
  inputs: {
    moment: { kind: 'number', title: 'Moment that turns one blade flat, of either sign', symbol: 'M', unit: 'N·m', shown: 'N·m', example: 0.6 },
    pitch: { ...angle('Pitch at which it does', '\\theta_M', 13), above: 0, max: degrees(89) },
    blades: countInput('Blades', 'B', 2),
    collectiveGain: gain('Collective for the turn of the servo', '\\partial\\theta_0/\\partial\\alpha', 0.2),
    cosineGain: gain('Cyclic over the cosine of the azimuth, for the turn of the servo', '\\partial\\theta_c/\\partial\\alpha', 0.3),
    sineGain: gain('Cyclic over the sine of the azimuth, for the turn of the servo', '\\partial\\theta_s/\\partial\\alpha', 0),
    lowest: angle('Collective at its lower end', '\\theta_\\mathrm{min}', -9),
    highest: angle('Collective at its upper end', '\\theta_\\mathrm{max}', 13),
    cyclic: { ...angle('Cyclic to either side', '\\theta_\\mathrm{cyc}', 7.5), min: 0, default: 0 },
  },
  outputs: { torque: torqueOutput('Torque at the servo, at most', '\\tau') },
  formulas: [{ output: 'torque', tex: String.raw`\tau = \max_{\text{sticks},\,\psi}\left|\sum_{b=1}^{B} K\sin\theta_b\cos\theta_b\left(\frac{\partial\theta_0}{\partial\alpha} + \frac{\partial\theta_c}{\partial\alpha}\cos\psi_b + \frac{\partial\theta_s}{\partial\alpha}\sin\psi_b\right)\right|,\quad K = \frac{M}{\sin\theta_M\cos\theta_M}` }],
  source: 'Principle of virtual work.',
  validity: ['The gains are those at mid travel. Left out: lift ahead or behind of the feathering axis, friction, damping, what bends, and the jerk of quick sticks.'],
  compute: ({ moment, pitch, lowest, highest, cyclic, blades, collectiveGain, cosineGain, sineGain }) => {
    if (lowest > highest) throw new CalculationError('lowest', `${lowest} rad`, `at most the ${highest} rad of the upper end`);
    const stiffness = moment / (Math.sin(pitch) * Math.cos(pitch));
    return { outputs: { torque: torqueOf({ stiffness, blades, gains: [collectiveGain, cosineGain, sineGain], lowest, highest, cyclic }) }, warnings: [] };
  },
});
