import { rollerClutchPressure, rollerClutchTorque } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { countInput, degrees, lengthInput, numberOutput, stressInput, stressOutput, torqueInput, torqueOutput } from '../specs.ts';

const steel = { youngsModulus: 208e9, poissonsRatio: 0.3 } as const;

export const oneWayClutch = defineCalculation({
  id: 'one-way-clutch',
  title: 'Torque of a one-way clutch with rollers',
  section: 'Bearings',
  summary: 'How much torque the rollers of a one-way clutch hold before they mark the shaft.',
  inputs: {
    rollers: countInput('Rollers that lock', 'z', 6),
    rollerDiameter: lengthInput('Diameter of a roller', 'D_w', 1.6),
    rollerLength: lengthInput('Length on which a roller bears', 'l', 6),
    shaftDiameter: lengthInput('Diameter of the shaft', 'd', 10),
    wedgeAngle: { kind: 'number', title: 'Angle between the surfaces that pinch a roller', symbol: '\\varepsilon', unit: 'rad', shown: '°', above: 0, max: degrees(30), default: degrees(7), example: degrees(7) },
    allowedPressure: { ...stressInput('Hertzian pressure that the shaft bears', 'p_\\mathrm{max}', 2000), default: 2e9 },
    torque: { ...torqueInput('Torque', 'T', 4), optional: true },
  },
  outputs: {
    torqueCapacity: torqueOutput('Torque at the allowed pressure', 'T_\\mathrm{max}'),
    frictionNeeded: numberOutput('Friction below which it slips', '\\mu'),
    pressure: stressOutput('Hertzian pressure at the given torque', 'p'),
    margin: numberOutput('Torque it holds over the given torque', 'm'),
  },
  formulas: [
    { output: 'frictionNeeded', tex: String.raw`\mu = \tan\frac{\varepsilon}{2}` },
    { output: 'torqueCapacity', tex: String.raw`T_\mathrm{max} = \frac{z\,d\,\mu}{2}\,l\,p_\mathrm{max}^2\,\frac{2\pi(1 - \nu^2)}{E}\left(\frac{2}{D_w} + \frac{2}{d}\right)^{-1}` },
    { output: 'pressure', tex: String.raw`p = p_\mathrm{max}\sqrt{\frac{T}{T_\mathrm{max}}}` },
    { output: 'margin', tex: String.raw`m = \frac{T_\mathrm{max}}{T}` },
  ],
  source: 'Statics of a roller in a wedge; Hertz for two cylinders of steel (from memory).',
  validity: [
    'The maker’s catalogue torque goes before this figure: the drawn shell, its housing and shocks often give less.',
    'All rollers share evenly. Shaft hardened to 58 to 64 HRC and round; a softer shaft bears far less than 2000 MPa (from memory).',
    '7° for the angle is common practice, no source. After assembly turn it by hand: free one way, locked the other.',
  ],
  compute: ({ allowedPressure, torque, ...given }) => {
    const clutch = { ...given, ...steel };
    const torqueCapacity = rollerClutchTorque(clutch, allowedPressure);
    const loaded = torque !== undefined && torque > 0;
    return {
      outputs: {
        torqueCapacity,
        frictionNeeded: Math.tan(given.wedgeAngle / 2),
        ...(torque === undefined ? {} : { pressure: rollerClutchPressure(clutch, torque) }),
        ...(loaded ? { margin: torqueCapacity / torque } : {}),
      },
      warnings: [
        ...(torque === undefined ? ['pressure and margin are left out: torque is not given.'] : loaded ? [] : ['margin is left out: there is no torque.']),
        ...(loaded && torque > torqueCapacity ? ['The torque is more than it holds: the rollers mark the shaft, then slip.'] : []),
      ],
    };
  },
});
