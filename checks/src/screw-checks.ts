import type { Check, Source } from './check.ts';
import { sourced, type Row } from './rows.ts';

const steels = ['8.8', '10.9', '12.9'] as const;

interface Line {
  readonly size: string;
  readonly friction: number;
  readonly seat?: { readonly headDiameter: string; readonly holeDiameter: string };
  /** kN, then N·m, for each class. */
  readonly preloads: readonly number[];
  readonly torques?: readonly number[];
}

const linesOf = (source: Source, tolerance: number, classes: readonly string[], lines: readonly Line[], torqueTolerance = tolerance): readonly Check[] =>
  sourced(source, lines.flatMap(({ size, friction, seat, preloads, torques = [] }) => classes.flatMap((propertyClass, index): Row[] => {
    const inputs = { size, propertyClass, threadFriction: friction, headFriction: friction, ...seat };
    const title = `${size} ${propertyClass}, friction ${friction}`;
    return [
      [title, 'screw-tightening', inputs, 'preload', preloads[index]! * 1e3, tolerance, 'relative'],
      ...(torques[index] === undefined ? [] : [[title, 'screw-tightening', inputs, 'torque', torques[index], torqueTolerance, 'relative'] as const]),
    ];
  })));

const hexagon = { headDiameter: '11.63 mm', holeDiameter: '9 mm' };
const tightening = [
  ...linesOf({ document: 'Public catalogue of a fastener seller', place: 'page 685, table after VDI 2230:2001, 90 % of yield; head of hexagon 13 from memory', kind: 'published' }, 0.004, steels, [
    { size: 'M8x1', friction: 0.1, seat: hexagon, preloads: [20.7, 30.4, 35.6], torques: [22.8, 33.5, 39.2] },
    { size: 'M8x1', friction: 0.14, seat: hexagon, preloads: [19.7, 28.9, 33.9], torques: [29.2, 42.8, 50.1] },
  ]),
  ...linesOf({ document: 'VDI 2230:2003, table A1 (from memory)', place: 'preloads of shank bolts; its torques are those of a hexagon head', kind: 'published' }, 0.013, steels, [
    { size: 'M4', friction: 0.12, preloads: [4.4, 6.5, 7.6] },
    { size: 'M6', friction: 0.12, preloads: [10.2, 14.9, 17.5] },
  ]),
  ...linesOf({ document: 'VDI 2230 formulas worked elsewhere for cap screws of ISO 4762', kind: 'independent route' }, 0.0002, steels, [
    { size: 'M3', friction: 0.08, preloads: [2.6744, 3.9281, 4.5967], torques: [0.9961, 1.4631, 1.7121] },
    { size: 'M3', friction: 0.1, preloads: [2.6118, 3.8361, 4.4891], torques: [1.1641, 1.7097, 2.0007] },
    { size: 'M3', friction: 0.12, preloads: [2.5455, 3.7387, 4.375], torques: [1.3209, 1.94, 2.2703] },
    { size: 'M3', friction: 0.14, preloads: [2.4766, 3.6376, 4.2567], torques: [1.4665, 2.1539, 2.5205] },
    { size: 'M6', friction: 0.08, preloads: [10.6977, 15.7122, 18.3866], torques: [7.7636, 11.4029, 13.3438] },
    { size: 'M6', friction: 0.1, preloads: [10.4473, 15.3445, 17.9563], torques: [9.0617, 13.3094, 15.5749] },
    { size: 'M6', friction: 0.12, preloads: [10.1819, 14.9547, 17.5002], torques: [10.2738, 15.0896, 17.6581] },
    { size: 'M6', friction: 0.14, preloads: [9.9066, 14.5503, 17.0269], torques: [11.3991, 16.7425, 19.5923] },
  ]),
  // The catalogue does not say which head its torques are for, so they are held to 6 %.
  ...linesOf({ document: 'Public catalogue of a fastener seller', place: 'page 686, stainless screws of class 70, 90 % of yield', kind: 'published' }, 0.012, ['A2-70'], [
    { size: 'M3', friction: 0.1, preloads: [1.84], torques: [0.8] },
    { size: 'M3', friction: 0.2, preloads: [1.6], torques: [1.26] },
    { size: 'M3', friction: 0.3, preloads: [1.36], torques: [1.56] },
    { size: 'M5', friction: 0.1, preloads: [5.2], torques: [3.6] },
    { size: 'M5', friction: 0.2, preloads: [4.51], torques: [5.7] },
    { size: 'M5', friction: 0.3, preloads: [3.85], torques: [7] },
    { size: 'M8', friction: 0.1, preloads: [13.4], torques: [15.2] },
    { size: 'M8', friction: 0.2, preloads: [11.6], torques: [24.1] },
    { size: 'M8', friction: 0.3, preloads: [9.9], torques: [30] },
  ], 0.06),
];

