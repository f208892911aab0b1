import { regreaseInterval, regreaseMass } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthInput, speedInput, timeOutput } from '../specs.ts';

export const bearingGrease = defineCalculation({
  id: 'bearing-grease',
  title: 'Fresh grease for a bearing',
  section: 'Bearings',
  summary: 'After how much running time an open bearing wants fresh grease, and how much.',
  inputs: {
    kind: { kind: 'choice', title: 'Kind', choices: ['deep-groove', 'needle', 'thrust-ball'], example: 'thrust-ball' },
    bore: lengthInput('Bore', 'd', 8),
    outer: lengthInput('Outside diameter', 'D', 22),
    width: lengthInput('Width, or height of a thrust bearing', 'B', 7),
    speed: speedInput('Speed', 'n', 1800),
    temperature: { kind: 'number', title: 'Temperature of the bearing while it runs', symbol: 'T', unit: 'K', shown: '°C', above: 0, default: 343.15, example: 323.15 },
    shaft: { kind: 'choice', title: 'How the shaft stands', choices: ['horizontal', 'vertical'], default: 'horizontal', example: 'horizontal' },
  },
  outputs: {
    interval: timeOutput('Running time until fresh grease', 't'),
    greaseMass: { title: 'Grease to put in', symbol: 'm', unit: 'kg', shown: 'g' },
  },
  formulas: [
    { output: 'interval', tex: String.raw`t = k\left(\frac{14\cdot10^6}{n\sqrt d} - 4d\right) \min\left(2,\ 2^{(70 - T)/15}\right) v \text{, with h, rpm, mm and °C}` },
    { output: 'greaseMass', tex: String.raw`m = 0.005\,D\,B \text{, with g and mm}` },
  ],
  source: 'Public lubrication guide of an electric motor maker: k = 10 for deep grooves, 5 for needles, 1 for thrust bearings.',
  validity: [
    'A rule of thumb for machines that run long and clean. Common practice in the trade is far more often, for thrust bearings above all.',
    'v = ½ on a vertical shaft, else 1. Halved for every 15 K over 70 °C; lengthened below, but no more than doubled.',
    'Fill a third to a half of the free space when it is new. Do not mix greases. A sealed bearing is replaced, not greased.',
  ],
  compute: ({ kind, bore, outer, width, speed, temperature, shaft }) => {
    if (outer <= bore) throw new CalculationError('outer', `${outer} m`, `more than the bore of ${bore} m`);
    if (speed === 0) throw new CalculationError('speed', '0', 'a speed other than 0');
    const interval = regreaseInterval({ kind, bore, speed, temperature, verticalShaft: shaft === 'vertical' });
    return {
      outputs: { greaseMass: regreaseMass(outer, width), ...(interval === undefined ? {} : { interval }) },
      warnings: interval === undefined ? ['interval is left out: the rule gives none at this speed, which is too high for it.'] : [],
    };
  },
});
