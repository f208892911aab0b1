export { changedSteps, replacedParts, type PartChange, type StepChange } from './replaced.ts';
