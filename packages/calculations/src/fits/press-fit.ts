import { pressFit as pressed } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { materialInput, propertyOf } from '../materials.ts';
import { lengthInput } from '../specs.ts';

export const pressFit = defineCalculation({
  id: 'press-fit',
  title: 'Press fit',
  section: 'Joints and fits',
  summary: 'Pressure of a hub on a shaft that is larger than its bore, and what the joint holds by friction.',
  inputs: {
    nominal: lengthInput('Diameter of the joint', 'd', 22),
    interference: { kind: 'number', title: 'Interference, on diameter', symbol: 'I', unit: 'm', shown: 'µm', min: 0, example: 15e-6 },
    shaftBore: { kind: 'number', title: 'Bore of the inner part', symbol: 'd_i', unit: 'm', shown: 'mm', min: 0, default: 0, example: 0 },
    hubOuter: lengthInput('Outer diameter of the hub', 'D', 32),
    length: lengthInput('Length of the joint', 'l', 7),
    friction: { kind: 'number', title: 'Coefficient of friction', symbol: '\\mu', unit: '-', shown: '-', min: 0, max: 2, default: 0.12, example: 0.12 },
    shaftMaterial: materialInput('Material of the inner part', 'bearing steel', 'youngsModulus', 'poissonsRatio'),
    hubMaterial: materialInput('Material of the hub', 'aluminium 7075', 'youngsModulus', 'poissonsRatio'),
  },
  outputs: {
    pressure: { title: 'Pressure in the joint', symbol: 'p', unit: 'Pa', shown: 'MPa' },
    hubHoopStress: { title: 'Tangential stress at the bore of the hub', symbol: '\\sigma_t', unit: 'Pa', shown: 'MPa' },
    pressForce: { title: 'Force that presses it together or apart', symbol: 'F', unit: 'N', shown: 'N' },
    torqueCapacity: { title: 'Torque at which it slips', symbol: 'T', unit: 'N·m', shown: 'N·m' },
  },
  formulas: [
    {
      output: 'pressure',
      tex: String.raw`p = \frac{I}{d\left[\frac{1}{E_o}\left(\frac{D^2 + d^2}{D^2 - d^2} + \nu_o\right) + \frac{1}{E_i}\left(\frac{d^2 + d_i^2}{d^2 - d_i^2} - \nu_i\right)\right]}`,
    },
    { output: 'hubHoopStress', tex: String.raw`\sigma_t = p\,\frac{D^2 + d^2}{D^2 - d^2}` },
    { output: 'pressForce', tex: String.raw`F = \mu\,p\,\pi d\,l` },
    { output: 'torqueCapacity', tex: String.raw`T = \frac{F d}{2}` },
  ],
  source: 'Lamé’s thick cylinders; Shigley’s Mechanical Engineering Design, 9th ed., section 3-16 (from memory), checked against a published example.',
  validity: [
    'Two elastic rings of the same length: nothing yields, which hubHoopStress and the yield strength must show.',
    'Left out: roughness that pressing flattens, heat, speed, and the peaks of pressure at the ends of the joint.',
  ],
  compute: ({ shaftMaterial, hubMaterial, ...sizes }) => {
    const { nominal, shaftBore, hubOuter } = sizes;
    if (shaftBore >= nominal) throw new CalculationError('shaftBore', `${shaftBore} m`, `less than the diameter of the joint, ${nominal} m`);
    if (hubOuter <= nominal) throw new CalculationError('hubOuter', `${hubOuter} m`, `more than the diameter of the joint, ${nominal} m`);
    const elastic = (given: typeof shaftMaterial, path: string) => ({ youngsModulus: propertyOf('youngsModulus', given, path), poissonsRatio: propertyOf('poissonsRatio', given, path) });
    return { outputs: { ...pressed({ ...sizes, shaft: elastic(shaftMaterial, 'shaftMaterial'), hub: elastic(hubMaterial, 'hubMaterial') }) }, warnings: [] };
  },
});
