import { setScrewForce, setScrewHold as holdOf } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { countInput, forceOutput, lengthInput, torqueInput, torqueOutput } from '../specs.ts';
import { sizeInput, threadOf } from './screw-specs.ts';

export const setScrewHold = defineCalculation({
  id: 'set-screw-hold',
  title: 'Hold of set screws',
  section: 'Joints and fits',
  summary: 'What set screws on a round shaft hold along it and about it.',
  inputs: {
    size: sizeInput('M3'),
    seatingTorque: { ...torqueInput('Seating torque of one screw', 'T', 0.92), above: 0 },
    shaftDiameter: lengthInput('Diameter of the shaft', 'D', 5),
    count: countInput('Set screws', 'n', 1),
    friction: { kind: 'number', title: 'Friction of tip and bore on the shaft', symbol: '\\mu', unit: '-', shown: '-', min: 0, max: 2, default: 0.12, example: 0.12 },
  },
  outputs: {
    tipForce: forceOutput('Force of one screw on the shaft', 'F'),
    axialHold: forceOutput('Force along the shaft that they hold', 'F_a'),
    torsionalHold: torqueOutput('Torque that they hold', 'M'),
  },
  formulas: [
    { output: 'tipForce', tex: String.raw`F = \frac{T}{0.2\,d}` },
    { output: 'axialHold', tex: String.raw`F_a = 2\,\mu\,n\,F` },
    { output: 'torsionalHold', tex: String.raw`M = F_a\,\frac D2` },
  ],
  source: 'Friction at the tip and at the wall of the bore across from it; nut factor 0.2 of dry steel.',
  validity: [
    'An order of magnitude, on the safe side. Two tables of cup points differ by 2.5 to 3.3 times, and neither can be recomputed: with 0.12 this meets the lower within a fifth, with 0.32 the higher, where the cup digs in. The lower is the default, because what slips is lost.',
    'On a flat or in a dimple the screw is a stop as well and holds more; on a hardened shaft the cup cannot dig in.',
    'Set screws in a row along the shaft. Vibration loosens a screw that nothing locks.',
    'Torque that a screw may have: alloy steel M2 0.21, M2.5 0.57, M3 0.92, M4 2.2, M5 4, M6 7.2, M8 17 N·m; stainless about 0.8 of it (public table of a maker of shaft collars).',
  ],
  compute: ({ size, seatingTorque, shaftDiameter, count, friction }) => {
    const tipForce = setScrewForce(threadOf(size), seatingTorque);
    const axialHold = holdOf(tipForce, count, friction);
    return { outputs: { tipForce, axialHold, torsionalHold: (axialHold * shaftDiameter) / 2 }, warnings: [] };
  },
});
