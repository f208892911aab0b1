import { bearingReactions as reactionsOf } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { forceOutput } from '../specs.ts';

const place = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', min: -1000, max: 1000 }) as const;
const force = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'N', shown: 'N', min: -1e9, max: 1e9, default: 0 }) as const;

export const bearingReactions = defineCalculation({
  id: 'bearing-reactions',
  title: 'Loads of two bearings of a shaft',
  section: 'Loads and margins',
  summary: 'What the forces of gears, belts and rotors put on the two bearings of a straight shaft, and how far they bend it.',
  inputs: {
    first: { ...place('Place of the first bearing along the shaft', 'a'), example: 0 },
    second: { ...place('Place of the second', 'b'), example: 0.03 },
    loads: {
      kind: 'list',
      title: 'What acts on the shaft',
      of: {
        kind: 'record',
        title: 'Force',
        fields: {
          at: place('Place along the shaft', 'x'),
          angle: { kind: 'number', title: 'Direction about the shaft', symbol: '\\varphi', unit: 'rad', shown: '°', min: -100, max: 100, default: 0 },
          force: force('Force across the shaft', 'F'),
          axial: force('Force along it', 'F_a'),
          sense: { kind: 'number', title: 'Which way along it: 1 towards larger places, −1 towards smaller ones', symbol: 's', unit: '-', shown: '-', min: -1, max: 1, default: 1 },
          arm: { ...place('Distance of that from the axis', 'r'), min: 0, default: 0 },
        },
      },
      example: [{ at: 0.038, angle: 0, force: 240, axial: 0, arm: 0 }, { at: 0.038, angle: Math.PI / 2, force: 90, axial: 45, arm: 0.005 }],
    },
  },
  outputs: {
    first: forceOutput('Load of the first bearing', 'A'),
    second: forceOutput('Load of the second bearing', 'B'),
    across: forceOutput('Force across, both bearings together', 'F'),
    thrust: forceOutput('Push along the shaft, all together', 'T'),
    moment: { title: 'Largest bending moment', symbol: 'M', unit: 'N·m', shown: 'N·m' },
  },
  formulas: [
    { output: 'second', tex: String.raw`\vec B = \frac{\sum_i \left(\vec F_i\,(x_i - a) - s_i F_{a,i}\,\vec r_i\right)}{b - a}` },
    { output: 'first', tex: String.raw`\vec A = \sum_i \vec F_i - \vec B` },
    { output: 'across', tex: String.raw`F = \left|\sum_i \vec F_i\right|` },
    { output: 'thrust', tex: String.raw`T = \left|\sum_i s_i F_{a,i}\right|` },
    { output: 'moment', tex: String.raw`M = \max_x \left|\sum_{x_i < x} \vec F_i\,(x - x_i)\right|` },
  ],
  source: 'Balance of forces and moments of a beam on two supports.',
  validity: ['A straight stiff shaft on two bearings that give way to no moment; its own weight, unbalance and the preload of the bearings are left out.'],
  compute: ({ first, second, loads }) => {
    if (first === second) throw new CalculationError('second', `${second} m`, 'another place than that of the first bearing');
    const signed = loads.map((load) => ({ ...load, axial: load.sense * load.axial }));
    const thrust = Math.abs(signed.reduce((sum, { axial }) => sum + axial, 0));
    return { outputs: { ...reactionsOf(first, second, signed), thrust }, warnings: loads.length === 0 ? ['Nothing acts on the shaft.'] : [] };
  },
});
