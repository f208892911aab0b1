export { effectiveVelocity } from './amplitudes.ts';
export type * from './comb.ts';
export { hearAll } from './hear-all.ts';
export { hear, leastSeconds } from './hear.ts';
export type * from './hearing.ts';
export { hearingWords, type ShowSpeed } from './hearing-words.ts';
export { waterfall, type Waterfall } from './waterfall.ts';
