export type * from './assembly.ts';
export type * from './balance.ts';
export type * from './controls.ts';
export type * from './drive.ts';
export type * from './machine.ts';
export type * from './place.ts';
