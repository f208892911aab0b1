export { cutSets } from './cut-sets.ts';
export { omissionChance } from './omission.ts';
export { schedule } from './schedule.ts';
export { weibull } from './weibull-fit.ts';
