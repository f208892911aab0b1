export { effectiveVelocity } from './amplitudes.ts';
export type * from './comb.ts';
export { hear, leastSeconds } from './hear.ts';
export type * from './hearing.ts';
export { hearingWords, type ShowSpeed } from './hearing-words.ts';
