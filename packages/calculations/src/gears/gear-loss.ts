import { toothLossFactor } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput, teethInput } from '../specs.ts';

const ratio = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, max: 5, example: 0.8 }) as const;

export const gearLoss = defineCalculation({
  id: 'gear-loss',
  title: 'Loss of a mesh',
  section: 'Gears',
  summary: 'What share of the power a mesh turns into heat.',
  inputs: {
    teeth1: teethInput('Teeth of gear 1', 'z_1', 17),
    teeth2: teethInput('Teeth of gear 2', 'z_2', 84),
    tipContactRatio1: ratio('Contact ratio from the pitch point to the tip of gear 1', '\\varepsilon_1'),
    tipContactRatio2: ratio('Contact ratio from the pitch point to the tip of gear 2', '\\varepsilon_2'),
    baseHelixAngle: { kind: 'number', title: 'Base helix angle', symbol: '\\beta_b', unit: 'rad', shown: '°', min: 0, max: 1, default: 0, example: 0 },
    friction: { kind: 'number', title: 'Friction between the flanks', symbol: '\\mu', unit: '-', shown: '-', min: 0, max: 2, default: 0.09, example: 0.09 },
    power: { kind: 'number', title: 'Power through the mesh', symbol: 'P', unit: 'W', shown: 'W', min: 0, max: 1e9, example: 2000 },
  },
  outputs: {
    lossFactor: numberOutput('Tooth loss factor', 'H_V'),
    lossPower: { title: 'Power lost', symbol: 'P_V', unit: 'W', shown: 'W' },
    efficiency: numberOutput('Share that gets through', '\\eta'),
  },
  formulas: [
    { output: 'lossFactor', tex: String.raw`H_V = \frac{\pi(u+1)}{z_1 u\cos\beta_b}\,(1 - \varepsilon_\alpha + \varepsilon_1^2 + \varepsilon_2^2)` },
    { output: 'lossPower', tex: String.raw`P_V = P\,\mu\,H_V` },
    { output: 'efficiency', tex: String.raw`\eta = 1 - \mu\,H_V` },
  ],
  source: 'Ohlendorf’s tooth loss factor as VDI 2736-2 and ISO/TR 14179-2 use it (from memory).',
  validity: ['Friction alone, the same all over the flank: churning, bearings and seals come on top. Load shared evenly by the pairs in contact.'],
  compute: ({ teeth1, teeth2, tipContactRatio1, tipContactRatio2, baseHelixAngle, friction, power }) => {
    const lossFactor = toothLossFactor(teeth1, teeth2, tipContactRatio1, tipContactRatio2, baseHelixAngle);
    const share = friction * lossFactor;
    return { outputs: { lossFactor, lossPower: power * share, ...(share < 1 ? { efficiency: 1 - share } : {}) }, warnings: share < 1 ? [] : ['efficiency is left out: with this friction nothing gets through.'] };
  },
});
