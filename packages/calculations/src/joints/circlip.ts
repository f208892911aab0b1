import { circlipHold } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { forceInput, forceOutput, lengthInput, numberOutput, stressInput } from '../specs.ts';

export const circlip = defineCalculation({
  id: 'circlip',
  title: 'Groove of a circlip',
  section: 'Joints and fits',
  summary: 'What thrust the groove of a retaining ring bears, on a shaft or in a bore.',
  inputs: {
    seatDiameter: lengthInput('Diameter of the shaft or bore', 'd_1', 10),
    grooveDiameter: lengthInput('Diameter at the bottom of the groove', 'd_2', 9.6),
    shoulder: lengthInput('From the groove to the end of the part', 'n', 1),
    yieldStrength: stressInput('Yield strength of the part with the groove', '\\sigma_S', 400),
    load: { ...forceInput('Thrust on the ring', 'F', 500), optional: true },
  },
  outputs: {
    grooveArea: { title: 'Face on which the ring bears', symbol: 'A_N', unit: 'm²', shown: 'mm²' },
    shoulderRatio: numberOutput('Shoulder over depth of the groove', 'n/t'),
    capacity: forceOutput('Thrust at which the groove yields', 'F_N'),
    margin: numberOutput('Capacity over thrust', 'm'),
  },
  formulas: [
    { output: 'grooveArea', tex: String.raw`A_N = \frac\pi4\left|d_1^2 - d_2^2\right|` },
    { output: 'shoulderRatio', tex: String.raw`\frac nt = \frac{2n}{|d_1 - d_2|}` },
    { output: 'capacity', tex: String.raw`F_N = \frac{\sigma_S A_N}{1.2} \text{ where } \frac nt \ge 3` },
    { output: 'margin', tex: String.raw`m = \frac{F_N}{F}` },
  ],
  source: 'DIN 471 and DIN 472 (from memory), which print the load of a groove for 200 MPa.',
  validity: [
    'The groove, not the ring: with a sharp-cornered part against it a ring of usual thickness bears more than its groove, with a chamfered one far less.',
    'A shoulder of at least three depths. Steady thrust; shocks want a margin of several.',
    'A ring on a shaft lifts off at high speed, and one that was spread too far has lost its grip: fit it once.',
  ],
  compute: ({ load, ...groove }) => {
    const { seatDiameter, grooveDiameter } = groove;
    if (seatDiameter === grooveDiameter) throw new CalculationError('grooveDiameter', `${grooveDiameter} m`, 'less than the shaft, or more than the bore: here the groove has no depth');
    const { area, shoulderRatio, capacity } = circlipHold(groove);
    const loaded = capacity !== undefined && load !== undefined && load > 0;
    return {
      outputs: { grooveArea: area, shoulderRatio, ...(capacity === undefined ? {} : { capacity }), ...(loaded ? { margin: capacity / load } : {}) },
      warnings: [
        ...(capacity === undefined ? ['capacity and margin are left out: the shoulder is shorter than three depths of the groove, and shears off.'] : []),
        ...(capacity !== undefined && !loaded ? ['margin is left out: there is no load.'] : []),
        ...(loaded && load > capacity ? ['The thrust is more than the groove bears.'] : []),
      ],
    };
  },
});