const halves = { size: 'M8', propertyClass: '8.8', threadFriction: 0.12, headFriction: 0.12, headDiameter: '13 mm', holeDiameter: '9 mm' };
/** Preload of it: ISO 724 and the yield of 640 MPa; then the wedge of the thread and the ring under the head, written out. */
const wedge = Math.tan(Math.atan(1.25 / (Math.PI * 7.188)) + Math.atan(0.12 / Math.cos(Math.PI / 6)));
const mean = (7.188 + 6.466) / 2;
const pull = (0.9 * 640e6 * Math.PI * (mean * 1e-3) ** 2) / 4 / Math.sqrt(1 + 3 * (((3 / 2) * 7.188 * wedge) / mean) ** 2);
const partsOfTorque = sourced({ document: 'Wedge of the thread F·d₂/2·tan(φ + ρ′), φ = atan(P/πd₂), ρ′ = atan(μ/cos 30°), and ring under the head F·μ·(d_w + d_h)/4', place: 'VDI 2230 rounds them to F(0.16P + 0.58μd₂)', kind: 'independent route' }, [
  ['M8 8.8: the thread’s share', 'screw-tightening', halves, 'threadTorque', (pull * 7.188e-3 * wedge) / 2, 0.01, 'relative'],
  ['M8 8.8: the head’s share', 'screw-tightening', halves, 'headTorque', (pull * 0.12 * 22e-3) / 4, 0.005, 'relative'],
]);

const oiled = { size: 'M3', propertyClass: '12.9', threadFriction: 0.1, headFriction: 0.1, torque: 2.0007 };
const inverse = sourced({ document: 'The same formulas backwards', place: 'torque of the independent table for M3 12.9 at friction 0.1', kind: 'independent route' }, [
  ['M3 12.9 at 2.0007 N·m', 'screw-preload', oiled, 'preload', 4489.1, 0.0003, 'relative'],
  ['M3 12.9, pitch 0.5 mm: 4489.1 N · 0.5 mm/2π', 'screw-preload', oiled, 'looseningTorque', (4489.1 * 0.5e-3) / (2 * Math.PI), 0.0003, 'relative'],
  ['M3 12.9 at 2.0007 N·m uses 90 %', 'screw-preload', oiled, 'utilisation', 0.9, 0.0003, 'relative'],
]);
const scatter = sourced({ document: 'Fastener manual of a space agency, quoted on a public page', place: 'scatter of the preload by torque wrench: 35 % dry, 25 % lubricated', kind: 'published' }, [
  ['dry, low end', 'screw-preload', oiled, 'preloadLow', 0.65 * 4489.1, 0.0003, 'relative'],
  ['lubricated, high end', 'screw-preload', { ...oiled, scatter: '25 %' }, 'preloadHigh', 1.25 * 4489.1, 0.0003, 'relative'],
]);

