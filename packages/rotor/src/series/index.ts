export * from './short-series.ts';
