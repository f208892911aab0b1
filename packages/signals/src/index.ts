export * from './baseline/index.ts';
export * from './recording/index.ts';
export * from './speed/index.ts';
export * from './spectrum/index.ts';
