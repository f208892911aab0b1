import { tapDrill } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { lengthOutput } from '../specs.ts';
import { sizeInput, threadOf } from './screw-specs.ts';

export const thread = defineCalculation({
  id: 'thread',
  title: 'Metric screw thread',
  section: 'Joints and fits',
  summary: 'Diameters, stress area and tap drill of a metric thread, coarse or fine.',
  inputs: { size: sizeInput('M3') },
  outputs: {
    diameter: lengthOutput('Nominal diameter', 'd'),
    pitch: lengthOutput('Pitch', 'P'),
    pitchDiameter: lengthOutput('Pitch diameter', 'd_2'),
    minorDiameter: lengthOutput('Diameter at the root of the screw', 'd_3'),
    nutMinorDiameter: lengthOutput('Diameter at the crest of the nut', 'D_1'),
    stressArea: { title: 'Stress area', symbol: 'A_s', unit: 'm²', shown: 'mm²' },
    tapDrill: lengthOutput('Drill for tapping', 'd_b'),
  },
  formulas: [
    { output: 'diameter', tex: String.raw`d` },
    { output: 'pitch', tex: String.raw`P` },
    { output: 'pitchDiameter', tex: String.raw`d_2 = d - 0.64952\,P` },
    { output: 'minorDiameter', tex: String.raw`d_3 = d - 1.22687\,P` },
    { output: 'nutMinorDiameter', tex: String.raw`D_1 = d - 1.08253\,P` },
    { output: 'stressArea', tex: String.raw`A_s = \frac{\pi}{4}\left(\frac{d_2 + d_3}{2}\right)^2` },
    { output: 'tapDrill', tex: String.raw`d_b \approx d - P` },
  ],
  source: 'ISO 68-1, ISO 261, ISO 724, ISO 898-1, ISO 2306 (from memory), checked against public tables.',
  validity: ['The threads of ISO 261 from M1 to M39; basic sizes, before tolerances.', 'The tap drill is d − P, to the tenth that can be bought. A forming tap wants a larger one: its maker says which.'],
  compute: ({ size }) => {
    const found = threadOf(size);
    const { diameter, pitch, pitchDiameter, minorDiameter, nutMinorDiameter, stressArea } = found;
    return { outputs: { diameter, pitch, pitchDiameter, minorDiameter, nutMinorDiameter, stressArea, tapDrill: tapDrill(found) }, warnings: [] };
  },
});
