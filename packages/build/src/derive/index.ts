export { stepMaker, type Context, type Draft } from './draft.ts';
export { jointNoun } from './joint-sentences.ts';
export { jointStep } from './joint-step.ts';
export { measureStep } from './measure-step.ts';
export { greaseStep, writtenStep } from './other-steps.ts';
export { isFilledBackwards, stackStep } from './stack-step.ts';
export { stripStep } from './strip-step.ts';
export { undoing, unstacking } from './undoing.ts';
