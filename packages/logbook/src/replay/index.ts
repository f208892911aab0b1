export { entriesUpTo } from './moments.ts';
export { replay } from './replay.ts';
export { lookProblem } from './second-look.ts';
export type * from './state.ts';
