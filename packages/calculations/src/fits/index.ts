export { fitWhenWarm } from './fit-when-warm.ts';
export { isoFit } from './iso-fit.ts';
export { material } from './material.ts';
export { pressFit } from './press-fit.ts';
export { toleranceStack } from './tolerance-stack.ts';
export { warmToFit } from './warm-to-fit.ts';
