export * from './home/index.ts';
export * from './serve.ts';
