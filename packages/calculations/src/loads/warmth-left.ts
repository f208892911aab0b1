import { CalculationError, defineCalculation } from '../define.ts';

const warmth = (title: string, symbol: string, celsius: number) => ({ kind: 'number', title, symbol, unit: 'K', shown: '°C', above: 0, max: 5000, example: celsius + 273.15 }) as const;
const rise = (title: string, symbol: string) => ({ title, symbol, unit: 'K', shown: 'K' }) as const;

export const warmthLeft = defineCalculation({
  id: 'warmth-left',
  title: 'Warmth that is left',
  section: 'Loads and margins',
  summary: 'How much a part warms above the air around it, against how much it may.',
  inputs: {
    around: warmth('Temperature of the air around it', '\\vartheta_0', 35),
    temperature: warmth('Temperature of the part', '\\vartheta', 62),
    highest: warmth('Highest lasting temperature of its material', '\\vartheta_\\mathrm{max}', 100),
  },
  outputs: { allowedRise: rise('Warming that it may have', '\\Delta\\vartheta_\\mathrm{max}'), rise: rise('Warming that it has', '\\Delta\\vartheta') },
  formulas: [
    { output: 'allowedRise', tex: String.raw`\Delta\vartheta_\mathrm{max} = \max(0,\ \vartheta_\mathrm{max} - \vartheta_0)` },
    { output: 'rise', tex: String.raw`\Delta\vartheta = \vartheta - \vartheta_0` },
  ],
  source: 'Definition.',
  validity: ['Warming grows with the load; the air adds to it.'],
  compute: ({ around, temperature, highest }) => {
    if (temperature < around) throw new CalculationError('temperature', `${temperature} K`, `at least the ${around} K of the air around it`);
    return { outputs: { allowedRise: Math.max(0, highest - around), rise: temperature - around }, warnings: highest <= around ? ['The air alone is too warm for it.'] : [] };
  },
});
