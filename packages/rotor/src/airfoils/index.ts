export * from './beyond-stall.ts';
export * from './compressibility.ts';
export * from './real-blade.ts';
export * from './section.ts';
export { givenSection, naca0012, naca0015, type GivenTable } from './tables.ts';
