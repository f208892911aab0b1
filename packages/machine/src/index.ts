export type * from './findings/finding.ts';
export type * from './model/index.ts';