const tapped = { size: 'M10', engagement: '21.6 mm', propertyClass: '10.9', screwTensileStrength: '1200 MPa', internalShearStrength: '130 MPa', screwMajorDiameter: '9.968 mm', nutPitchDiameter: '9.206 mm' };
const engagement = sourced({ document: 'Engineering handbook chapter, public abstract', place: 'M10 in aluminium: 69.6 kN at 21.6 mm. Its 9.968 mm is the largest 6g screw; the smallest is 9.732 mm', kind: 'published' }, [
  ['M10 of 1200 MPa', 'thread-engagement', tapped, 'boltBreakingForce', 69_600, 0.001, 'relative'],
  ['M10 in 130 MPa over 21.6 mm', 'thread-engagement', tapped, 'strippingForceInternal', 69_600, 0.003, 'relative'],
  ['M10 that holds 69.6 kN under half of it', 'thread-engagement', { ...tapped, load: 34_800 }, 'margin', 2, 0.003, 'relative'],
  ['M10 in 130 MPa over 21.6 mm', 'thread-engagement', tapped, 'holdingForce', 69_600, 0.003, 'relative'],
  ['M10 of 1200 MPa in 130 MPa', 'thread-engagement', tapped, 'engagementNeeded', 21.6e-3, 0.06e-3, 'absolute'],
]);
const nut = { size: 'M10', engagement: '8.4 mm', propertyClass: '8.8', internalShearStrength: '400 MPa' };
const first = sourced({ document: 'Order of strength', kind: 'law' }, [
  ['a steel nut of full height breaks its screw', 'thread-engagement', { ...nut, internalShearStrength: '600 MPa' }, 'critical', 'bolt', 0, 'absolute'],
  ['one turn in plastic strips the plastic', 'thread-engagement', { ...nut, engagement: '1.5 mm', internalShearStrength: '40 MPa' }, 'critical', 'internal', 0, 'absolute'],
  ['one turn in hard steel strips the screw', 'thread-engagement', { ...nut, engagement: '1.5 mm', internalShearStrength: '1500 MPa' }, 'critical', 'external', 0, 'absolute'],
]);

/** M10 × 1.5, minor diameter of the nut 8.376 mm, in mm. */
const shorn = Math.PI * 8.376 * (8.4 / 1.5) * (1.5 / 2 + (9.026 - 8.376) / Math.sqrt(3));
const strips = sourced({ document: 'Shear area of an external thread, FED-STD-H28 (from memory)', place: 'A = π n L D₁(1/2n + (d₂ − D₁)/√3), at basic diameters of ISO 724; 800 MPa · 0.65', kind: 'published' }, [
  ['M10 8.8 over 8.4 mm', 'thread-engagement', { ...nut, screwPitchDiameter: '9.026 mm', nutMinorDiameter: '8.376 mm' }, 'strippingForceExternal', shorn * 800 * 0.65, 0.002, 'relative'],
]);

const dowels = sourced({ document: 'ASME B18.8.5M, hardened dowel pins, public copy', place: 'printed strengths in kN, which 1050 MPa reproduces', kind: 'published' }, (
  [
    [3, 7.4, 14.8], [5, 20.6, 41.2], [6, 29.7, 59.4],
  ] as const
).flatMap(([diameter, single, double]): Row[] => {
  const inputs = { diameter: `${diameter} mm`, shearStrength: '1050 MPa' };
  return [
    [`${diameter} mm in one plane`, 'pin-shear', { ...inputs, planes: 1 }, 'capacity', single * 1e3, 0.006, 'relative'],
    [`${diameter} mm in two planes`, 'pin-shear', { ...inputs, planes: 2 }, 'capacity', double * 1e3, 0.006, 'relative'],
  ];
}));
const cross = { diameter: '2 mm', shearStrength: '1050 MPa', planes: 2, torque: '3 N·m', shaftDiameter: '6 mm' };
const pins = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['2 · 1050 MPa · π/4 · (2 mm)² = 6.597 kN', 'pin-shear', cross, 'capacity', 6597.344572538566, 1e-9, 'relative'],
  ['2 · 3 N·m/6 mm = 1 kN', 'pin-shear', cross, 'shearForce', 1000, 1e-9, 'relative'],
  ['6.597 kN over 1 kN', 'pin-shear', cross, 'margin', 6.597344572538566, 1e-9, 'relative'],
]);

