export type * from './step.ts';
