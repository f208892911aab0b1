export * from './blade-loads.ts';
export * from './blade-mass.ts';
export * from './linear-blade.ts';
