/**
 * Metric screw threads M1 to M39: nominal diameter with its coarse pitch and its fine ones, mm. A diameter without a coarse
 * pitch is a fine thread only.
 *
 * @source ISO 261:1998, table 2 (from memory)
 */
export const metricThreads: readonly { readonly diameter: number; readonly coarse?: number; readonly fine: readonly number[] }[] = [
  { diameter: 1, coarse: 0.25, fine: [0.2] },
  { diameter: 1.1, coarse: 0.25, fine: [0.2] },
  { diameter: 1.2, coarse: 0.25, fine: [0.2] },
  { diameter: 1.4, coarse: 0.3, fine: [0.2] },
  { diameter: 1.6, coarse: 0.35, fine: [0.2] },
  { diameter: 1.8, coarse: 0.35, fine: [0.2] },
  { diameter: 2, coarse: 0.4, fine: [0.25] },
  { diameter: 2.2, coarse: 0.45, fine: [0.25] },
  { diameter: 2.5, coarse: 0.45, fine: [0.35] },
  { diameter: 3, coarse: 0.5, fine: [0.35] },
  { diameter: 3.5, coarse: 0.6, fine: [0.35] },
  { diameter: 4, coarse: 0.7, fine: [0.5] },
  { diameter: 4.5, coarse: 0.75, fine: [0.5] },
  { diameter: 5, coarse: 0.8, fine: [0.5] },
  { diameter: 5.5, fine: [0.5] },
  { diameter: 6, coarse: 1, fine: [0.75] },
  { diameter: 7, coarse: 1, fine: [0.75] },
  { diameter: 8, coarse: 1.25, fine: [1, 0.75] },
  { diameter: 9, coarse: 1.25, fine: [1, 0.75] },
  { diameter: 10, coarse: 1.5, fine: [1.25, 1, 0.75] },
  { diameter: 11, coarse: 1.5, fine: [1, 0.75] },
  { diameter: 12, coarse: 1.75, fine: [1.5, 1.25, 1] },
  { diameter: 14, coarse: 2, fine: [1.5, 1.25, 1] },
  { diameter: 15, fine: [1.5, 1] },
  { diameter: 16, coarse: 2, fine: [1.5, 1] },
  { diameter: 17, fine: [1.5, 1] },
  { diameter: 18, coarse: 2.5, fine: [2, 1.5, 1] },
  { diameter: 20, coarse: 2.5, fine: [2, 1.5, 1] },
  { diameter: 22, coarse: 2.5, fine: [2, 1.5, 1] },
  { diameter: 24, coarse: 3, fine: [2, 1.5, 1] },
  { diameter: 25, fine: [2, 1.5, 1] },
  { diameter: 26, fine: [1.5] },
  { diameter: 27, coarse: 3, fine: [2, 1.5, 1] },
  { diameter: 28, fine: [2, 1.5, 1] },
  { diameter: 30, coarse: 3.5, fine: [3, 2, 1.5, 1] },
  { diameter: 32, fine: [2, 1.5] },
  { diameter: 33, coarse: 3.5, fine: [3, 2, 1.5] },
  { diameter: 35, fine: [1.5] },
  { diameter: 36, coarse: 4, fine: [3, 2, 1.5] },
  { diameter: 38, fine: [1.5] },
  { diameter: 39, coarse: 4, fine: [3, 2, 1.5] },
];

/**
 * Tolerances of a pitch for a screw 6g in a thread 6H, µm: gap of the screw below nominal, tolerance of its major diameter,
 * tolerance of the minor diameter of the nut. The finest pitches have no grade 6; they carry grade 5, or 4.
 *
 * @source ISO 965-1:2013, tables 1, 3 and 5 (from memory)
 */
