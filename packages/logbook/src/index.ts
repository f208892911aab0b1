export type * from './entry.ts';
export type * from './wire.ts';
