import { defineCalculation } from '../define.ts';
import { forceOutput, lengthInput, torqueInput } from '../specs.ts';

export const bearingCouple = defineCalculation({
  id: 'bearing-couple',
  title: 'Loads of two bearings by a moment',
  section: 'Loads and margins',
  summary: 'What a bending moment across a grip or a hub puts on each of the two bearings that take it.',
  inputs: {
    moment: torqueInput('Bending moment', 'M', 6.5),
    distance: lengthInput('Distance of the two bearings, middle to middle', 'a', 16.7),
  },
  outputs: { force: forceOutput('Load across each bearing', 'F') },
  formulas: [{ output: 'force', tex: String.raw`F = \frac{M}{a}` }],
  source: 'Balance of moments.',
  validity: ['Both bearings stand stiff and take no moment by themselves. A force across the grip comes on top.'],
  compute: ({ moment, distance }) => ({ outputs: { force: moment / distance }, warnings: [] }),
});
