import { plasticCurve, plasticToothTemperature } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { lengthInput } from '../specs.ts';
import { gearTeeth } from './gear-specs.ts';

export const ambientInput = { kind: 'number', title: 'Temperature around the gears', symbol: '\\vartheta_0', unit: 'K', shown: '°C', min: 200, max: 450, example: 298.15 } as const;
export const dutyInput = { kind: 'number', title: 'Share of the time under load', symbol: 'ED', unit: '-', shown: '%', above: 0, max: 1, default: 1, example: 1 } as const;
export const mateInput = { kind: 'choice', title: 'What the other gear is made of', choices: ['steel', 'plastic'] } as const;

export const plasticGearTemperature = defineCalculation({
  id: 'plastic-gear-temperature',
  title: 'Temperature of a plastic tooth',
  section: 'Gears',
  summary: 'How warm root or flank of a plastic gear gets from what the mesh loses.',
  inputs: {
    ambient: ambientInput,
    lossPower: { kind: 'number', title: 'Power lost in the mesh', symbol: 'P_V', unit: 'W', shown: 'W', min: 0, max: 1e6, example: 25 },
    place: { kind: 'choice', title: 'Place', choices: ['root', 'flank'], example: 'root' },
    mate: { ...mateInput, example: 'steel' },
    faceWidth: lengthInput('Face width in mesh', 'b', 12),
    teeth: gearTeeth('Teeth of the plastic gear', 'z', 84),
    pitchLineSpeed: { kind: 'number', title: 'Speed of the teeth at the reference circle', symbol: 'v_t', unit: 'm/s', shown: 'm/s', above: 0, max: 1e3, example: 13 },
    normalModule: lengthInput('Normal module', 'm_n', 1),
    dutyCycle: dutyInput,
  },
  outputs: { temperature: { title: 'Temperature of the tooth', symbol: '\\vartheta', unit: 'K', shown: '°C' } },
  formulas: [{ output: 'temperature', tex: String.raw`\vartheta = \vartheta_0 + P_V\,\frac{k_\vartheta}{b\,z\,(v_t m_n)^{0.75}}\,ED^{0.64}` }],
  source: 'VDI 2736-2:2014: coefficients as public code quotes them, exponent of the duty cycle from memory.',
  validity: [
    'Open drive, moving air; b and m_n in mm, v_t in m/s, k_ϑ 895 (root) and 6300 (flank) against steel, 2148 and 9000 against plastic.',
    'A metal hub or frame that carries heat away makes it cooler, a closed case warmer.',
  ],
  compute: (inputs) => {
    const temperature = plasticToothTemperature(inputs);
    return { outputs: { temperature }, warnings: temperature > plasticCurve.temperatureTo ? ['Above 120 °C plastics give way: the result says no more than that.'] : [] };
  },
});
