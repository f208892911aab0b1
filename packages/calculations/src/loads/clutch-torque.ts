import { CalculationError, defineCalculation } from '../define.ts';
import { torqueInput, torqueOutput } from '../specs.ts';

const speed = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'rad/s', shown: 'rpm', min: 0, max: 1e6, example }) as const;

export const clutchTorque = defineCalculation({
  id: 'clutch-torque',
  title: 'Torque of a centrifugal clutch',
  section: 'Loads and margins',
  summary: 'What a centrifugal clutch holds at another speed than that at which its maker, or a test, states it.',
  inputs: {
    ratedTorque: { ...torqueInput('Torque that it holds', 'T_r', 4.5), above: 0 },
    ratedSpeed: { ...speed('Speed of its shoes at which it holds that', 'n_r', 1466), above: 0 },
    engagingSpeed: speed('Speed at which it begins to grip', 'n_e', 560),
    speed: speed('Speed of its shoes', 'n', 1400),
  },
  outputs: { torque: torqueOutput('Torque that it holds', 'T') },
  formulas: [{ output: 'torque', tex: String.raw`T = T_r\,\frac{n^2 - n_e^2}{n_r^2 - n_e^2}` }],
  source: 'Centrifugal force of the shoes less the pull of their springs.',
  validity: ['Friction as it was when the torque was found: oil, glaze and heat take much of it.', 'Springs of one pull: what the shoes move is left out.'],
  compute: ({ ratedTorque, ratedSpeed, engagingSpeed, speed: at }) => {
    if (engagingSpeed >= ratedSpeed) throw new CalculationError('engagingSpeed', `${engagingSpeed} rad/s`, `less than the ${ratedSpeed} rad/s at which it holds its torque`);
    return { outputs: { torque: Math.max(0, (ratedTorque * (at ** 2 - engagingSpeed ** 2)) / (ratedSpeed ** 2 - engagingSpeed ** 2)) }, warnings: at < engagingSpeed ? ['It does not grip yet.'] : [] };
  },
});
