import type { LineComb } from '@rotorwright/signals';

/** Made-up machines as the ear meets them. Orders by hand from their tooth counts. */

/** Two-stroke; 14 on 113, 47 on 10, 19 on 18, 17 on 17; two blades each. */
export const twoStroke: LineComb = {
  families: [
    { id: 'blades main', group: 'main', order: 2, harmonics: 14, faint: [1, 3] },
    { id: 'blades tail', group: 'tail', order: 2 * (47 / 10) * (19 / 18), harmonics: 10, faint: [(47 / 10) * (19 / 18)] },
    { id: 'firing', group: 'engine', order: 113 / 14, harmonics: 16, faint: [113 / 28, (3 * 113) / 28] },
    { id: 'mesh main', group: 'mesh', order: 113, harmonics: 1 },
    { id: 'mesh tail', group: 'mesh', order: 47, harmonics: 2 },
    { id: 'mesh bevel', group: 'mesh', order: (47 / 10) * 19, harmonics: 1 },
  ],
  slowest: 8, fastest: 42, slips: ['engine'],
  otherRatios: [
    ...[12, 13, 15, 16].map((teeth) => ({ group: 'engine' as const, factor: 14 / teeth, id: `pinion ${teeth}` })),
    ...[111, 112, 114, 115].map((teeth) => ({ group: 'engine' as const, factor: teeth / 113, id: `main gear ${teeth}`, meshes: { 'mesh main': teeth } })),
    ...[46, 48].map((teeth) => ({ group: 'tail' as const, factor: teeth / 47, id: `tail gear ${teeth}`, meshes: { 'mesh tail': teeth, 'mesh bevel': (teeth / 10) * 19 } })),
    ...[9, 11].map((teeth) => ({ group: 'tail' as const, factor: 10 / teeth, id: `tail spur ${teeth}`, meshes: { 'mesh bevel': (47 / teeth) * 19 } })),
    ...[18, 20].map((teeth) => ({ group: 'tail' as const, factor: teeth / 19, id: `front bevel ${teeth}`, meshes: { 'mesh bevel': 4.7 * teeth } })),
    ...[17, 19].map((teeth) => ({ group: 'tail' as const, factor: 18 / teeth, id: `front bevel driven ${teeth}` })),
  ],
};

/** Electric, belt to the tail; 12 on 109, 66 on 14; five pole pairs. */
export const electric: LineComb = {
  families: [
    { id: 'blades main', group: 'main', order: 2, harmonics: 14, faint: [1, 3] },
    { id: 'blades tail', group: 'tail', order: (2 * 66) / 14, harmonics: 10, faint: [66 / 14] },
    { id: 'motor', group: 'engine', order: 109 / 12, harmonics: 10 },
    { id: 'mesh main', group: 'mesh', order: 109, harmonics: 1 },
    { id: 'belt teeth', group: 'mesh', order: 66, harmonics: 2 },
  ],
  slowest: 9, fastest: 45, slips: ['tail'],
  otherRatios: [
    ...[11, 13, 14].map((teeth) => ({ group: 'engine' as const, factor: 12 / teeth, id: `pinion ${teeth}` })),
    ...[108, 110].map((teeth) => ({ group: 'engine' as const, factor: teeth / 109, id: `main gear ${teeth}`, meshes: { 'mesh main': teeth } })),
    ...[65, 67, 63, 69].map((teeth) => ({ group: 'tail' as const, factor: teeth / 66, id: `tail pulley ${teeth}`, meshes: { 'belt teeth': teeth } })),
    ...[13, 15].map((teeth) => ({ group: 'tail' as const, factor: 14 / teeth, id: `small pulley ${teeth}` })),
  ],
};
