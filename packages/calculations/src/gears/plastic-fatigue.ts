import { plasticCurve, plasticStrength } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';

/** What to tell of a tooth of POM outside the curves that were measured. */
export function curveWarnings(temperatures: readonly number[], cycles: number): string[] {
  const { cyclesFrom, cyclesTo, temperatureTo } = plasticCurve;
  return [
    ...(temperatures.some((temperature) => temperature > temperatureTo) ? ['Above 120 °C the curves were not measured: the plastic is about to give way.'] : []),
    ...(cycles < cyclesFrom || cycles > cyclesTo ? [`The curves were measured from 10⁵ to 10⁸ cycles; ${cycles.toPrecision(3)} lies outside them.`] : []),
  ];
}

export const plasticFatigue = defineCalculation({
  id: 'plastic-fatigue',
  title: 'Strength of plastic teeth',
  section: 'Gears',
  summary: 'What root and flank of a plastic tooth stand, warm and after many load cycles.',
  inputs: {
    material: { kind: 'choice', title: 'Material', choices: ['POM'], default: 'POM', example: 'POM' },
    temperature: { kind: 'number', title: 'Temperature of the tooth', symbol: '\\vartheta', unit: 'K', shown: '°C', min: 200, max: 450, example: 333.15 },
    cycles: { kind: 'number', title: 'Load cycles of one tooth', symbol: 'N', unit: '-', shown: '-', min: 1, max: 1e15, example: 1e7 },
  },
  outputs: {
    rootStrength: { title: 'Strength of the root, as a stress number of smooth teeth', symbol: '\\sigma_{F\\mathrm{lim}N}', unit: 'Pa', shown: 'MPa' },
    flankStrength: { title: 'Strength of the flank', symbol: '\\sigma_{H\\mathrm{lim}N}', unit: 'Pa', shown: 'MPa' },
  },
  formulas: [
    { output: 'rootStrength', tex: String.raw`\sigma_{F\mathrm{lim}N} = 26 - 0.0025\,\vartheta^2 + 400\,N^{-0.2}\ [\mathrm{MPa}, {}^\circ\mathrm{C}]` },
    { output: 'flankStrength', tex: String.raw`\sigma_{H\mathrm{lim}N} = 36 - 0.0012\,\vartheta^2 + (1000 - 0.025\,\vartheta^2)\,N^{-0.21}` },
  ],
  source: 'VDI 2736-2:2014, as public code quotes it.',
  validity: [
    'POM, 10⁵ to 10⁸ cycles, up to 120 °C; not clamped beyond, but told.',
    'The flank curve is quoted for other plastics too, and is the less certain one: wear, not pitting, ends most dry POM flanks.',
  ],
  compute: ({ temperature, cycles }) => {
    const { root, flank } = plasticStrength(temperature, cycles);
    const stands = { rootStrength: root, flankStrength: flank };
    const left = Object.entries(stands).filter(([, strength]) => !(strength > 0));
    return {
      outputs: Object.fromEntries(Object.entries(stands).filter(([, strength]) => strength > 0)),
      warnings: [...left.map(([name]) => `${name} is left out: at this temperature the curve leaves no strength.`), ...curveWarnings([temperature], cycles)],
    };
  },
});
