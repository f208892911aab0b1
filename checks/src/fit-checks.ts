import type { Check } from './check.ts';
import { sourced, type Row } from './rows.ts';

const micro = 1e-6;

/** One limit of size is held through the fit that the code makes with H7 or h6. */
type Limits = readonly [size: number, code: string, lower: number, upper: number];
const limitRows = ([size, code, lower, upper]: Limits): readonly Row[] => {
  const part = code === code.toLowerCase() ? 'shaft' : 'hole';
  const inputs = { nominal: `${size} mm`, hole: 'H7', shaft: 'h6', [part]: code };
  return ([['Min', lower], ['Max', upper]] as const).map(([end, micrometres]): Row => [`${size} mm ${code}`, 'iso-fit', inputs, `${part}${end}`, size * 1e-3 + micrometres * micro, 1e-12, 'absolute']);
};

const catalogue = { document: 'Public catalogue of a bearing maker', kind: 'published' } as const;

/** Nominal size in mm, code, lower and upper deviation in µm. */
const limits = sourced({ ...catalogue, place: 'appendix tables 9 and 10, tolerances of shafts and holes; N7 of 6 to 10 mm from the table of a second one' }, (
  [
    [5, 'h6', -8, 0], [5, 'k6', 1, 9], [5, 'n6', 8, 16],
    [8, 'g6', -14, -5], [8, 'h6', -9, 0], [8, 'j6', -2, 7], [8, 'k6', 1, 10], [8, 'm6', 6, 15], [8, 'n6', 10, 19], [8, 'p6', 15, 24], [8, 'H7', 0, 15], [8, 'N7', -19, -4],
    [13, 'g6', -17, -6], [13, 'j6', -3, 8], [13, 'm6', 7, 18], [13, 'p6', 18, 29], [13, 'H7', 0, 18], [13, 'N7', -23, -5], [13, 'K7', -12, 6], [13, 'M7', -18, 0], [13, 'P7', -29, -11], [13, 'J7', -8, 10],
    [22, 'h6', -13, 0], [22, 'k6', 2, 15], [22, 'n6', 15, 28], [22, 'M7', -21, 0], [22, 'P7', -35, -14], [22, 'J7', -9, 12],
  ] as const
).flatMap(limitRows));

/** Nominal size in mm, then IT5 to IT8 in µm: the smallest hole H is the nominal size, the largest lies one tolerance above. */
const grades = sourced({ ...catalogue, place: 'appendix table 11, standard tolerances' }, (
  [
    [5, 5, 8, 12, 18],
    [13, 8, 11, 18, 27],
    [22, 9, 13, 21, 33],
  ] as const
).flatMap(([size, ...tolerances]) => tolerances.map((tolerance, index): Row => [`IT${index + 5} at ${size} mm`, 'iso-fit', { nominal: `${size} mm`, hole: `H${index + 5}`, shaft: 'h6' }, 'holeMax', size * 1e-3 + tolerance * micro, 1e-12, 'absolute'])));

/** Cases of the standard that a rule gets wrong that knows the usual ones only. */
const exceptions = sourced({ document: 'ISO 286-2:2010 (from memory)', place: 'tables of limit deviations', kind: 'published' }, (
  [
    [2, 'K7', -10, 0], [2, 'M7', -12, -2], [2, 'N7', -14, -4], [2, 'P7', -16, -6], [2, 'JS7', -5, 5], [2, 'N9', -29, -4], [2, 'k6', 0, 6], [2, 'j7', -4, 6],
    [5, 'K6', -6, 2], [5, 'K8', -13, 5], [5, 'M8', -16, 2], [5, 'N9', -30, 0], [5, 'P9', -42, -12], [5, 'JS9', -15, 15],
    [10, 'E8', 25, 47], [10, 'F7', 13, 28], [10, 'f7', -28, -13], [10, 'd9', -76, -40], [10, 'k8', 0, 22], [10, 'R7', -28, -13], [10, 'S7', -32, -17],
    [30, 'K6', -11, 2], [30, 'N6', -24, -11], [30, 'M6', -17, -4], [30, 'P6', -31, -18], [30, 't6', 41, 54], [30, 'u6', 48, 61], [30, 'js6', -6.5, 6.5],
    [50, 'H11', 0, 160], [50, 'N8', -42, -3], [50, 'P8', -65, -26], [50, 'm5', 9, 20],
    [65, 'r6', 41, 60], [66, 'r6', 43, 62], [80, 'S7', -78, -48], [100, 'K7', -25, 10], [100, 'M6', -28, -6], [120, 'x6', 210, 232], [120, 'zc7', 690, 725],
  ] as const
).flatMap(limitRows));