const pound = 4.4482216152605;
const inch = 0.0254;
/** Inch size by its nearest metric one, seating torque in lbf·in, holding power in lbf. */
const setScrews = sourced({ document: 'Public design page, table of cup points', place: 'inch sizes by the nearest metric ones, an order of magnitude; another table, from memory of a textbook, has 2.5 to 3.3 times as much', kind: 'published' }, (
  [
    ['#4', 'M3', 5.2, 50], ['#5', 'M3', 7.7, 75], ['#6', 'M3.5', 10, 100], ['#8', 'M4', 20, 150], ['#10', 'M5', 36, 200], ['1/4', 'M6', 87, 400],
  ] as const
).map(([inchSize, size, torque, hold]): Row => [`${inchSize}, as ${size}`, 'set-screw-hold', { size, seatingTorque: torque * pound * inch, shaftDiameter: '10 mm', count: 1 }, 'axialHold', hold * pound, 0.5, 'relative']));
const setScrewHand = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['2.2 N·m/(0.2 · 4 mm) = 2750 N', 'set-screw-hold', { size: 'M4', seatingTorque: 2.2, shaftDiameter: '6 mm', count: 2 }, 'tipForce', 2750, 1e-9, 'relative'],
  ['2 · 0.12 · 2 · 2750 N = 1320 N', 'set-screw-hold', { size: 'M4', seatingTorque: 2.2, shaftDiameter: '6 mm', count: 2 }, 'axialHold', 1320, 1e-9, 'relative'],
  ['1320 N · 3 mm = 3.96 N·m', 'set-screw-hold', { size: 'M4', seatingTorque: 2.2, shaftDiameter: '6 mm', count: 2 }, 'torsionalHold', 3.96, 1e-9, 'relative'],
]);

const grooveOf = (shaft: number, groove: number) => ({ seatDiameter: `${shaft} mm`, grooveDiameter: `${groove} mm`, shoulder: '5 mm', yieldStrength: '200 MPa', load: 100 });
/** Shaft and groove in mm, load of the groove in kN. */
const circlips = sourced({ document: 'DIN 471 (from memory)', place: 'loads of grooves at a yield strength of 200 MPa, rounded there', kind: 'published' }, (
  [
    [5, 4.8, 0.26], [8, 7.6, 0.81], [10, 9.6, 1.01], [12, 11.5, 1.53], [20, 19, 5.06], [25, 23.9, 7.05],
  ] as const
).map(([shaft, groove, load]): Row => [`shaft of ${shaft} mm`, 'circlip', grooveOf(shaft, groove), 'capacity', load * 1e3, 0.025, 'relative']));
const groove = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['π/4 · (10² − 9.6²) mm² = 1.96π mm²', 'circlip', grooveOf(10, 9.6), 'grooveArea', 1.96e-6 * Math.PI, 1e-9, 'relative'],
  ['1.96π mm² of 200 MPa over 1.2 is 1026.25 N: 10.2625 times 100 N', 'circlip', grooveOf(10, 9.6), 'margin', (1.96 * Math.PI * 200) / 1.2 / 100, 1e-9, 'relative'],
  ['5 mm over a depth of 0.2 mm', 'circlip', grooveOf(10, 9.6), 'shoulderRatio', 25, 1e-9, 'relative'],
]);

/** Screws, pins, set screws and circlips. */
export const screwChecks: readonly Check[] = [...tightening, ...partsOfTorque, ...inverse, ...scatter, ...engagement, ...first, ...strips, ...dowels, ...pins, ...setScrews, ...setScrewHand, ...circlips, ...groove];
