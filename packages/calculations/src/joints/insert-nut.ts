import { insertNutHeat, insertNuts, leastTorqueOff, type InsertNutSize } from '@rotorwright/mechanics';
import { showQuantity } from '@rotorwright/units';
import { defineCalculation } from '../define.ts';
import { textOutput, torqueInput, torqueOutput } from '../specs.ts';

const sizes = ['M3', 'M4', 'M5', 'M6', 'M7', 'M8', 'M10', 'M12'] as const satisfies readonly InsertNutSize[];

export const insertNut = defineCalculation({
  id: 'insert-nut',
  title: 'May this locking nut be used again?',
  section: 'Joints and fits',
  summary: 'What torque a nut with a locking insert must still show when it is screwed off, and when it goes into the bin.',
  inputs: {
    size: { kind: 'choice', title: 'Size', choices: sizes, example: 'M3' },
    removal: { kind: 'number', title: 'Which time it comes off', symbol: 'n', unit: '-', shown: '-', whole: true, min: 1, max: 1000, default: 5, example: 2 },
    torqueOff: { ...torqueInput('Torque felt while it comes off, unloaded', 'T', 0.1), optional: true },
    insert: { kind: 'choice', title: 'What locks it', choices: ['nylon', 'metal'], default: 'nylon', example: 'nylon' },
    temperature: { kind: 'number', title: 'Highest temperature it has seen', symbol: 'T', unit: 'K', shown: '°C', above: 0, default: 293.15, example: 293.15 },
  },
  outputs: {
    firstOnMost: torqueOutput('Screwed on the first time: at most', 'T_1'),
    firstOffLeast: torqueOutput('Screwed off the first time: at least', 'T_2'),
    fifthOffLeast: torqueOutput('Screwed off the fifth time: at least', 'T_3'),
    torqueWanted: torqueOutput('Screwed off this time: at least', 'T_\\mathrm{min}'),
    verdict: textOutput('What to do with it: keep, discard, or measure', 'v'),
  },
  formulas: [
    { output: 'firstOnMost', tex: String.raw`T_1` },
    { output: 'firstOffLeast', tex: String.raw`T_2` },
    { output: 'fifthOffLeast', tex: String.raw`T_3` },
    { output: 'torqueWanted', tex: String.raw`T_\mathrm{min} = T_2 \text{ the first time, else } T_3` },
    { output: 'verdict', tex: String.raw`v = \text{keep while } T \ge T_\mathrm{min} \text{ and } n \le 5` },
  ],
  source: 'ISO 2320, property class 04, as a public transcription has it; −50 to 120 °C with an insert that is no metal, to 150 °C in metal.',
  validity: [
    'Coarse threads, dry, without threadlocker. The edition of 2015 moved M3 and M4 to an annex: hold the figures against the standard.',
    'No such nut on a part that turns, unless the ring it clamps cannot turn; none on a joint that is undone before each flight; a fibre or nylon insert not over 121 °C (FAA AC 43.13-1B, chapter 7).',
    'When in doubt throw it away: a nut costs less than a machine.',
  ],
  compute: ({ size, removal, torqueOff, insert, temperature }) => {
    const { firstOnMost, firstOffLeast, fifthOffLeast } = insertNuts[size];
    const torqueWanted = leastTorqueOff(size, removal);
    const most = insertNutHeat[insert];
    const faults = [
      ...(torqueWanted === undefined ? [`It has come off ${removal} times: the standard has it tested five times, no more.`] : []),
      ...(torqueWanted !== undefined && torqueOff !== undefined && torqueOff < torqueWanted ? [`It turns off at ${showQuantity(torqueOff, 'N·m', { significant: 3 })}, less than ${torqueWanted} N·m.`] : []),
      ...(temperature > most ? [`${showQuantity(temperature, '°C', { significant: 3 })} is over the ${showQuantity(most, '°C', { significant: 3 })} that it stands.`] : []),
    ];
    return {
      outputs: { firstOnMost, firstOffLeast, fifthOffLeast, ...(torqueWanted === undefined ? {} : { torqueWanted }), verdict: faults.length > 0 ? 'discard' : torqueOff === undefined ? 'measure' : 'keep' },
      warnings: [...(torqueWanted === undefined ? ['torqueWanted is left out: there is none after the fifth time.'] : []), ...faults],
    };
  },
});
