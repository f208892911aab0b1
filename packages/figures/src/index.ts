export type * from './figure.ts';
