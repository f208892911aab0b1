import type { InputSpec } from '../calculation.ts';
import { CalculationError } from '../define.ts';

export type Three = readonly [number, number, number];

const coordinate = { kind: 'number', title: 'Coordinate', symbol: 'x', unit: 'm', shown: 'mm', min: -1e3, max: 1e3 } as const;
const component = { kind: 'number', title: 'Component', symbol: 'n', unit: '-', shown: '-', min: -1e6, max: 1e6 } as const;

/** A point or an arm: x, y, z in m. */
export const pointInput = (title: string, example?: Three) => ({ kind: 'list', title, atLeast: 3, of: coordinate, ...(example && { example }) }) as const satisfies InputSpec;

/** A direction of any length but zero. */
export const directionInput = (title: string, example?: Three) => ({ kind: 'list', title, atLeast: 3, of: component, ...(example && { example }) }) as const satisfies InputSpec;

export const angleInput = (title: string, symbol: string, example?: number) => ({ kind: 'number', title, symbol, unit: 'rad', shown: '°', min: -100, max: 100, ...(example !== undefined && { example }) }) as const;

/** @throws CalculationError unless there are three */
export function three(values: readonly number[], name: string): Three {
  if (values.length !== 3) throw new CalculationError(name, `${values.length} entries`, 'exactly three: x, y, z');
  return [values[0]!, values[1]!, values[2]!];
}

export interface GivenCrank {
  readonly pivot: readonly number[];
  readonly axis: readonly number[];
  readonly arm: readonly number[];
}

/** @throws CalculationError when the axis has no direction, or the arm lies along it */
export function crankOf(given: GivenCrank, name: string): { readonly pivot: Three; readonly axis: Three; readonly arm: Three } {
  const [pivot, axis, arm] = [three(given.pivot, `${name}.pivot`), three(given.axis, `${name}.axis`), three(given.arm, `${name}.arm`)];
  const length = Math.sqrt(axis[0] ** 2 + axis[1] ** 2 + axis[2] ** 2);
  if (!(length > 0)) throw new CalculationError(`${name}.axis`, `[${axis.join(', ')}]`, 'a direction: not all three 0');
  const along = (arm[0] * axis[0] + arm[1] * axis[1] + arm[2] * axis[2]) / length;
  const square = arm[0] ** 2 + arm[1] ** 2 + arm[2] ** 2 - along ** 2;
  if (!(square > 1e-24)) throw new CalculationError(`${name}.arm`, `[${arm.join(', ')}] m`, 'an arm that stands off its axis');
  return { pivot, axis, arm };
}
