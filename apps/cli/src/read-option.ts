import { dimensionName, isProblem, isUnit, readQuantity, readWindow, sameDimension, unit, type Dimension, type QuantityProblem } from '@rotorwright/units';
import { WrongInput } from './wrong-input.ts';

function dimensionOf(unitText: string): Dimension {
  const known = unit(unitText);
  if (!isUnit(known)) throw new RangeError(`readOption: unknown unit ${unitText}`);
  return known.dimension;
}

function refuse(option: string, given: string, problem: QuantityProblem | { readonly unit: string; readonly dimension: Dimension }, wanted: string, example: string): never {
  const reason = !('problem' in problem) ? `${problem.unit} is the unit of ${dimensionName(problem.dimension)}, not of ${dimensionName(dimensionOf(wanted))}`
    : problem.problem === 'unit-missing' ? 'the unit is missing'
    : problem.problem === 'unit-unknown' ? `there is no unit “${problem.unit}”; the nearest is ${problem.nearest}`
    : problem.reason;
  throw new WrongInput(`${option}: given “${given}”: ${reason}. Right would be "${example}".`);
}

/**
 * A quantity given on the command line.
 *
 * @param wanted a unit of the kind that it must have
 * @returns      SI; undefined when the option was not given
 * @throws WrongInput
 */
export function readQuantityOption(option: string, given: string | undefined, wanted: string, example: string): number | undefined {
  if (given === undefined) return undefined;
  const read = readQuantity(given);
  if (isProblem(read)) return refuse(option, given, read, wanted, example);
  if (!sameDimension(read.dimension, dimensionOf(wanted))) return refuse(option, given, read, wanted, example);
  return read.value;
}

/** A window given on the command line, `1700 to 1800 rpm` or one quantity; in SI. */
export function readWindowOption(option: string, given: string | undefined, wanted: string, example: string): { readonly min?: number; readonly max?: number } | undefined {
  if (given === undefined) return undefined;
  const read = readWindow(given);
  if (isProblem(read)) return refuse(option, given, read, wanted, example);
  if (!sameDimension(read.dimension, dimensionOf(wanted))) return refuse(option, given, read, wanted, example);
  return { ...(read.min !== undefined && { min: read.min }), ...(read.max !== undefined && { max: read.max }) };
}

export function readWholeOption(option: string, given: string, min: number, max: number): number {
  const value = Number(given);
  if (!/^\d+$/.test(given) || value < min || value > max) throw new WrongInput(`${option} takes a whole number from ${min} to ${max}; given: ${given}`);
  return value;
}
