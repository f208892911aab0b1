/** Places and weights of the five-point rule on −1 to 1: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), table 25.4 (from memory). */
const GAUSS = [
  [-0.906179845938664, 0.236926885056189],
  [-0.538469310105683, 0.478628670499366],
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
] as const;

/**
 * Integral of a smooth function by the five-point rule of Gauss on even parts.
 *
 * @param parts  whole, at least 1
 * @source Gauss-Legendre quadrature
 * @example integrate((x) => x ** 9, 0, 1, 1) // 0.1
 */
export function integrate(f: (x: number) => number, from: number, to: number, parts: number): number {
  const half = (to - from) / (2 * parts);
  let sum = 0;
  for (let part = 0; part < parts; part++) {
    const middle = from + (2 * part + 1) * half;
    for (const [at, weight] of GAUSS) sum += weight * f(middle + at * half);
  }
  return sum * half;
}