export const pitchTolerances: Readonly<Record<number, { readonly gap: number; readonly screwMajor: number; readonly nutMinor: number }>> = {
  0.2: { gap: 17, screwMajor: 36, nutMinor: 38 },
  0.25: { gap: 18, screwMajor: 67, nutMinor: 56 },
  0.3: { gap: 18, screwMajor: 75, nutMinor: 85 },
  0.35: { gap: 19, screwMajor: 85, nutMinor: 100 },
  0.4: { gap: 19, screwMajor: 95, nutMinor: 112 },
  0.45: { gap: 20, screwMajor: 100, nutMinor: 125 },
  0.5: { gap: 20, screwMajor: 106, nutMinor: 140 },
  0.6: { gap: 21, screwMajor: 125, nutMinor: 160 },
  0.7: { gap: 22, screwMajor: 140, nutMinor: 180 },
  0.75: { gap: 22, screwMajor: 140, nutMinor: 190 },
  0.8: { gap: 24, screwMajor: 150, nutMinor: 200 },
  1: { gap: 26, screwMajor: 180, nutMinor: 236 },
  1.25: { gap: 28, screwMajor: 212, nutMinor: 265 },
  1.5: { gap: 32, screwMajor: 236, nutMinor: 300 },
  1.75: { gap: 34, screwMajor: 265, nutMinor: 335 },
  2: { gap: 38, screwMajor: 280, nutMinor: 375 },
  2.5: { gap: 42, screwMajor: 335, nutMinor: 450 },
  3: { gap: 48, screwMajor: 375, nutMinor: 500 },
  3.5: { gap: 53, screwMajor: 425, nutMinor: 560 },
  4: { gap: 60, screwMajor: 475, nutMinor: 600 },
};

/**
 * Tolerances of the pitch diameter of a screw 6g and of a thread 6H by pitch, µm, for nominal diameters up to `most` mm.
 *
 * @source ISO 965-1:2013, tables 6 and 7 (from memory); 180 µm for M10 agrees with a published worked example
 */
export const pitchDiameterTolerances: readonly { readonly most: number; readonly screw: Readonly<Record<number, number>>; readonly nut: Readonly<Record<number, number>> }[] = [
  { most: 1.4, screw: { 0.2: 48, 0.25: 53, 0.3: 56 }, nut: { 0.2: 40, 0.25: 56, 0.3: 75 } },
  { most: 2.8, screw: { 0.2: 50, 0.25: 56, 0.35: 63, 0.4: 67, 0.45: 71 }, nut: { 0.2: 42, 0.25: 60, 0.35: 85, 0.4: 90, 0.45: 95 } },
  { most: 5.6, screw: { 0.35: 67, 0.5: 75, 0.6: 85, 0.7: 90, 0.75: 90, 0.8: 95 }, nut: { 0.35: 90, 0.5: 100, 0.6: 112, 0.7: 118, 0.75: 118, 0.8: 125 } },
  { most: 11.2, screw: { 0.75: 100, 1: 112, 1.25: 118, 1.5: 132 }, nut: { 0.75: 132, 1: 150, 1.25: 160, 1.5: 180 } },
  { most: 22.4, screw: { 1: 118, 1.25: 132, 1.5: 140, 1.75: 150, 2: 160, 2.5: 170 }, nut: { 1: 160, 1.25: 180, 1.5: 190, 1.75: 200, 2: 212, 2.5: 224 } },
  { most: 45, screw: { 1: 125, 1.5: 150, 2: 170, 3: 200, 3.5: 212, 4: 224 }, nut: { 1: 170, 1.5: 200, 2: 224, 3: 265, 3.5: 280, 4: 300 } },
];

/**
 * Bearing diameter of the head of a socket cap screw, and the clearance hole that belongs to the size, mm.
 *
 * @source ISO 4762:2004, d_w min; ISO 273:1979, medium (both from memory)
 */
export const capScrews: Readonly<Record<number, { readonly head: number; readonly hole: number }>> = {
  1.6: { head: 2.72, hole: 1.8 },
  2: { head: 3.48, hole: 2.4 },
  2.5: { head: 4.18, hole: 2.9 },
  3: { head: 5.07, hole: 3.4 },
  4: { head: 6.53, hole: 4.5 },
  5: { head: 8.03, hole: 5.5 },
  6: { head: 9.38, hole: 6.6 },
  8: { head: 12.33, hole: 9 },
  10: { head: 15.33, hole: 11 },
  12: { head: 17.23, hole: 13.5 },
  14: { head: 20.17, hole: 15.5 },
  16: { head: 23.17, hole: 17.5 },
  20: { head: 28.87, hole: 22 },
  24: { head: 34.81, hole: 26 },
  30: { head: 43.61, hole: 33 },
  36: { head: 52.54, hole: 39 },
};
