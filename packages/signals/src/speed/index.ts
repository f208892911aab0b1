export type * from './comb.ts';
export { hear, leastSeconds } from './hear.ts';
export type * from './hearing.ts';
export { hearingWords, type HearingFormat } from './hearing-words.ts';
