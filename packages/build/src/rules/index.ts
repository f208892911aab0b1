export * from './by-hand.ts';
export * from './cautions.ts';
export * from './durations.ts';
export * from './locks.ts';
export * from './renewals.ts';
export * from './tools.ts';
export * from './touched.ts';
