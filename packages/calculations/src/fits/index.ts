export { isoFit } from './iso-fit.ts';
export { pressFit } from './press-fit.ts';
export { warmToFit } from './warm-to-fit.ts';
