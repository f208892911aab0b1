import type { Dimension } from './quantity.ts';

export const pureNumber: Dimension = [0, 0, 0, 0, 0, 0];

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => exponent === b[i]);
}

/** Dimension of x · yⁿ. */
export function combineDimensions(x: Dimension, y: Dimension, n: number): Dimension {
  // `+ 0` turns the -0 of a product with a negative power into 0.
  return [x[0] + n * y[0] + 0, x[1] + n * y[1] + 0, x[2] + n * y[2] + 0, x[3] + n * y[3] + 0, x[4] + n * y[4] + 0, x[5] + n * y[5] + 0];
}

/** What a builder calls quantities of a dimension. Torque and energy share one, and so do Hz and other rates. */
const names: readonly (readonly [Dimension, string])[] = [
  [pureNumber, 'a pure number'],
  [[1, 0, 0, 0, 0, 0], 'a length'],
  [[2, 0, 0, 0, 0, 0], 'an area'],
  [[3, 0, 0, 0, 0, 0], 'a volume'],
  [[0, 1, 0, 0, 0, 0], 'a mass'],
  [[1, 1, 0, 0, 0, 0], 'an unbalance'],
  [[2, 1, 0, 0, 0, 0], 'a moment of inertia'],
  [[-3, 1, 0, 0, 0, 0], 'a density'],
  [[0, 0, 1, 0, 0, 0], 'a time'],
  [[0, 0, -1, 0, 0, 0], 'a frequency'],
  [[0, 0, 0, 0, 0, 1], 'an angle'],
  [[0, 0, -1, 0, 0, 1], 'a speed of rotation'],
  [[1, 0, -1, 0, 0, 0], 'a speed'],
  [[1, 0, -2, 0, 0, 0], 'an acceleration'],
  [[1, 1, -2, 0, 0, 0], 'a force'],
  [[2, 1, -2, 0, 0, 0], 'a torque or an energy'],
  [[2, 1, -2, 0, 0, -1], 'a torsional stiffness'],
  [[0, 1, -2, 0, 0, 0], 'a stiffness'],
  [[-1, 1, -2, 0, 0, 0], 'a pressure or stress'],
  [[2, 1, -3, 0, 0, 0], 'a power'],
  [[0, 0, 0, 0, 1, 0], 'a temperature'],
  [[0, 0, 0, 0, -1, 0], 'a coefficient of expansion'],
  [[2, 0, -2, 0, -1, 0], 'a specific heat'],
  [[0, 0, 0, 1, 0, 0], 'a current'],
  [[0, 0, 1, 1, 0, 0], 'a charge'],
  [[2, 1, -3, -1, 0, 0], 'a voltage'],
  [[2, 1, -3, -2, 0, 0], 'a resistance'],
  [[-2, -1, 2, 1, 0, 1], 'a speed constant'],
];

/** Name with its article: `a length`, `a torque or an energy`; `a quantity of another kind` where the trade has no name. */
export function dimensionName(dimension: Dimension): string {
  return names.find(([known]) => sameDimension(known, dimension))?.[1] ?? 'a quantity of another kind';
}

const named: readonly (readonly [Dimension, string])[] = [
  [[1, 1, -2, 0, 0, 0], 'N'],
  [[2, 1, -2, 0, 0, 0], 'N·m'],
  [[2, 1, -2, 0, 0, -1], 'N·m/rad'],
  [[0, 1, -2, 0, 0, 0], 'N/m'],
  [[-1, 1, -2, 0, 0, 0], 'Pa'],
  [[2, 1, -3, 0, 0, 0], 'W'],
  [[0, 0, -1, 0, 0, 0], 'Hz'],
  [[0, 0, -1, 0, 0, 1], 'rad/s'],
  [[2, 1, -3, -1, 0, 0], 'V'],
  [[2, 1, -3, -2, 0, 0], 'Ω'],
  [[-2, -1, 2, 1, 0, 1], 'rad/(s·V)'],
];
const rootOfPressure: Dimension = [-0.5, 0.5, -1, 0, 0, 0];
const symbols = ['m', 'kg', 's', 'A', 'K', 'rad'] as const;

/**
 * The SI unit of a dimension, in which values are kept; `-` for a pure number. Where a torque and an energy share one it is N·m.
 *
 * @example siUnit([1, 0, 0, 0, 0, 0]) // 'm'
 */
export function siUnit(dimension: Dimension): string {
  if (sameDimension(dimension, pureNumber)) return '-';
  const known = named.find(([one]) => sameDimension(one, dimension))?.[1];
  if (known !== undefined) return known;
  if (!dimension.every(Number.isInteger)) {
    // Halves come from the root of a pressure alone.
    const rest = siUnit(combineDimensions(dimension, rootOfPressure, -1));
    return rest === '-' ? '√Pa' : rest.startsWith('1/') ? `√Pa${rest.slice(1)}` : `√Pa·${rest}`;
  }
  const side = (sign: 1 | -1) => symbols.flatMap((symbol, i) => {
    const exponent = (dimension[i] as number) * sign;
    return exponent <= 0 ? [] : [exponent === 1 ? symbol : `${symbol}^${exponent}`];
  });
  const above = side(1);
  const below = side(-1);
  const top = above.length > 0 ? above.join('·') : '1';
  const bottom = below.length > 1 ? `/(${below.join('·')})` : below.map((one) => `/${one}`).join('');
  return `${top}${bottom}`.replaceAll(/\^(\d)/gu, (_, digit: string) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)] as string);
}
