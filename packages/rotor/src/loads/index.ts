export * from './blade-loads.ts';
export * from './blade-mass.ts';
