/** An exact rational in lowest terms; the sign is the numerator's. */
export interface Ratio {
  readonly numerator: bigint;
  /** Positive. */
  readonly denominator: bigint;
}

/**
 * The rational numerator/denominator in lowest terms.
 *
 * @param numerator    whole number, any sign
 * @param denominator  whole number, not zero
 * @throws RangeError when an argument is no safe whole number or the denominator is zero
 * @source definition
 * @example ratioText(ratio(-14, 116)) // '-7/58'
 */
export function ratio(numerator: bigint | number, denominator: bigint | number = 1n): Ratio {
  const above = toBigInt('numerator', numerator);
  const below = toBigInt('denominator', denominator);
  if (below === 0n) throw new RangeError('ratio: the denominator must not be 0');
  const common = greatestCommonDivisorBig(above, below);
  const sign = below < 0n ? -1n : 1n;
  return { numerator: (sign * above) / common, denominator: (sign * below) / common };
}

/**
 * Product of two rationals.
 *
 * @example ratioText(multiplyRatios(ratio(17, 85), ratio(54, 11))) // '54/55'
 */
export function multiplyRatios(a: Ratio, b: Ratio): Ratio {
  // Reduced crosswise first: the product of lowest terms is then in lowest terms, and small.
  const left = greatestCommonDivisorBig(a.numerator, b.denominator);
  const right = greatestCommonDivisorBig(b.numerator, a.denominator);
  return {
    numerator: (a.numerator / left) * (b.numerator / right),
    denominator: (a.denominator / right) * (b.denominator / left),
  };
}

/**
 * The reciprocal.
 *
 * @throws RangeError for zero
 * @example ratioText(invertRatio(ratio(-7, 58))) // '-58/7'
 */
export function invertRatio(value: Ratio): Ratio {
  if (value.numerator === 0n) throw new RangeError('invertRatio: 0 has no reciprocal');
  return value.numerator < 0n
    ? { numerator: -value.denominator, denominator: -value.numerator }
    : { numerator: value.denominator, denominator: value.numerator };
}

/**
 * Quotient of two rationals.
 *
 * @throws RangeError when the divisor is zero
 */
export function divideRatios(dividend: Ratio, divisor: Ratio): Ratio {
  return multiplyRatios(dividend, invertRatio(divisor));
}

/**
 * Order of two rationals: −1, 0 or 1, exactly.
 *
 * @example compareRatios(ratio(1, 3), ratio(3333333333, 10000000000)) // 1
 */
export function compareRatios(a: Ratio, b: Ratio): -1 | 0 | 1 {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

/** Whether two rationals are the same number. */
export function sameRatio(a: Ratio, b: Ratio): boolean {
  return a.numerator === b.numerator && a.denominator === b.denominator;
}

/**
 * The nearest floating-point number.
 *
 * @example ratioToNumber(ratio(54, 11)) // 54 / 11
 */
export function ratioToNumber(value: Ratio): number {
  const above = Number(value.numerator);
  const below = Number(value.denominator);
  if (Number.isSafeInteger(above) && Number.isSafeInteger(below)) return above / below;
  // Both may lie beyond the range of floating point while their quotient does not: 20 digits are taken by whole division.
  const whole = value.numerator / value.denominator;
  if (whole > 2n ** 70n || whole < -(2n ** 70n)) return Number(whole);
  const shift = BigInt(Math.max(0, digits(value.denominator) - digits(value.numerator)) + 20);
  return Number((value.numerator * 10n ** shift) / value.denominator) / 10 ** Number(shift);
}

/**
 * The rational as text: `7/58`, and a whole number without its denominator.
 *
 * @example ratioText(ratio(10, 5)) // '2'
 */
export function ratioText(value: Ratio): string {
  return value.denominator === 1n ? `${value.numerator}` : `${value.numerator}/${value.denominator}`;
}

/**
 * Greatest common divisor of two whole numbers; that of 0 and n is |n|.
 *
 * @throws RangeError when an argument is no safe whole number
 * @source Euclid, Elements VII.2
 * @example greatestCommonDivisor(54, 12) // 6
 */
export function greatestCommonDivisor(a: number, b: number): number {
  if (!Number.isSafeInteger(a) || !Number.isSafeInteger(b)) throw new RangeError(`greatestCommonDivisor: whole numbers wanted, got ${a} and ${b}`);
  let larger = Math.abs(a);
  let smaller = Math.abs(b);
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

function greatestCommonDivisorBig(a: bigint, b: bigint): bigint {
  let larger = a < 0n ? -a : a;
  let smaller = b < 0n ? -b : b;
  // Tooth counts and their short products fit into floating point, where a remainder costs a tenth.
  while (larger > SAFE || smaller > SAFE) {
    if (smaller === 0n) return larger;
    [larger, smaller] = [smaller, larger % smaller];
  }
  return BigInt(greatestCommonDivisor(Number(larger), Number(smaller)));
}

const SAFE = BigInt(Number.MAX_SAFE_INTEGER);

function digits(value: bigint): number {
  return value.toString().replace('-', '').length;
}

function toBigInt(name: string, value: bigint | number): bigint {
  if (typeof value === 'bigint') return value;
  if (!Number.isSafeInteger(value)) throw new RangeError(`ratio: the ${name} must be a whole number within ±(2^53 − 1), got ${value}`);
  return BigInt(value);
}
