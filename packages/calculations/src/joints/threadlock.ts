import { threadlockCureTime, threadlockHeatShare, threadlocks, threadlockSizeShare, type CureSurface, type ThreadlockClass } from '@rotorwright/mechanics';
import { showQuantity } from '@rotorwright/units';
import { defineCalculation } from '../define.ts';
import { numberOutput, timeOutput, torqueOutput } from '../specs.ts';
import { sizeInput, threadOf } from './screw-specs.ts';

const classes = ['low', 'medium', 'medium, oil tolerant', 'high', 'high, heat resistant', 'wicking'] as const satisfies readonly ThreadlockClass[];
const surfaces = ['steel, brass, bronze', 'aluminium, stainless, zinc, anodised', 'with primer'] as const satisfies readonly CureSurface[];

/** Scatter of the values that makers print as typical. */
const scatter = 0.3;
const room = 295.15;

const temperatureInput = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'K', shown: '°C', above: 0, default: room, example: room }) as const;

const keepAway = [
  'polycarbonate, ABS, acrylic and other plastics that it cracks',
  'nylon insert nuts, which lock by themselves',
  'bearings, one-way clutches and ball links that it would lock',
  'rubber and O-rings, which it swells',
  'skin: wear gloves, it can make you allergic',
] as const;

export const threadlock = defineCalculation({
  id: 'threadlock',
  title: 'Hold of a threadlocker',
  section: 'Joints and fits',
  summary: 'Torque that a bonded thread resists, by class, size and warmth; when it has cured; what it must not touch.',
  inputs: {
    class: { kind: 'choice', title: 'Class of the threadlocker', choices: classes, example: 'medium' },
    size: sizeInput('M3'),
    temperature: temperatureInput('Temperature of the joint in use', 'T'),
    cureTemperature: temperatureInput('Temperature of the parts while it cures', 'T_c'),
    cureTime: { kind: 'number', title: 'Time since it was assembled; cured when not given', symbol: 't', unit: 's', shown: 'h', min: 0, optional: true, example: 86_400 },
    surface: { kind: 'choice', title: 'What it cures on', choices: surfaces, default: 'steel, brass, bronze', example: 'steel, brass, bronze' },
  },
  outputs: {
    breakaway: torqueOutput('Torque that breaks the bond, typical', 'T_B'),
    breakawayLow: torqueOutput('The same, low end', 'T_{B,\\mathrm{low}}'),
    prevailing: torqueOutput('Torque that it still resists half a turn later, typical', 'T_P'),
    sizeShare: numberOutput('Share of the torque of M10', 's_d'),
    heatShare: numberOutput('Share that is left at that temperature', 's_T'),
    cureTimeNeeded: timeOutput('Time until it counts as cured', 't_c'),
    cureShare: numberOutput('Share of that time that has passed', 'c'),
    highestTemperature: { title: 'Highest lasting temperature', symbol: 'T_\\mathrm{max}', unit: 'K', shown: '°C' },
    keepAwayFrom: { title: 'Keep it away from', symbol: 'k', unit: '-', shown: '-', text: true, list: true },
  },
  formulas: [
    { output: 'sizeShare', tex: String.raw`s_d = s(d),\ 1 \text{ at M10, falling as } d^3 \text{ below M6}` },
    { output: 'heatShare', tex: String.raw`s_T = 1 - \frac12\,\frac{T - 22\,°\mathrm{C}}{T_\mathrm{max} - 22\,°\mathrm{C}},\ 1 \text{ below } 22\,°\mathrm{C}` },
    { output: 'breakaway', tex: String.raw`T_B = T_{B,\mathrm{M10}}\,s_d\,s_T` },
    { output: 'breakawayLow', tex: String.raw`T_{B,\mathrm{low}} = 0.7\,T_B` },
    { output: 'prevailing', tex: String.raw`T_P = T_{P,\mathrm{M10}}\,s_d\,s_T` },
    { output: 'cureTimeNeeded', tex: String.raw`t_c = 24\,\mathrm{h}\cdot f\cdot 2^{\max(0,\ 22 - T_c)/10}` },
    { output: 'cureShare', tex: String.raw`c = \min\left(1, \frac{t}{t_c}\right)` },
    { output: 'highestTemperature', tex: String.raw`T_\mathrm{max}` },
    { output: 'keepAwayFrom', tex: String.raw`k` },
  ],
  source: 'Makers’ data sheets after ISO 10964 as a public collection quotes them, M10 of steel, 24 h at 22 °C; warmth from memory; the slowing of the cure: common practice, no source.',
  validity: [
    'Typical values for clean, degreased steel, unseated, nut as high as usual. They scatter by 30 % and more; the maker’s paper goes before them.',
    'Size was measured at M6, M10 and M16 of one class only (3, 26 and 44 N·m), follows no one power, and is taken for all classes; below M6 it is geometry.',
    'Until it has cured it counts as no lock. f = 1 on active metal or with primer, 3 on passive metal without. Below 5 °C it may never cure. Warmth over 22 °C is not counted on.',
    'High strength comes apart with heat only. Never test a cured bond with a wrench: that breaks it.',
  ],
  compute: ({ class: strength, size, temperature, cureTemperature, cureTime, surface }) => {
    const { breakaway, prevailing, most } = threadlocks[strength];
    const sizeShare = threadlockSizeShare(threadOf(size).diameter);
    const heatShare = threadlockHeatShare(temperature, most);
    const needed = threadlockCureTime(cureTemperature, surface);
    const cured = needed !== undefined && (cureTime === undefined || cureTime >= needed);
    const share = heatShare === undefined || !cured ? undefined : sizeShare * heatShare;
    const show = (kelvin: number): string => showQuantity(kelvin, '°C', { significant: 3 });
    return {
      outputs: {
        sizeShare,
        highestTemperature: most,
        keepAwayFrom: keepAway,
        ...(heatShare === undefined ? {} : { heatShare }),
        ...(needed === undefined ? {} : { cureTimeNeeded: needed }),
        ...(needed === undefined || cureTime === undefined ? {} : { cureShare: Math.min(1, cureTime / needed) }),
        ...(share === undefined ? {} : { breakaway: breakaway * share, breakawayLow: (1 - scatter) * breakaway * share, prevailing: prevailing * share }),
      },
      warnings: [
        ...(needed === undefined ? [`cureTimeNeeded, cureShare, breakaway, breakawayLow and prevailing are left out: at ${show(cureTemperature)}, below 5 °C, it may never cure.`] : []),
        ...(cureTime === undefined ? ['cureShare is left out: cureTime is not given, and it is taken as cured.'] : []),
        ...(needed !== undefined && !cured ? ['breakaway, breakawayLow and prevailing are left out: it has not cured, and counts as no lock.'] : []),
        ...(heatShare === undefined ? [`heatShare, breakaway, breakawayLow and prevailing are left out: ${show(temperature)} is over its highest temperature of ${show(most)}.`] : []),
      ],
    };
  },
});
