export * from './momentum.ts';
