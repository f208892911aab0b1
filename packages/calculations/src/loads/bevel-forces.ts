import { bevelForces as forcesOf } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { basicInputs, gearTeeth } from '../gears/gear-specs.ts';
import { angleOutput, forceOutput, lengthInput, lengthOutput, torqueInput } from '../specs.ts';

export const bevelForces = defineCalculation({
  id: 'bevel-forces',
  title: 'Forces of a bevel mesh',
  section: 'Gears',
  summary: 'What the teeth of a straight bevel pair put on the shaft of gear 1.',
  inputs: {
    torque: torqueInput('Torque on gear 1', 'T_1', 0.9),
    module: lengthInput('Module at the outer end', 'm', 1),
    teeth1: gearTeeth('Teeth of gear 1', 'z_1', 19),
    teeth2: gearTeeth('Teeth of gear 2', 'z_2', 18),
    faceWidth: lengthInput('Face width', 'b', 6),
    pressureAngle: basicInputs.pressureAngle,
  },
  outputs: {
    coneAngle: angleOutput('Half cone angle of gear 1', '\\delta_1'),
    meanDiameter: lengthOutput('Reference diameter in the middle of the face', 'd_m'),
    tangential: forceOutput('Tangential, in the middle of the face', 'F_t'),
    radial: forceOutput('Towards the axis of gear 1', 'F_r'),
    axial: forceOutput('Along it, away from the crossing point', 'F_a'),
  },
  formulas: [
    { output: 'coneAngle', tex: String.raw`\tan\delta_1 = \frac{z_1}{z_2}` },
    { output: 'meanDiameter', tex: String.raw`d_m = m z_1 - b\sin\delta_1` },
    { output: 'tangential', tex: String.raw`F_t = \frac{2T_1}{d_m}` },
    { output: 'radial', tex: String.raw`F_r = F_t\tan\alpha\cos\delta_1` },
    { output: 'axial', tex: String.raw`F_a = F_t\tan\alpha\sin\delta_1` },
  ],
  source: 'Shigley, Mechanical Engineering Design, straight bevel gears (from memory).',
  validity: ['Straight teeth, axes that cross at a right angle, steady torque, no friction.'],
  compute: ({ torque, module, teeth1, teeth2, faceWidth, pressureAngle }) => {
    const cone = Math.hypot(teeth1, teeth2) * (module / 2);
    if (faceWidth >= cone) throw new CalculationError('faceWidth', `${faceWidth} m`, `less than the cone is long, ${cone} m`);
    return { outputs: { ...forcesOf(torque, module, teeth1, teeth2, faceWidth, pressureAngle) }, warnings: [] };
  },
});
