export { isoFit, limitDeviations, type Deviations, type Fit } from './iso-fit.ts';
export { pressFit, type Elastic, type PressFit, type PressFitInput } from './press-fit.ts';
export { interferenceLost, warmingToFit } from './warm-to-fit.ts';
