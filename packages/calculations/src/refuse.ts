import { CalculationError } from './define.ts';

/**
 * What a kernel answers; where it refuses, the refusal names the input that it is about.
 *
 * @throws CalculationError in place of a RangeError
 */
export function refusing<T>(input: string, given: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) throw new CalculationError(input, given, `another one: ${error.message.replace(/^\w+: /u, '')}`);
    throw error;
  }
}
