import { barthFactor, lewisFormFactor } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { lengthInput, numberOutput, teethInput } from '../specs.ts';

const pascal = (title: string, symbol: string) => ({ title, symbol, unit: 'Pa', shown: 'MPa' }) as const;

export const gearLewis = defineCalculation({
  id: 'gear-lewis',
  title: 'Bending of a tooth, in one line',
  section: 'Gears',
  summary: 'Lewis’s estimate of the stress at the root of a straight tooth, and the force that a stress allows.',
  inputs: {
    normalModule: lengthInput('Module', 'm', 1),
    teeth: { ...teethInput('Teeth', 'z', 20), min: 12, max: 300 },
    faceWidth: lengthInput('Face width', 'b', 10),
    tangentialForce: { kind: 'number', title: 'Tangential force', symbol: 'F_t', unit: 'N', shown: 'N', min: 0, max: 1e9, optional: true, example: 100 },
    allowableStress: { kind: 'number', title: 'Stress that the material is allowed', symbol: '\\sigma_\\mathrm{all}', unit: 'Pa', shown: 'MPa', above: 0, max: 1e11, optional: true, example: 35e6 },
    pitchLineSpeed: { kind: 'number', title: 'Speed of the teeth at the reference circle', symbol: 'v', unit: 'm/s', shown: 'm/s', min: 0, max: 1000, default: 0, example: 5 },
  },
  outputs: {
    formFactor: numberOutput('Lewis form factor', 'Y'),
    velocityFactor: numberOutput('Velocity factor', 'K_v'),
    bendingStress: pascal('Stress at the root', '\\sigma'),
    allowableForce: { title: 'Tangential force that the stress allows', symbol: 'F_\\mathrm{all}', unit: 'N', shown: 'N' },
    power: { title: 'Power that this force carries', symbol: 'P', unit: 'W', shown: 'W' },
  },
  formulas: [
    { output: 'formFactor', tex: String.raw`Y(z)` },
    { output: 'velocityFactor', tex: String.raw`K_v = 1 + \frac{v}{6.096\ \mathrm{m/s}}` },
    { output: 'bendingStress', tex: String.raw`\sigma = \frac{K_v F_t}{b\,m\,Y}` },
    { output: 'allowableForce', tex: String.raw`F_\mathrm{all} = \frac{b\,m\,Y\,\sigma_\mathrm{all}}{K_v}` },
    { output: 'power', tex: String.raw`P = F_\mathrm{all}\,v` },
  ],
  source: 'Shigley, Mechanical Engineering Design, section 14-1 and table 14-2 (from memory; the table read in public code).',
  validity: ['Spur teeth of full depth, 20°, no profile shift, load at the tip of one tooth. No notch, no heat, no sharing of the load: for a first size only.', 'The velocity factor is for cut or milled teeth.'],
  compute: ({ normalModule, teeth, faceWidth, tangentialForce, allowableStress, pitchLineSpeed }) => {
    const formFactor = lewisFormFactor(teeth);
    const velocityFactor = barthFactor(pitchLineSpeed);
    const perStress = (faceWidth * normalModule * formFactor) / velocityFactor;
    const allowable = allowableStress === undefined ? undefined : allowableStress * perStress;
    return {
      outputs: {
        formFactor,
        velocityFactor,
        ...(tangentialForce === undefined ? {} : { bendingStress: tangentialForce / perStress }),
        ...(allowable === undefined ? {} : { allowableForce: allowable, power: allowable * pitchLineSpeed }),
      },
      warnings: [
        ...(tangentialForce === undefined ? ['bendingStress is left out: no force is given.'] : []),
        ...(allowable === undefined ? ['allowableForce and power are left out: no allowable stress is given.'] : []),
      ],
    };
  },
});
