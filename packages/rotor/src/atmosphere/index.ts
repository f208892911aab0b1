export * from './atmosphere.ts';
