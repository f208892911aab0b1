import type { Check } from './check.ts';
import { sourced, type Row } from './rows.ts';

/** d2, d3, D1 in mm of ISO 724, then the stress area in mm² with half its last printed digit. */
const printed = (
  [
    ['M1.6', 1.373, 1.171, 1.221, 1.27, 0.006], ['M2.5', 2.208, 1.948, 2.013, 3.39, 0.006], ['M3', 2.675, 2.387, 2.459, 5.03, 0.006],
    // oxlint-disable-next-line approx-constant -- a diameter
    ['M4', 3.545, 3.141, 3.242, 8.78, 0.006], ['M6', 5.35, 4.773, 4.917, 20.1, 0.06], ['M8', 7.188, 6.466, 6.647, 36.6, 0.06],
  ] as const
);
const diameters = sourced({ document: 'ISO 724 (diameters, from memory); ISO 898-1 (stress areas, public tables from M3 up)', kind: 'published' }, printed.flatMap(([size, pitch, minor, nut, area, tolerance]): Row[] => [
  [size, 'thread', { size }, 'pitchDiameter', pitch * 1e-3, 0.6e-6, 'absolute'],
  [size, 'thread', { size }, 'minorDiameter', minor * 1e-3, 0.6e-6, 'absolute'],
  [size, 'thread', { size }, 'nutMinorDiameter', nut * 1e-3, 0.6e-6, 'absolute'],
  [size, 'thread', { size }, 'stressArea', area * 1e-6, tolerance * 1e-6, 'absolute'],
]));

/** Stress areas in mm², as printed: three figures. */
const areas = sourced({ document: 'ISO 898-1:2013, tables 4 to 7 (from memory)', kind: 'published' }, (
  [
    ['M5', 14.2], ['M7', 28.9], ['M10', 58], ['M12', 84.3], ['M14', 115], ['M16', 157], ['M20', 245], ['M24', 353], ['M30', 561], ['M36', 817], ['M39', 976],
    ['M8x1', 39.2], ['M10x1.25', 61.2], ['M12x1.25', 92.1], ['M16x1.5', 167], ['M20x1.5', 272], ['M24x2', 384],
  ] as const
).map(([size, area]): Row => [size, 'thread', { size }, 'stressArea', area * 1e-6, 0.006, 'relative']));

/** Diameter and pitch in mm: what the size says, and the coarse pitch where it says none. */
const pitches = sourced({ document: 'ISO 261 and ISO 262 (from memory)', place: 'coarse pitches; a fine one stands in the size', kind: 'published' }, (
  [
    ['M1.6', 1.6, 0.35], ['M2', 2, 0.4], ['M2.5', 2.5, 0.45], ['M3', 3, 0.5], ['M3.5', 3.5, 0.6], ['M4', 4, 0.7], ['M5', 5, 0.8], ['M6', 6, 1], ['M8', 8, 1.25], ['M10', 10, 1.5], ['M12', 12, 1.75], ['M16', 16, 2],
    ['M4x0.5', 4, 0.5], ['M8x1', 8, 1],
  ] as const
).flatMap(([size, diameter, pitch]): Row[] => [
  [size, 'thread', { size }, 'diameter', diameter * 1e-3, 1e-12, 'absolute'],
  [size, 'thread', { size }, 'pitch', pitch * 1e-3, 1e-12, 'absolute'],
]));

/** Tap drill in mm. */
const drills = sourced({ document: 'ISO 2306:1972 (from memory)', place: 'drills for use before tapping', kind: 'published' }, (
  [
    ['M2', 1.6], ['M2.5', 2.05], ['M3', 2.5], ['M4', 3.3], ['M4x0.5', 3.5], ['M4.5', 3.7], ['M5', 4.2], ['M6', 5], ['M6x0.75', 5.2], ['M8', 6.8], ['M8x1', 7], ['M10', 8.5], ['M10x1.25', 8.8], ['M12', 10.2], ['M16', 14], ['M20', 17.5],
  ] as const
).map(([size, drill]): Row => [size, 'thread', { size }, 'tapDrill', drill * 1e-3, 1e-9, 'absolute']));

// Loads are printed to three figures, from stress areas of three figures: half a figure of each.
const ofThreeFigures = 0.0075;
const strength = sourced({ document: 'Two public tables after ISO 898-1, proof and breaking loads, coarse thread', kind: 'published' }, (
  [
    ['M3', [2920, 4180, 4880], [4020, 5230, 6140]],
    ['M5', [8230, 11_800, 13_800], [11_350, 14_800, 17_300]],
    ['M6', [11_600, 16_700, 19_500], [16_100, 20_900, 24_500]],
  ] as const
).flatMap(([size, proof, breaking]) => ['8.8', '10.9', '12.9'].flatMap((propertyClass, index): Row[] => [
  [`${size} ${propertyClass}`, 'screw-strength', { size, propertyClass }, 'proofForce', proof[index]!, ofThreeFigures, 'relative'],
  [`${size} ${propertyClass}`, 'screw-strength', { size, propertyClass }, 'breakingForce', breaking[index]!, ofThreeFigures, 'relative'],
])));

/** MPa: tensile strength, yield strength, proof stress (up to M16). */
const classes = sourced({ document: 'ISO 898-1:2013, table 3 (from memory)', kind: 'published' }, (
  [
    ['8.8', 800, 640, 580], ['10.9', 1040, 940, 830], ['12.9', 1220, 1100, 970],
  ] as const
).flatMap(([propertyClass, tensile, yields, proof]): Row[] => [
  [propertyClass, 'screw-strength', { size: 'M4', propertyClass }, 'tensileStrength', tensile * 1e6, 1e-12, 'relative'],
  [propertyClass, 'screw-strength', { size: 'M4', propertyClass }, 'yieldStrength', yields * 1e6, 1e-12, 'relative'],
  [propertyClass, 'screw-strength', { size: 'M4', propertyClass }, 'proofStress', proof * 1e6, 1e-12, 'relative'],
]));
const stainless = sourced({ document: 'ISO 3506-1:2009, table 2 (from memory)', kind: 'published' }, (
  [
    ['A2-50', 500, 210], ['A2-70', 700, 450], ['A4-80', 800, 600],
  ] as const
).flatMap(([propertyClass, tensile, yields]): Row[] => [
  [propertyClass, 'screw-strength', { size: 'M4', propertyClass }, 'tensileStrength', tensile * 1e6, 1e-12, 'relative'],
  [propertyClass, 'screw-strength', { size: 'M4', propertyClass }, 'yieldStrength', yields * 1e6, 1e-12, 'relative'],
]));
const shear = sourced({ document: 'VDI 2230-1:2003, table 6 (from memory)', place: 'shear strength over tensile strength', kind: 'published' }, (
  [['4.6', 0.7], ['8.8', 0.65], ['10.9', 0.62], ['12.9', 0.6]] as const
).map(([propertyClass, ratio]): Row => [propertyClass, 'screw-strength', { size: 'M4', propertyClass }, 'shearRatio', ratio, 1e-12, 'relative']));
const yielding = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['M4 8.8: 640 MPa on 8.78 mm² = 5.62 kN', 'screw-strength', { size: 'M4', propertyClass: '8.8' }, 'yieldForce', 5620, 0.001, 'relative'],
]);

/** Threads, and the screws that have them. */
export const threadChecks: readonly Check[] = [...diameters, ...areas, ...pitches, ...drills, ...strength, ...classes, ...stainless, ...shear, ...yielding];
