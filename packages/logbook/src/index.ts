export { canonicalJson } from '@rotorwright/build';
export * from './chain/index.ts';
export * from './check/index.ts';
export * from './counting/index.ts';
export type * from './entry.ts';
export * from './hearing/index.ts';
export * from './replay/index.ts';
export * from './trials/index.ts';
export type * from './wire.ts';
