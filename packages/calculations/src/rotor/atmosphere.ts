import { airAt } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';

export const atmosphere = defineCalculation({
  id: 'atmosphere',
  title: 'Air',
  section: 'Rotor',
  summary: 'Temperature, pressure, density, speed of sound and viscosity of the air, on a standard day or a warmer, colder or damper one.',
  inputs: {
    pressureAltitude: { kind: 'number', title: 'Pressure altitude', symbol: 'H', unit: 'm', shown: 'm', min: -2000, max: 20_000, example: 0 },
    temperatureOffset: { kind: 'number', title: 'Warmer than the standard by', symbol: '\\Delta T', unit: 'K', shown: 'K', difference: true, min: -60, max: 60, default: 0, example: 0 },
    relativeHumidity: { kind: 'number', title: 'Relative humidity', symbol: '\\varphi', unit: '-', shown: '%', min: 0, max: 1, default: 0, example: 0 },
  },
  outputs: {
    temperature: { title: 'Temperature', symbol: 'T', unit: 'K', shown: '°C' },
    pressure: { title: 'Pressure', symbol: 'p', unit: 'Pa', shown: 'hPa' },
    dryPressure: { title: 'Pressure without the vapour', symbol: 'p_d', unit: 'Pa', shown: 'hPa' },
    density: { title: 'Density', symbol: '\\rho', unit: 'kg/m³', shown: 'kg/m³' },
    densityAltitude: { title: 'Density altitude: where the standard atmosphere is as thin', symbol: 'H_\\rho', unit: 'm', shown: 'm' },
    speedOfSound: { title: 'Speed of sound', symbol: 'a', unit: 'm/s', shown: 'm/s' },
    dynamicViscosity: { title: 'Dynamic viscosity', symbol: '\\mu', unit: 'Pa·s', shown: 'Pa·s' },
  },
  formulas: [
    { output: 'temperature', tex: String.raw`T = 288.15\,\mathrm{K} - 0.0065\,\mathrm{K/m}\;H + \Delta T` },
    { output: 'pressure', tex: String.raw`p = p_0\left(\frac{T_0 - 0.0065\,\mathrm{K/m}\;H}{T_0}\right)^{g/(0.0065\,\mathrm{K/m}\;R)}` },
    { output: 'dryPressure', tex: String.raw`p_d = p - e,\quad e = \varphi\,e_s(T)` },
    { output: 'density', tex: String.raw`\rho = \frac{p - e}{R\,T} + \frac{e}{R_v\,T},\quad e = \varphi\,e_s(T)` },
    { output: 'densityAltitude', tex: String.raw`\rho_\mathrm{ISO}(H_\rho) = \rho` },
    { output: 'speedOfSound', tex: String.raw`a = \sqrt{\kappa\,\frac{p}{\rho}}` },
    { output: 'dynamicViscosity', tex: String.raw`\mu = \frac{1.458\cdot 10^{-6}\;T^{3/2}}{T + 110.4\,\mathrm{K}}` },
  ],
  source: 'ISO 2533:1975. Saturation pressure of vapour: WMO No. 8, annex 4.B (from memory).',
  validity: [
    'From −2,000 to 20,000 m; above 11,000 m the standard temperature stays at 216.65 K.',
    'The temperature offset warms the air at the same pressure.',
    'Humidity lightens the air and quickens sound; its effect on viscosity is left out.',
  ],
  compute: ({ pressureAltitude, temperatureOffset, relativeHumidity }) => {
    const air = airAt(pressureAltitude, temperatureOffset, relativeHumidity);
    const outside = relativeHumidity > 0 && (air.temperature < 228.15 || air.temperature > 333.15);
    return { outputs: { ...air }, warnings: outside ? ['The saturation pressure of vapour is fitted from −45 to 60 °C; this temperature lies outside.'] : [] };
  },
});
