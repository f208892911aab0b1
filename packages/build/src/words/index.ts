export * from './quantities.ts';
export * from './sentence.ts';
export * from './titles.ts';
