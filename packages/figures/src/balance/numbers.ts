import type { CalcAnswer } from '@rotorwright/calculations';
import { isProblem, readQuantity } from '@rotorwright/units';

/** A number of the inputs in SI, as it was typed; 0 for none. */
export function inputOf(inputs: Readonly<Record<string, unknown>>, name: string): number {
  const given = name.split('.').reduce<unknown>((found, key) => (typeof found === 'object' && found !== null ? (found as Record<string, unknown>)[key] : undefined), inputs);
  if (typeof given === 'number') return given;
  const read = typeof given === 'string' ? readQuantity(given) : undefined;
  return read === undefined || isProblem(read) ? 0 : read.value;
}

export function outputOf({ outputs }: CalcAnswer, name: string): number | undefined {
  const found = outputs[name];
  return found !== undefined && 'value' in found && typeof found.value === 'number' ? found.value : undefined;
}
