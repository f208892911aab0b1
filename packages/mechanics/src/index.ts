export * from './balance/index.ts';
export * from './bearings/index.ts';
export * from './drives/index.ts';
export * from './gears/index.ts';
export * from './materials/index.ts';
export { findRoot } from './numeric/roots.ts';
export { cross, dot, rotateAbout, type Vector3 } from './numeric/vector.ts';
export * from './shafts/index.ts';
export * from './fits/index.ts';