/** Nominal size in mm, the fit, least and most clearance in µm: interference is negative. */
const clearances = sourced({ document: 'Handbook table of preferred fits, hole basis (from memory)', place: 'sums of the tabled limits', kind: 'published' }, (
  [
    [8, 'H7', 'g6', 5, 29], [22, 'H7', 'h6', 0, 34], [22, 'H7', 'k6', -15, 19], [22, 'H7', 'n6', -28, 6], [22, 'H7', 'p6', -35, -1], [30, 'H8', 'f7', 20, 74], [10, 'H9', 'd9', 40, 112],
  ] as const
).flatMap(([size, hole, shaft, least, most]): Row[] => {
  const inputs = { nominal: `${size} mm`, hole, shaft };
  return [
    [`${size} mm ${hole}/${shaft}`, 'iso-fit', inputs, 'clearanceMin', least * micro, 1e-12, 'absolute'],
    [`${size} mm ${hole}/${shaft}`, 'iso-fit', inputs, 'clearanceMax', most * micro, 1e-12, 'absolute'],
    [`${size} mm ${hole}/${shaft}: the least clearance, taken the other way`, 'iso-fit', inputs, 'interferenceMax', -least * micro, 1e-12, 'absolute'],
  ];
}));

const bearing = { youngsModulus: '208 GPa', poissonsRatio: 0.3 };
const aluminium = { youngsModulus: '71.7 GPa', poissonsRatio: 0.33 };
const lame = sourced({ document: 'Lamé’s formula for two materials, worked elsewhere', kind: 'independent route' }, [
  ['steel taken as solid in aluminium, 22 in 32 mm, 15 µm', 'press-fit', { nominal: '22 mm', interference: '15 µm', hubOuter: '32 mm', length: '7 mm', shaftMaterial: bearing, hubMaterial: aluminium }, 'pressure', 14.53268504811491e6, 1e-9, 'relative'],
]);

const warm = { nominal: '22 mm', interference: '15 µm', outerMaterial: 'aluminium 7075', innerMaterial: 'bearing steel', temperature: '80 °C' };
const hand = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['(23.4 − 12.5)·10⁻⁶/K · 22 mm · 60 K = 14.39 µm', 'fit-when-warm', warm, 'interferenceLost', 14.387999999999998e-6, 1e-9, 'relative'],
  ['15 − 14.388 = 0.612 µm', 'fit-when-warm', warm, 'interferenceThen', 0.612e-6, 1e-9, 'relative'],
  ['20 °C + 15 µm/(10.9·10⁻⁶/K · 22 mm) = 20 °C + 62.55 K', 'fit-when-warm', warm, 'looseAt', 293.15 + 15 / (10.9 * 0.022), 1e-9, 'relative'],
]);

/** Material, expansion in 10⁻⁶/K. */
const expansions = sourced({ document: 'Callister, Materials Science and Engineering', place: 'appendix B, table B.6', kind: 'published' }, (
  [
    ['aluminium 6061', 23.6], ['aluminium 7075', 23.4], ['steel', 11.7], ['hardened steel', 12.3], ['stainless steel', 17.2], ['titanium', 8.6],
    ['carbon along the fibre', -0.5], ['carbon across the fibre', 32],
  ] as const
).map(([name, expansion]): Row => [name, 'material', { name }, 'expansion', expansion * micro, 0.03, 'relative']));

