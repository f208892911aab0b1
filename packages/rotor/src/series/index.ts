export * from './short-series.ts';
export { Trail } from './trail.ts';
