import { inverseInvolute, involute as involuteOf } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput, degrees, numberOutput } from '../specs.ts';
import { gearStandard } from './gear-specs.ts';

export const involute = defineCalculation({
  id: 'involute',
  title: 'Involute function',
  section: 'Gears',
  summary: 'The involute of an angle.',
  inputs: { angle: { kind: 'number', title: 'Angle', symbol: '\\alpha', unit: 'rad', shown: '°', min: degrees(-89.9), max: degrees(89.9), example: degrees(20) } },
  outputs: { involute: numberOutput('Involute', '\\mathrm{inv}\\,\\alpha') },
  formulas: [{ output: 'involute', tex: String.raw`\mathrm{inv}\,\alpha = \tan\alpha - \alpha` }],
  source: `Definition; ${gearStandard}.`,
  validity: ['From −89.9° to 89.9°.'],
  compute: ({ angle }) => ({ outputs: { involute: involuteOf(angle) }, warnings: [] }),
});

export const involuteInverse = defineCalculation({
  id: 'involute-inverse',
  title: 'Angle of an involute',
  section: 'Gears',
  summary: 'The angle whose involute is given.',
  inputs: { involute: { kind: 'number', title: 'Involute', symbol: '\\mathrm{inv}\\,\\alpha', unit: '-', shown: '-', example: 0.0149 } },
  outputs: { angle: angleOutput('Angle', '\\alpha') },
  formulas: [{ output: 'angle', tex: String.raw`\tan\alpha - \alpha = \mathrm{inv}\,\alpha` }],
  source: `Definition; ${gearStandard}. Solved with Newton’s method to the last digit.`,
  validity: ['Any number; the angle lies between −90° and 90°.'],
  compute: ({ involute: value }) => ({ outputs: { angle: inverseInvolute(value) }, warnings: [] }),
});
