import { combineDimensions, pureNumber } from './dimension.ts';
import { nearestUnit } from './nearest.ts';
import type { Dimension, UnitProblem } from './quantity.ts';
import { listedUnits, type ListedUnit } from './table.ts';

/** A unit as read. Value in SI = written · factor + offset. */
export interface Unit {
  /** Normalised spelling: `N·m`, `kg·m²`, `J/(kg·K)`. */
  readonly symbol: string;
  readonly factor: number;
  readonly offset: number;
  readonly dimension: Dimension;
}

const bySpelling: ReadonlyMap<string, ListedUnit> = new Map(listedUnits.flatMap((unit) => [unit.symbol, ...(unit.spellings ?? [])].map((spelling) => [spelling, unit] as const)));

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const largestPower = 6;

interface Term {
  readonly unit: ListedUnit;
  readonly power: number;
}

/**
 * Reads a unit: a listed one, or a product or quotient of listed ones with whole powers.
 * Products: `N·m`, `N*m`, `N m`. Powers: `mm²`, `mm^2`, `mm2`, `s^-1`, `s⁻¹`. Quotients: one `/`, its right side in
 * brackets when it is a product.
 *
 * @example unit('Nm') // { symbol: 'N·m', factor: 1, offset: 0, dimension: [2, 1, -2, 0, 0, 0] }
 * @source products, quotients and the single solidus: SI Brochure, 9th edition (2019), section 5.4.6 (from memory)
 */
export function unit(text: string): Unit | UnitProblem {
  const listed = bySpelling.get(text);
  if (listed) return { symbol: listed.symbol, factor: listed.factor, offset: listed.offset ?? 0, dimension: listed.dimension };
  const trimmed = text.trim();
  if (trimmed !== text) return unit(trimmed);
  const sides = trimmed.split('/');
  if (sides.length > 2) return misplaced(trimmed, '/', "Use one '/' and put what is divided by in brackets: J/(kg·K).");
  const above = (sides[0] as string).trim();
  const terms = sides.length === 2 && (above === '' || above === '1') ? [] : readProduct(above, trimmed, 1);
  if (!Array.isArray(terms)) return terms as UnitProblem;
  if (sides.length === 2) {
    const below = readDivisor((sides[1] as string).trim(), trimmed);
    if (!Array.isArray(below)) return below as UnitProblem;
    terms.push(...below);
  }
  return compose(terms, trimmed);
}

/** Whether `unit` understood its text. */
export function isUnit(read: Unit | UnitProblem): read is Unit {
  return 'factor' in read;
}

function misplaced(text: string, symbol: string, reason: string): UnitProblem {
  return { problem: 'unit-misplaced', text, unit: symbol, reason };
}

function readDivisor(text: string, whole: string): Term[] | UnitProblem {
  const bracketed = /^\(([^()]*)\)$/u.exec(text);
  const terms = readProduct(bracketed ? (bracketed[1] as string) : text, whole, -1);
  if (Array.isArray(terms) && terms.length > 1 && !bracketed) {
    const product = terms.map((term) => power(term.unit.symbol, -term.power)).join('·');
    return misplaced(whole, text, `Put what is divided by in brackets: /(${product}).`);
  }
  return terms;
}

function readProduct(text: string, whole: string, sign: 1 | -1): Term[] | UnitProblem {
  const terms: Term[] = [];
  for (const factor of text.split(/\s*[·⋅*]\s*|\s+/u)) {
    const match = /^(.*?)(?:\^?([-−]?\d{1,2})|([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3}))?$/u.exec(factor);
    const name = match?.[1] ?? factor;
    const listed = bySpelling.get(name);
    if (!listed) return { problem: 'unit-unknown', text: whole, unit: name === '' ? factor : name, nearest: nearestUnit(name === '' ? whole : name) };
    const exponent = readPower(match?.[2], match?.[3]);
    if (!Number.isInteger(exponent) || exponent === 0 || Math.abs(exponent) > largestPower) return misplaced(whole, factor, `A power is a whole number from 1 to ${largestPower}, such as mm².`);
    terms.push({ unit: listed, power: sign * exponent });
  }
  return terms;
}

function readPower(plain: string | undefined, raised: string | undefined): number {
  if (plain !== undefined) return Number(plain.replace('−', '-'));
  if (raised === undefined) return 1;
  return Number([...raised].map((letter) => (letter === '⁻' ? '-' : superscripts.indexOf(letter))).join(''));
}

function compose(terms: readonly Term[], text: string): Unit | UnitProblem {
  let factor = 1;
  let dimension = pureNumber;
  for (const term of terms) {
    if (term.unit.offset !== undefined && (terms.length > 1 || term.power !== 1)) return misplaced(text, term.unit.symbol, 'In a product or quotient a temperature is a difference: use K.');
    factor *= term.unit.factor ** term.power;
    dimension = combineDimensions(dimension, term.unit.dimension, term.power);
  }
  return { symbol: spell(terms), factor, offset: terms[0]?.unit.offset ?? 0, dimension };
}

function power(symbol: string, exponent: number): string {
  return exponent === 1 ? symbol : symbol + [...String(exponent)].map((digit) => (digit === '-' ? '⁻' : superscripts[Number(digit)])).join('');
}

function spell(terms: readonly Term[]): string {
  const above = terms.filter((term) => term.power > 0).map((term) => power(term.unit.symbol, term.power));
  const below = terms.filter((term) => term.power < 0).map((term) => power(term.unit.symbol, -term.power));
  const numerator = above.length > 0 ? above.join('·') : '1';
  if (below.length === 0) return numerator;
  return below.length === 1 ? `${numerator}/${below[0]}` : `${numerator}/(${below.join('·')})`;
}
