export { normalQuantile } from './normal-quantile.ts';
export { weibullFit, type WeibullFit } from './weibull-fit.ts';
