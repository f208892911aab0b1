export { frequencyMap, type Crossing, type FrequencyMap } from './crossings.ts';
export { loadCaseTitle, type LoadCase, type LoadCaseId } from './load-cases.ts';
export { HOLDS_FROM, showMargin, type Margin, type MarginWord } from './margin.ts';
export { countMargins, margins, type Margins } from './margins.ts';
export { remedies, remedyWords, type Remedy } from './remedies.ts';
export type { NaturalMode, ShakingOrder } from './vibration.ts';
