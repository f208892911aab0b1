export * from './home/index.ts';
export * from './machine-text.ts';
export * from './serve.ts';
