import { engineAirFactor, enginePowerFromPeak, enginePowerOnCurve, meanEffectivePressure } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { numberOutput, rpm, speedInput, torqueOutput } from '../specs.ts';
import { positive, powerOutput } from './rotor-specs.ts';

/** Mean effective pressure of small two-strokes at their best [Pa]. */
const USUAL_PRESSURE = { least: 2.5e5, most: 9e5 };

export const enginePower = defineCalculation({
  id: 'engine-power',
  title: 'Power of a two-stroke',
  section: 'Rotor',
  summary: 'Power at full throttle at a speed, from points of its curve or from its peak alone, in the air of the day, less what the governor keeps back.',
  inputs: {
    curve: {
      kind: 'list',
      title: 'Points of the full-throttle curve, ascending in speed; or the peak alone',
      optional: true,
      atLeast: 2,
      of: { kind: 'record', title: 'Point', fields: { speed: { ...speedInput('Speed', 'n', 13_000), above: 0 }, power: positive('Power there', 'P', 'W', 'W', 2000) } },
      example: [{ speed: rpm(12_000), power: 1950 }, { speed: rpm(14_000), power: 2300 }, { speed: rpm(16_000), power: 2100 }],
    },
    peakPower: { ...positive('Best power', 'P_\\mathrm{max}', 'W', 'W', 2300), optional: true },
    peakSpeed: { ...speedInput('Speed of the best power', 'n_\\mathrm{max}', 14_200), above: 0, optional: true },
    speed: { ...speedInput('Speed', 'n', 14_000), above: 0 },
    dryPressure: { ...positive('Pressure of the air without its vapour', 'p_d', 'Pa', 'hPa', 101_325), default: 101_325 },
    temperature: { kind: 'number', title: 'Temperature of the air that it draws', symbol: 'T', unit: 'K', shown: '°C', min: 200, max: 400, default: 288.15, example: 288.15 },
    displacement: { ...positive('Swept volume', 'V', 'm³', 'cm³', 24e-6), optional: true },
    reserve: { kind: 'number', title: 'Share kept back for the governor', symbol: 'h_r', unit: '-', shown: '%', min: 0, max: 0.9, default: 0.1, example: 0.1 },
  },
  outputs: {
    standardPower: powerOutput('Power at full throttle on a standard day at sea level', 'P_0'),
    airFactor: numberOutput('Share of it in this air', '\\alpha'),
    power: powerOutput('Power at full throttle in this air', 'P'),
    available: powerOutput('Power that the governor can call for', 'P_a'),
    torque: torqueOutput('Torque at full throttle in this air', 'T'),
    meanPressure: { title: 'Mean effective pressure on a standard day', symbol: 'p_m', unit: 'Pa', shown: 'kPa' },
  },
  formulas: [
    { output: 'standardPower', tex: String.raw`P_0 = P(n)\ \text{of the curve}\quad\text{or}\quad P_0 = P_\mathrm{max}\left(x + x^2 - x^3\right),\ x = \frac{n}{n_\mathrm{max}}` },
    { output: 'airFactor', tex: String.raw`\alpha = \left(\frac{p_d}{1013.25\,\mathrm{hPa}}\right)^{1.2}\left(\frac{288.15\,\mathrm{K}}{T}\right)^{0.6}` },
    { output: 'power', tex: String.raw`P = \alpha\,P_0` },
    { output: 'available', tex: String.raw`P_a = (1 - h_r)\,P` },
    { output: 'torque', tex: String.raw`T = \frac{P}{\omega}` },
    { output: 'meanPressure', tex: String.raw`p_m = \frac{P_0}{V\,n}` },
  ],
  source: 'Air: ISO 1585:2020, correction of spark-ignition engines. Shape from the peak alone: S. R. Leiderman (both from memory). Reserve of the governor: common practice, no source.',
  validity: [
    'Stated power is taken as that of a standard day at sea level. ISO 1585 corrects by up to 7 %; beyond that the law is carried on.',
    'The mixture is taken as set for the day. A warm engine bay, exhaust that is drawn in again, and a carburettor left as it was cost more.',
    'The shape from the peak alone is that of engines without a tuned pipe: a pipe makes it narrower. Points of the curve are better.',
  ],
  compute: ({ curve, peakPower, peakSpeed, speed, dryPressure, temperature, displacement, reserve }) => {
    if (curve === undefined && (peakPower === undefined || peakSpeed === undefined)) throw new CalculationError('curve', 'nothing', 'points of the curve, or peakPower and peakSpeed');
    const back = curve?.findIndex((point, index) => index > 0 && point.speed <= curve[index - 1]!.speed) ?? -1;
    if (back > 0) throw new CalculationError(`curve[${back}].speed`, `${curve![back]!.speed} rad/s`, 'more than that of the point before');
    const standardPower = curve === undefined ? enginePowerFromPeak(peakPower!, peakSpeed!, speed) : enginePowerOnCurve(curve, speed);
    if (standardPower === undefined) {
      const ends = [curve![0]!, curve!.at(-1)!].map((point) => Math.round((point.speed * 30) / Math.PI));
      throw new CalculationError('speed', `${Math.round((speed * 30) / Math.PI)} rpm`, `a speed within the points of the curve, ${ends[0]} to ${ends[1]} rpm`);
    }
    const airFactor = engineAirFactor(dryPressure, temperature);
    const power = airFactor * standardPower;
    const meanPressure = displacement === undefined ? undefined : meanEffectivePressure(standardPower, displacement, speed);
    return {
      outputs: { standardPower, airFactor, power, available: (1 - reserve) * power, torque: power / speed, ...(meanPressure === undefined ? {} : { meanPressure }) },
      warnings: [
        ...(meanPressure === undefined ? ['meanPressure is left out: it needs displacement.'] : []),
        ...(meanPressure !== undefined && (meanPressure < USUAL_PRESSURE.least || meanPressure > USUAL_PRESSURE.most)
          ? [`A mean effective pressure of ${(meanPressure / 1e5).toFixed(1)} bar is unusual for a small two-stroke, 2.5 to 9 bar (common practice, no source): look at power, speed and displacement again.`] : []),
        ...(airFactor < 0.93 || airFactor > 1.07 ? ['ISO 1585 corrects by up to 7 %; here its law is carried on.'] : []),
      ],
    };
  },
});
