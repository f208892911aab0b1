export * from './fault-trees/index.ts';
