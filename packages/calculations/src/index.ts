export type * from './calculation.ts';
