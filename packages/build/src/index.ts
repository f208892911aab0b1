export * from './canonical/index.ts';
export type * from './step.ts';
