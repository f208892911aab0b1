export * from './recording/index.ts';
export * from './spectrum/index.ts';
