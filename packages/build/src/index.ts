export * from './canonical/index.ts';
export * from './changes/index.ts';
export { washerSides, type WasherSides } from './derive/index.ts';
export { fingerprint } from './fingerprint/index.ts';
export * from './needs.ts';
export * from './next-steps.ts';
export { planBuild } from './plan.ts';
export type * from './step.ts';
export { moduleTitle, phraseOf, titleOf } from './words/index.ts';
