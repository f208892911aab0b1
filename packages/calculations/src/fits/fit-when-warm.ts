import { interferenceLost } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { materialInput, propertyOf } from '../materials.ts';
import { lengthInput, lengthOutput } from '../specs.ts';

const temperatureInput = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'K', shown: '°C', above: 0, max: 1000, example }) as const;

export const fitWhenWarm = defineCalculation({
  id: 'fit-when-warm',
  title: 'A fit at another temperature',
  section: 'Joints and fits',
  summary: 'How tight a part sits in a bore of another material when both are warm or cold, and where it comes loose.',
  inputs: {
    nominal: lengthInput('Diameter of the joint', 'D', 22),
    interference: { kind: 'number', title: 'Interference at room temperature, on diameter; negative is play', symbol: 'I', unit: 'm', shown: 'µm', example: 15e-6 },
    outerMaterial: materialInput('Material with the bore', 'aluminium 7075', 'expansion'),
    innerMaterial: materialInput('Material inside', 'bearing steel', 'expansion'),
    temperature: temperatureInput('Temperature of both', 'T', 353.15),
    roomTemperature: { ...temperatureInput('Room temperature', 'T_0', 293.15), default: 293.15 },
  },
  outputs: {
    interferenceLost: { ...lengthOutput('Interference lost; negative is gained', '\\delta'), shown: 'µm' },
    interferenceThen: { ...lengthOutput('Interference then; negative is play', "I'"), shown: 'µm' },
    looseAt: { title: 'Temperature at which it comes loose', symbol: 'T_l', unit: 'K', shown: '°C' },
  },
  formulas: [
    { output: 'interferenceLost', tex: String.raw`\delta = (\alpha_o - \alpha_i)\,D\,(T - T_0)` },
    { output: 'interferenceThen', tex: String.raw`I' = I - \delta` },
    { output: 'looseAt', tex: String.raw`T_l = T_0 + \frac{I}{(\alpha_o - \alpha_i)\,D}` },
  ],
  source: 'Linear thermal expansion.',
  validity: ['Both parts have one temperature; a bearing that runs is warmer inside.', 'Expansion as around room temperature; plastics swell with damp as well.'],
  compute: ({ nominal, interference, outerMaterial, innerMaterial, temperature, roomTemperature }) => {
    const outer = propertyOf('expansion', outerMaterial, 'outerMaterial');
    const inner = propertyOf('expansion', innerMaterial, 'innerMaterial');
    const lost = interferenceLost(nominal, outer, inner, temperature - roomTemperature);
    const looseAt = roomTemperature + interference / ((outer - inner) * nominal);
    const comesLoose = interference > 0 && outer !== inner && looseAt > 0;
    return {
      outputs: { interferenceLost: lost, interferenceThen: interference - lost, ...(comesLoose ? { looseAt } : {}) },
      warnings: [
        ...(comesLoose ? [] : [`looseAt is left out: ${interference <= 0 ? 'it is loose at room temperature already' : 'both expand alike, or no temperature takes all of it'}.`]),
        ...(interference > 0 && interference <= lost ? ['It is loose at that temperature: only a retaining compound or a shoulder still holds it.'] : []),
      ],
    };
  },
});
