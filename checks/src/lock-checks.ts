import type { Check } from './check.ts';
import { sourced, type Row } from './rows.ts';

const collection = { document: 'Makers’ data sheets after ISO 10964, as a public collection quotes them', kind: 'published' } as const;

/** Class, breakaway and prevailing torque of M10 in N·m, highest temperature in °C. Typical values: held to 30 %. */
const classes = sourced({ ...collection, place: 'M10 of steel, 24 h at 22 °C' }, (
  [
    ['low', 6, 4, 150], ['medium', 12, 5, 150], ['medium, oil tolerant', 26, 24, 150], ['high', 26, 33, 150], ['high, heat resistant', 22, 24, 200], ['wicking', 20, 10, 150],
  ] as const
).flatMap(([name, breakaway, prevailing, most]): Row[] => [
  [name, 'threadlock', { class: name, size: 'M10' }, 'breakaway', breakaway, 0.3, 'relative'],
  [name, 'threadlock', { class: name, size: 'M10' }, 'prevailing', prevailing, 0.3, 'relative'],
  [name, 'threadlock', { class: name, size: 'M10' }, 'highestTemperature', most + 273.15, 1e-9, 'absolute'],
]));

const sizes = sourced({ ...collection, place: 'medium, oil tolerant, by size' }, (
  [['M6', 3], ['M10', 26], ['M16', 44]] as const
).map(([size, breakaway]): Row => [size, 'threadlock', { class: 'medium, oil tolerant', size }, 'breakaway', breakaway, 0.3, 'relative']));

const shares = sourced({ ...collection, place: 'medium, oil tolerant: 3, 26 and 44 N·m at M6, M10 and M16', kind: 'published' }, [
  ['M6', 'threadlock', { class: 'medium', size: 'M6' }, 'sizeShare', 3 / 26, 1e-9, 'relative'],
  ['M16', 'threadlock', { class: 'medium', size: 'M16' }, 'sizeShare', 44 / 26, 1e-9, 'relative'],
]);
const bond = sourced({ document: 'A bond of one shear strength: area times arm grows with the cube of the size', kind: 'law' }, [
  ['M3 holds an eighth of M6', 'threadlock', { class: 'medium', size: 'M3' }, 'sizeShare', 3 / 26 / 8, 1e-9, 'relative'],
]);
const low = sourced({ document: 'Common practice, no source', place: 'makers say their typical values scatter by 30 %', kind: 'common practice' }, [
  ['M10, medium: 12 N·m less 30 %', 'threadlock', { class: 'medium', size: 'M10' }, 'breakawayLow', 8.4, 1e-9, 'relative'],
]);
const keepAway = sourced({ document: 'Several public data sheets', place: 'what anaerobic compounds harm: plastics under stress, elastomers, skin; what they would bond', kind: 'published' }, [
  ['plastics, insert nuts, bearings, rubber, skin', 'threadlock', { class: 'low', size: 'M3' }, 'keepAwayFrom', ['polycarbonate, ABS, acrylic and other plastics that it cracks', 'nylon insert nuts, which lock by themselves', 'bearings, one-way clutches and ball links that it would lock', 'rubber and O-rings, which it swells', 'skin: wear gloves, it can make you allergic'], 0, 'absolute'],
]);

const cure = sourced({ document: 'Several public data sheets', place: 'full cure 24 h at room temperature on steel', kind: 'published' }, [
  ['steel at 22 °C', 'threadlock', { class: 'medium', size: 'M10' }, 'cureTimeNeeded', 24 * 3600, 1e-12, 'relative'],
  ['half of it after 12 h', 'threadlock', { class: 'medium', size: 'M10', cureTime: '12 h' }, 'cureShare', 0.5, 1e-12, 'relative'],
]);
const coldCure = sourced({ document: 'Common practice, no source', place: 'a reaction takes twice as long for every 10 K below', kind: 'common practice' }, [
  ['steel at 12 °C', 'threadlock', { class: 'medium', size: 'M10', cureTemperature: '12 °C' }, 'cureTimeNeeded', 48 * 3600, 1e-9, 'relative'],
  ['a half left at the highest temperature', 'threadlock', { class: 'medium', size: 'M10', temperature: '150 °C' }, 'heatShare', 0.5, 1e-9, 'relative'],
]);

/** Size, then N·m: first on at most, first off at least, fifth off at least. */
const nuts = sourced({ document: 'ISO 2320, property class 04, public transcription', kind: 'published' }, (
  [
    ['M3', 0.43, 0.12, 0.08], ['M4', 0.9, 0.18, 0.12], ['M5', 1.6, 0.29, 0.2], ['M6', 3, 0.45, 0.3], ['M7', 4.5, 0.65, 0.45], ['M8', 6, 0.85, 0.6], ['M10', 10.5, 1.5, 1], ['M12', 15.5, 2.3, 1.6],
  ] as const
).flatMap(([size, on, first, fifth]): Row[] => [
  [size, 'insert-nut', { size }, 'firstOnMost', on, 1e-12, 'relative'],
  [size, 'insert-nut', { size }, 'firstOffLeast', first, 1e-12, 'relative'],
  [size, 'insert-nut', { size }, 'fifthOffLeast', fifth, 1e-12, 'relative'],
  [`${size}, the first time`, 'insert-nut', { size, removal: 1 }, 'torqueWanted', first, 1e-12, 'relative'],
  [`${size}, the fifth time`, 'insert-nut', { size }, 'torqueWanted', fifth, 1e-12, 'relative'],
]));
const verdicts = sourced({ document: 'ISO 2320, property class 04, public transcription; −50 to 120 °C with an insert that is no metal', kind: 'published' }, [
  ['M3 that turns off at 0.07 N·m', 'insert-nut', { size: 'M3', torqueOff: 0.07 }, 'verdict', 'discard', 0, 'absolute'],
  ['M3 that turns off at 0.1 N·m the third time', 'insert-nut', { size: 'M3', removal: 3, torqueOff: 0.1 }, 'verdict', 'keep', 0, 'absolute'],
  ['nylon that has seen 130 °C', 'insert-nut', { size: 'M3', torqueOff: 0.1, temperature: '130 °C' }, 'verdict', 'discard', 0, 'absolute'],
  ['metal that has seen 130 °C', 'insert-nut', { size: 'M3', torqueOff: 0.1, temperature: '130 °C', insert: 'metal' }, 'verdict', 'keep', 0, 'absolute'],
]);

/** What keeps a thread from turning. */
export const lockChecks: readonly Check[] = [...classes, ...sizes, ...shares, ...bond, ...low, ...keepAway, ...cure, ...coldCure, ...nuts, ...verdicts];
