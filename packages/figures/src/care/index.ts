export { careAt, careOf, type Care } from './care.ts';
export type { BearingCare } from './bearings.ts';
export type { MeshCare } from './meshes.ts';
export { bearingWords, careNotes, careWants, meshWords } from './words.ts';
