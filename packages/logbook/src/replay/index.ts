export { entriesUpTo } from './moments.ts';
export { replay } from './replay.ts';
export type * from './state.ts';
