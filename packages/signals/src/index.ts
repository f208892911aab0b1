export * from './spectrum/index.ts';
