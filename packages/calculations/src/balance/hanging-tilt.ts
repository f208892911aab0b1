import { hangingTilt as tiltOf } from '@rotorwright/mechanics';
import { STANDARD_GRAVITY } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput } from '../specs.ts';

const place = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', min: -1e3, max: 1e3, example }) as const;

export const hangingTilt = defineCalculation({
  id: 'hanging-tilt',
  title: 'Hanging under the rotor',
  section: 'Balance and vibration',
  summary: 'How far the nose hangs down in hover when the centre of mass does not lie under the hub: the tilt of the disc that cyclic must hold.',
  inputs: {
    mass: { kind: 'number', title: 'Mass', symbol: 'm', unit: 'kg', shown: 'kg', above: 0, max: 1e6, example: 6.3 },
    ahead: place('Centre of mass ahead of the mast axis; behind is minus', 'x', 0.004),
    height: place('Its height over the rotor hub; below is minus', 'z', -0.17),
    stiffness: { kind: 'number', title: 'Moment of the head over its tilt; 0 for one that teeters freely', symbol: 'K', unit: 'N·m/rad', shown: 'N·m/rad', min: 0, max: 1e9, default: 0, example: 60 },
  },
  outputs: {
    tilt: angleOutput('Nose down; minus: up', '\\theta'),
    moment: { title: 'Moment that it makes with the mast upright, nose down', symbol: 'M', unit: 'N·m', shown: 'N·m' },
  },
  formulas: [
    { output: 'tilt', tex: String.raw`m g\left(x\cos\theta + z\sin\theta\right) = K\,\theta` },
    { output: 'moment', tex: String.raw`M = m\,g\,x` },
  ],
  source: 'Equilibrium of moments about the rotor hub.',
  validity: ['Hover in still air. The down-draught on boom and tail, and the side force of the tail rotor, are left out.', 'The same tilt is what the disc leans against the mast, and about what cyclic pitch holds it with.'],
  compute: ({ mass, ahead, height, stiffness }) => {
    if (!(mass * STANDARD_GRAVITY * -height + (stiffness * Math.PI) / 2 > 0)) throw new CalculationError('height', `${height} m over the hub`, 'a centre of mass below the hub, or a stiffer head');
    return { outputs: { tilt: tiltOf({ weight: mass * STANDARD_GRAVITY, ahead, below: -height, stiffness }), moment: mass * STANDARD_GRAVITY * ahead }, warnings: [] };
  },
});
