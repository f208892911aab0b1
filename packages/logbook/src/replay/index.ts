export { lastMeasured, type Measured } from './measured.ts';
export { entriesUpTo } from './moments.ts';
export { replay } from './replay.ts';
export { readiness, readinessWords, type Objection, type Readiness } from './readiness.ts';
export { lookProblem } from './second-look.ts';
export type * from './state.ts';
