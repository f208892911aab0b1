export * from './forward-flight.ts';
export { TrimSolver } from './trim.ts';
export type * from './model.ts';
export { inflowUnevenness } from './unevenness.ts';
