import { warmingToFit } from '@rotorwright/mechanics';
import { showQuantity } from '@rotorwright/units';
import { defineCalculation } from '../define.ts';
import { materialInput, propertyOf } from '../materials.ts';
import { lengthInput, numberOutput } from '../specs.ts';

const celsius = (value: number): number => value + 273.15;

/** Temperature that each thing stands, K, and where the number comes from. */
const usualLimits = {
  seal: { temperature: celsius(80), what: 'the seals of a closed bearing', source: 'from memory' },
  grease: { temperature: celsius(80), what: 'the grease of a filled bearing', source: 'from memory' },
  bearing: { temperature: celsius(120), what: 'an open, dry bearing', source: 'makers of bearings give 120 to 125 °C' },
  temper: { temperature: celsius(120), what: 'the temper of age-hardened aluminium', source: 'from memory' },
  lock: { temperature: celsius(150), what: 'anaerobic locks and retaining compounds nearby', source: 'from memory' },
} as const;

type Thing = keyof typeof usualLimits;

const limitInput = (thing: Thing) =>
  ({ kind: 'number', title: `The most for ${usualLimits[thing].what}`, symbol: 'T_\\mathrm{max}', unit: 'K', shown: '°C', above: 0, default: usualLimits[thing].temperature }) as const;

const temperature = (value: number): string => showQuantity(value, '°C', { significant: 4 });

export const warmToFit = defineCalculation({
  id: 'warm-to-fit',
  title: 'Warming a housing',
  section: 'Joints and fits',
  summary: 'How warm a housing must be for a part to drop in, and what must not get that hot.',
  inputs: {
    nominal: lengthInput('Diameter of the seat', 'D', 22),
    interference: { kind: 'number', title: 'Interference at room temperature, on diameter; negative is loose', symbol: 'I', unit: 'm', shown: 'µm', example: 15e-6 },
    clearanceWanted: { kind: 'number', title: 'Clearance wanted while fitting, on diameter', symbol: 'c', unit: 'm', shown: 'µm', min: 0, example: 5e-6 },
    housingMaterial: materialInput('Material of the housing', 'aluminium 7075', 'expansion'),
    roomTemperature: { kind: 'number', title: 'Room temperature', symbol: 'T_0', unit: 'K', shown: '°C', above: 0, default: 293.15, example: 293.15 },
    limits: {
      kind: 'record',
      title: 'What must not get hot; the usual values stand where none is given',
      optional: true,
      fields: { seal: limitInput('seal'), grease: limitInput('grease'), bearing: limitInput('bearing'), temper: limitInput('temper'), lock: limitInput('lock') },
    },
  },
  outputs: {
    housingTemperature: { title: 'Temperature of the housing', symbol: 'T', unit: 'K', shown: '°C' },
    temperatureRise: { title: 'Rise over room temperature', symbol: '\\Delta T', unit: 'K', shown: 'K' },
    limitsPassed: numberOutput('Limits that it runs into; the warnings name them', 'n'),
    margin: { title: 'From the housing’s temperature to the lowest limit', symbol: 'm_T', unit: 'K', shown: 'K' },
  },
  formulas: [
    { output: 'temperatureRise', tex: String.raw`\Delta T = \max\left(0,\ \frac{I + c}{\alpha\,D}\right)` },
    { output: 'housingTemperature', tex: String.raw`T = T_0 + \Delta T` },
    { output: 'limitsPassed', tex: String.raw`n = \left|\{i : T > T_{\mathrm{max},i}\}\right|` },
    { output: 'margin', tex: String.raw`m_T = \min_i T_{\mathrm{max},i} - T` },
  ],
  source: 'Linear thermal expansion. Limits: 120 to 125 °C for open bearings as makers give it; seals, grease, temper and locks from memory.',
  validity: [
    'The part stays at room temperature: it must go in at once, for it warms in the housing and grips.',
    'The whole seat has one temperature, and the expansion is that around room temperature.',
    'The limits are usual values for guidance: what the maker of a seal, grease or compound gives goes before them.',
  ],
  compute: ({ nominal, interference, clearanceWanted, housingMaterial, roomTemperature, limits }) => {
    const temperatureRise = warmingToFit(nominal, interference, clearanceWanted, propertyOf('expansion', housingMaterial, 'housingMaterial'));
    const housingTemperature = roomTemperature + temperatureRise;
    const stood = (Object.keys(usualLimits) as Thing[]).map((thing) => ({ thing, most: limits?.[thing] ?? usualLimits[thing].temperature }));
    const passed = stood.filter(({ most }) => housingTemperature > most);
    return {
      outputs: { housingTemperature, temperatureRise, limitsPassed: passed.length, margin: Math.min(...stood.map(({ most }) => most)) - housingTemperature },
      warnings: [
        ...(temperatureRise === 0 ? ['It drops in at room temperature: no warming is needed.'] : []),
        ...passed.map(({ thing, most }) => {
          const { temperature: usual, what, source } = usualLimits[thing];
          return `Limit ${thing}: ${temperature(housingTemperature)} is more than ${temperature(most)}, the most for ${what} (${most === usual ? source : 'as given'}).`;
        }),
      ],
    };
  },
});
