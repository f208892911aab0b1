import { tipMach as machOfTip } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

const metresPerSecond = { kind: 'number', unit: 'm/s', shown: 'm/s' } as const;

export const tipMach = defineCalculation({
  id: 'tip-mach',
  title: 'Tip Mach number',
  section: 'Rotor',
  summary: 'Speed of the advancing tip over the speed of sound.',
  inputs: {
    tipSpeed: { ...metresPerSecond, title: 'Tip speed', symbol: 'v_\\mathrm{tip}', min: 0, example: 143 },
    speedOfSound: { ...metresPerSecond, title: 'Speed of sound', symbol: 'a', above: 0, default: 340.294, example: 340.294 },
    airspeed: { ...metresPerSecond, title: 'Airspeed', symbol: 'V', min: 0, default: 0, example: 0 },
  },
  outputs: { tipMach: numberOutput('Mach number of the advancing tip', 'M') },
  formulas: [{ output: 'tipMach', tex: String.raw`M = \frac{v_\mathrm{tip} + V}{a}` }],
  source: 'Definition; default speed of sound: ISO 2533:1975, sea level.',
  validity: ['Level flight along the disc.'],
  compute: ({ tipSpeed, speedOfSound, airspeed }) => {
    const mach = machOfTip(tipSpeed, speedOfSound, airspeed);
    return { outputs: { tipMach: mach }, warnings: mach >= 1 ? ['The tip is faster than sound: no calculation of this catalogue describes such a rotor.'] : [] };
  },
});
