export { omissionChance } from './omission.ts';
export { weibull } from './weibull-fit.ts';
