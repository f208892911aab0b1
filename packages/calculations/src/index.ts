export { cureSlowing } from './joints/cure-slowing.ts';
export { answer, isCalcProblem, isSingle, type AnsweredSingle, type AnsweredValue, type CalcAnswer, type CalcProblem } from './answer.ts';
export type * from './calculation.ts';
export { catalogue } from './catalogue.ts';
export { CalculationError } from './define.ts';
export { describe } from './describe.ts';
export { exampleInputs } from './example-inputs.ts';
export { readInputs, wanted, type InputProblem, type ReadInputs } from './read-inputs.ts';
export { STANDARD_GRAVITY } from '@rotorwright/rotor';
