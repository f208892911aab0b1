import type { Axis } from './axes.ts';
import { factorsOf, type Monomial } from './monomials.ts';

/**
 * All combinations of some axes are numbered 0 … count − 1, the last axis turning fastest. A column holds one number
 * for each of them.
 */
export interface Numbering {
  readonly axes: readonly Axis[];
  /** Tooth counts that the values of monomials refer to. */
  readonly baseTeeth: readonly number[];
  readonly count: number;
  /** How many combinations pass before an axis turns to its next option. */
  readonly strides: readonly number[];
}

export const countOf = (axes: readonly Axis[]): number => axes.reduce((product, axis) => product * axis.options.length, 1);

export function numberingOf(axes: readonly Axis[]): Numbering {
  const strides: number[] = [];
  let stride = 1;
  for (const axis of axes.toReversed()) {
    strides.unshift(stride);
    stride *= axis.options.length;
  }
  // What is fitted, or the smallest on offer where nothing is.
  return { axes, baseTeeth: axes.map((axis) => axis.fitted ?? axis.options[0]!.teeth), count: stride, strides };
}

/** Which option of an axis a combination has. */
export const placeOn = ({ axes, strides }: Numbering, axis: number, index: number): number => Math.floor(index / strides[axis]!) % axes[axis]!.options.length;

/** Values of a figure for every combination. */
export function columnOf(monomial: Monomial, { axes, baseTeeth, count, strides }: Numbering): Float64Array {
  const column = new Float64Array(count).fill(monomial.base);
  axes.forEach((axis, number) => {
    if (!monomial.powers.get(axis.path)) return;
    const factors = factorsOf(monomial, axis, baseTeeth[number]!);
    const run = strides[number]!;
    for (let start = 0, option = 0; start < count; start += run, option = (option + 1) % factors.length) {
      const factor = factors[option]!;
      for (let index = start; index < start + run; index += 1) column[index]! *= factor;
    }
  });
  return column;
}

/** How many gears of every combination are not fitted yet. */
export function toBuyColumn({ axes, count, strides }: Numbering): Uint8Array {
  const column = new Uint8Array(count);
  axes.forEach((axis, number) => {
    const run = strides[number]!;
    for (let start = 0, option = 0; start < count; start += run, option = (option + 1) % axis.options.length) {
      if (axis.options[option]!.fitted) continue;
      for (let index = start; index < start + run; index += 1) column[index]! += 1;
    }
  });
  return column;
}
