import type { Check } from './check.ts';
import { sourced, type Row } from './rows.ts';

const rpm = Math.PI / 30;
const outputs = ['bore', 'outer', 'width', 'dynamicRating', 'staticRating', 'greaseSpeed', 'oilSpeed'] as const;
const factors = [1e-3, 1e-3, 1e-3, 1, 1, rpm, rpm] as const;

/** Designation, then d, D, B in mm, C and C0 in N, speeds with grease and oil in rpm. */
type Printed = readonly [designation: string, ...values: number[]];

const rowsOf = ([designation, ...values]: Printed): readonly Row[] =>
  values.map((value, index) => [designation, 'bearing-size', { designation }, outputs[index]!, value * factors[index]!, 1e-12, 'relative']);

const deepGroove: readonly Printed[] = [
  ['MR85', 5, 8, 2, 310, 120, 53000, 63000], ['MR105', 5, 10, 3, 430, 168, 50000, 60000], ['695', 5, 13, 4, 1080, 430, 43000, 50000], ['625', 5, 16, 5, 1730, 670, 36000, 43000],
  ['MR126', 6, 12, 3, 715, 292, 43000, 50000], ['686A', 6, 13, 3.5, 1080, 440, 40000, 50000], ['626', 6, 19, 6, 2340, 885, 32000, 40000], ['687', 7, 14, 3.5, 1170, 510, 40000, 45000],
  ['MR128', 8, 12, 2.5, 545, 274, 40000, 48000], ['688A', 8, 16, 4, 1610, 710, 36000, 43000], ['608', 8, 22, 7, 3300, 1370, 34000, 40000], ['6800', 10, 19, 5, 1720, 840, 34000, 40000],
  ['6900', 10, 22, 6, 2700, 1270, 32000, 38000], ['6000', 10, 26, 8, 4550, 1970, 30000, 36000], ['MR115 ZZ', 5, 11, 4, 715, 276, 48000], ['685', 5, 11, 3, 715, 281, 45000, 53000],
  ['605', 5, 14, 5, 1330, 505, 40000, 50000], ['MR106', 6, 10, 2.5, 495, 218, 45000, 53000], ['696', 6, 15, 5, 1730, 670, 40000, 45000], ['607', 7, 19, 6, 2340, 885, 36000, 43000],
  ['MR148', 8, 14, 3.5, 820, 385, 38000, 45000], ['698', 8, 19, 6, 2240, 910, 36000, 43000], ['689', 9, 17, 4, 1330, 665, 36000, 43000], ['609', 9, 24, 7, 3350, 1430, 32000, 38000],
  ['6200', 10, 30, 9, 5100, 2390, 24000, 30000], ['6801', 12, 21, 5, 1920, 1040, 32000, 38000], ['6901', 12, 24, 6, 2890, 1460, 30000, 36000],
];

const thrust: readonly Printed[] = [
  ['51100', 10, 24, 9, 10100, 14000, 6700, 10000], ['51101', 12, 26, 9, 10400, 15400, 6700, 10000], ['51102', 15, 28, 9, 10600, 16800, 6300, 9500],
  ['51103', 17, 30, 9, 11400, 19500, 6000, 9000], ['51104', 20, 35, 10, 15100, 26600, 5300, 8000],
];

const first = 'Public catalogue of a bearing maker';
const printed = [
  ...sourced({ document: first, place: 'tables of miniature, thin and usual deep-groove bearings', kind: 'published' }, deepGroove.flatMap(rowsOf)),
  ...sourced({ document: first, place: 'table of thrust ball bearings', kind: 'published' }, thrust.flatMap(rowsOf)),
];

/** Designation, C and C0 in kN, reference and limiting speed in rpm. */
const other = sourced({ document: 'Public catalogue of a second bearing maker', place: 'page 231: the same sizes rated otherwise', kind: 'published' }, (
  [
    ['608', 3.45, 1.37, 75000, 48000], ['618/8', 1.33, 0.57, 90000, 56000], ['619/5', 0.884, 0.34, 110000, 67000],
    ['61800', 1.38, 0.585, 80000, 48000], ['61900', 2.08, 0.85, 75000, 45000], ['6000', 4.75, 1.96, 67000, 40000],
  ] as const
).flatMap(([designation, dynamic, still, reference, limit]): Row[] => {
  const inputs = { designation, catalogue: 'second' };
  return [
    [designation, 'bearing-size', inputs, 'dynamicRating', dynamic * 1e3, 1e-12, 'relative'],
    [designation, 'bearing-size', inputs, 'staticRating', still * 1e3, 1e-12, 'relative'],
    [designation, 'bearing-size', inputs, 'referenceSpeed', reference * rpm, 1e-12, 'relative'],
    [designation, 'bearing-size', inputs, 'limitingSpeed', limit * rpm, 1e-12, 'relative'],
  ];
}));

/** The seller prints C and C0 in kilograms-force. */
const miniature = sourced({ document: 'Public table of a seller of thrust bearings', place: 'ratings unsure, printed in kgf', kind: 'published' }, (
  [
    ['F3-8M', 3, 8, 3.5, 88, 79], ['F4-9M', 4, 9, 4, 94, 118], ['F4-10M', 4, 10, 4, 82, 79], ['F5-10M', 5, 10, 4, 105, 118], ['F5-12M', 5, 12, 4, 93, 105], ['F6-12M', 6, 12, 4.5, 161, 187],
  ] as const
).flatMap(([designation, bore, outer, height, dynamic, still]) => rowsOf([designation, bore, outer, height, dynamic * 9.80665, still * 9.80665])));

/** Sizes and ratings as catalogues print them. */
export const bearingSizeChecks: readonly Check[] = [...printed, ...other, ...miniature];
