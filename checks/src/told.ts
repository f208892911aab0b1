import { answer, isCalcProblem } from '@rotorwright/calculations';
import { plain } from './deviation.ts';

/** A number of another answer, on which a check that turns the question round stands. */
export function told(calculation: string, inputs: Readonly<Record<string, unknown>>, output: string): number {
  const answered = answer(calculation, inputs);
  if (isCalcProblem(answered)) throw new RangeError(`${calculation} refuses what a check asks of it`);
  const found = answered.outputs[output];
  const value = found && plain(found);
  if (typeof value !== 'number') throw new RangeError(`${calculation} has no number ${output} for a check`);
  return value;
}
