import { isUnit, unit, type Unit } from './unit.ts';

export interface ShowOptions {
  /** Significant figures, 4 when neither is given; figures before the decimal point are never rounded away. */
  readonly significant?: number;
  /** Figures after the point, kept even when they are zeros. */
  readonly decimals?: number;
  /** Commas between thousands; true when not given. */
  readonly grouped?: boolean;
}

/**
 * Value in a unit.
 *
 * @param valueSI  in SI; kelvin for temperatures, radian for angles
 * @throws RangeError when the unit is not known
 * @example inUnit(0.014, 'mm') // 14
 */
export function inUnit(valueSI: number, unitText: string): number {
  const known = knownUnit(unitText, 'inUnit');
  return tidy((valueSI - known.offset) / known.factor);
}

/**
 * Value in SI of a number in a unit.
 *
 * @throws RangeError when the unit is not known
 * @example fromUnit(14, 'mm') // 0.014
 */
export function fromUnit(value: number, unitText: string): number {
  const known = knownUnit(unitText, 'fromUnit');
  return value * known.factor + known.offset;
}

/**
 * A value as a person reads it: number, space, unit; no space before the sign of degrees. Pure numbers: unit `-` or none.
 *
 * @param valueSI  in SI; kelvin for temperatures, radian for angles
 * @throws RangeError when the value is not finite or the unit is not known
 * @example showQuantity(184.3067690, 'rpm') // '1,760 rpm'
 * @example showQuantity(0.0014, 'mm', { decimals: 2 }) // '1.40 mm'
 */
export function showQuantity(valueSI: number, shownUnit: string, options: ShowOptions = {}): string {
  if (!Number.isFinite(valueSI)) throw new RangeError(`showQuantity: the value must be finite; got ${valueSI}`);
  if (shownUnit === '' || shownUnit === '-') return showNumber(valueSI, options);
  const known = knownUnit(shownUnit, 'showQuantity');
  const number = showNumber(tidy((valueSI - known.offset) / known.factor), options);
  return known.symbol === '°' ? `${number}°` : `${number} ${known.symbol}`;
}

/**
 * A value as a file keeps it: every figure, no separators, so that reading gives the same value back.
 *
 * @throws RangeError when the value is not finite or the unit is not known
 * @example writeQuantity(1528.9084, 'rpm') // '14600 rpm' within the figures a double holds
 */
export function writeQuantity(valueSI: number, unitText: string): string {
  if (!Number.isFinite(valueSI)) throw new RangeError(`writeQuantity: the value must be finite; got ${valueSI}`);
  const known = knownUnit(unitText, 'writeQuantity');
  return `${tidy((valueSI - known.offset) / known.factor)} ${known.symbol}`;
}

/**
 * @throws RangeError when the value is not finite
 * @example showNumber(14600) // '14,600'
 */
export function showNumber(value: number, options: ShowOptions = {}): string {
  if (!Number.isFinite(value)) throw new RangeError(`showNumber: the value must be finite; got ${value}`);
  const size = Math.abs(value);
  const significant = options.significant ?? 4;
  if (options.decimals === undefined && size !== 0 && (size < 1e-4 || size >= 1e12)) return scientific(value, significant);
  const decimals = options.decimals ?? Math.max(0, Math.min(20, significant - 1 - Math.floor(Math.log10(size === 0 ? 1 : size))));
  const fixed = size.toFixed(decimals);
  const [whole = '0', fraction = ''] = fixed.split('.');
  const kept = options.decimals === undefined ? fraction.replace(/0+$/u, '') : fraction;
  const grouped = (options.grouped ?? true) ? whole.replace(/\B(?=(?:\d{3})+$)/gu, ',') : whole;
  const sign = value < 0 && /[1-9]/u.test(fixed) ? '−' : '';
  return `${sign}${grouped}${kept === '' ? '' : `.${kept}`}`;
}

function scientific(value: number, significant: number): string {
  const [mantissa = '0', exponent = '0'] = Math.abs(value).toExponential(Math.max(0, significant - 1)).split('e');
  const trimmed = mantissa.includes('.') ? mantissa.replace(/\.?0+$/u, '') : mantissa;
  const raised = [...exponent.replace('+', '')].map((digit) => (digit === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)])).join('');
  return `${value < 0 ? '−' : ''}${trimmed}×10${raised}`;
}

/** Drops the last figures of a double, which a factor such as π/30 leaves as noise: 14600.000000000002 becomes 14600. */
function tidy(value: number): number {
  return Number(value.toPrecision(14));
}

function knownUnit(text: string, caller: string): Unit {
  const known = unit(text);
  if (!isUnit(known)) throw new RangeError(`${caller}: the unit must be a known one; got “${text}”`);
  return known;
}