const bearingSteels = sourced({ ...catalogue, place: 'appendix table 8; Callister has 10.2·10⁻⁶/K for the stainless one' }, (
  [
    ['bearing steel', 12.5, 208, 7830],
    ['stainless bearing steel', 10.1, 200, 7680],
  ] as const
).flatMap(([name, expansion, modulus, density]): Row[] => [
  [name, 'material', { name }, 'expansion', expansion * micro, 0.01, 'relative'],
  [name, 'material', { name }, 'youngsModulus', modulus * 1e9, 0.01, 'relative'],
  [name, 'material', { name }, 'density', density, 0.01, 'relative'],
]));

/** A value without its document is worth nothing: the three of the catalogue name it, and what follows from others says from which. */
const documents = sourced({ ...catalogue, place: 'appendix table 8: density, Young’s modulus and expansion of bearing steel; ν of Callister; G follows from E and ν' }, [
  ['bearing steel, each value with its document', 'material', { name: 'bearing steel' }, 'sources', [
    'density: public catalogue of a bearing maker, appendix table 8',
    'youngsModulus: public catalogue of a bearing maker, appendix table 8',
    'shearModulus: isotropy: G = E/(2(1 + ν))',
    'poissonsRatio: Callister, Materials Science and Engineering, appendix B, tables B.1 to B.3 (from memory)',
    'expansion: public catalogue of a bearing maker, appendix table 8',
  ], 0, 'absolute'],
]);

/** G in GPa, ν: measured, where ours follows from E and ν. */
const shears = sourced({ document: 'Shear moduli as handbooks print them (from memory)', kind: 'published' }, (
  [
    ['steel', 80, 0.3], ['stainless steel', 77, 0.3], ['aluminium 7075', 26.9, 0.33], ['aluminium 6061', 26, 0.33], ['titanium', 44, 0.34], ['brass', 40, 0.35],
  ] as const
).flatMap(([name, shearModulus, poissonsRatio]): Row[] => [
  [name, 'material', { name }, 'shearModulus', shearModulus * 1e9, 0.045, 'relative'],
  [name, 'material', { name }, 'poissonsRatio', poissonsRatio, 0.02, 'absolute'],
]));
const damp = sourced({ document: 'Data sheets of plastics (from memory)', place: 'POM grows 0.2 %, PA 66 2.5 to 3 % from dry to soaked; shear strengths of ASTM D732', kind: 'published' }, [
  ['POM', 'material', { name: 'POM' }, 'swell', 0.002, 0.001, 'absolute'],
  ['PA 66', 'material', { name: 'PA 66' }, 'swell', 0.0275, 0.003, 'absolute'],
  ['POM', 'material', { name: 'POM' }, 'shearStrength', 55e6, 0.2, 'relative'],
]);
const alloys = sourced({ document: 'ASM Handbook, volume 2, data sheets of the alloys (from memory)', place: '7075-T6 331 MPa, 6061-T6 207 MPa', kind: 'published' }, [
  ['aluminium 7075', 'material', { name: 'aluminium 7075' }, 'shearStrength', 331e6, 1e-9, 'relative'],
  ['aluminium 6061', 'material', { name: 'aluminium 6061' }, 'shearStrength', 207e6, 1e-9, 'relative'],
]);

const heated = { nominal: '22 mm', interference: '15 µm', clearanceWanted: '5 µm', housingMaterial: 'aluminium 7075' };
const rise = 20 / (23.4 * 0.022);
const heating = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['20 °C and 20 µm/(23.4·10⁻⁶/K · 22 mm) = 38.85 K', 'warm-to-fit', heated, 'housingTemperature', 293.15 + rise, 1e-9, 'relative'],
  ['58.85 °C passes no limit', 'warm-to-fit', heated, 'limitsPassed', 0, 0, 'absolute'],
  ['from a room of 50 °C it is 88.85 °C: seal and grease, 80 °C each', 'warm-to-fit', { ...heated, roomTemperature: '50 °C' }, 'limitsPassed', 2, 0, 'absolute'],
  ['80 °C less 58.85 °C', 'warm-to-fit', heated, 'margin', 60 - rise, 1e-9, 'relative'],
]);

/** Fits, and what warmth does to them. */
export const fitChecks: readonly Check[] = [...limits, ...grades, ...exceptions, ...clearances, ...lame, ...hand, ...heating, ...expansions, ...bearingSteels, ...documents, ...shears, ...damp, ...alloys];
