import { pinShearCapacity, pinShearForce } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { forceOutput, lengthInput, numberOutput, stressInput, torqueInput } from '../specs.ts';

export const pinShear = defineCalculation({
  id: 'pin-shear',
  title: 'Shear of a pin',
  section: 'Joints and fits',
  summary: 'What force a pin bears in one plane or two, and its margin as a cross pin under torque.',
  inputs: {
    diameter: lengthInput('Diameter of the pin', 'd', 2),
    shearStrength: stressInput('Shear strength', '\\tau', 1050),
    planes: { kind: 'number', title: 'Planes in which it would shear', symbol: 'n', unit: '-', shown: '-', whole: true, min: 1, max: 2, example: 2 },
    torque: { ...torqueInput('Torque between shaft and hub', 'T', 3), optional: true },
    shaftDiameter: { ...lengthInput('Diameter of the shaft', 'D', 6), optional: true },
  },
  outputs: {
    capacity: forceOutput('Force that shears it, all planes together', 'F_\\mathrm{max}'),
    shearForce: forceOutput('Force from the torque, all planes together', 'F'),
    margin: numberOutput('Capacity over force', 'm'),
  },
  formulas: [
    { output: 'capacity', tex: String.raw`F_\mathrm{max} = n\,\tau\,\frac{\pi d^2}{4}` },
    { output: 'shearForce', tex: String.raw`F = \frac{2T}{D}` },
    { output: 'margin', tex: String.raw`m = \frac{F_\mathrm{max}}{F}` },
  ],
  source: 'Mean shear stress; hardened dowels of 1050 MPa as ASME B18.8.5M prints their strength.',
  validity: [
    'The planes lie at the surface of the shaft, where the hub begins.',
    'Breaking, once: reversing and pulsing torque want a margin of several. Left out: bending where the pin has play, pressure in the hole, what its own hole takes from the shaft.',
    'Shear strength: hardened dowel 1050 MPa; of others about 0.6 of the tensile strength (from memory).',
  ],
  compute: ({ diameter, shearStrength, planes, torque, shaftDiameter }) => {
    const capacity = pinShearCapacity(diameter, shearStrength, planes === 1 ? 1 : 2);
    if (torque === undefined) return { outputs: { capacity }, warnings: ['shearForce and margin are left out: torque is not given.'] };
    if (shaftDiameter === undefined) throw new CalculationError('shaftDiameter', 'nothing', 'the diameter of the shaft, for torque is given');
    if (shaftDiameter < diameter) throw new CalculationError('shaftDiameter', `${shaftDiameter} m`, `at least the diameter of the pin, ${diameter} m`);
    const shearForce = pinShearForce(torque, shaftDiameter);
    if (shearForce === 0) return { outputs: { capacity, shearForce }, warnings: ['margin is left out: there is no torque.'] };
    const margin = capacity / shearForce;
    return { outputs: { capacity, shearForce, margin }, warnings: margin < 1 ? ['The torque shears the pin.'] : [] };
  },
});
