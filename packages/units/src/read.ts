import { sameDimension } from './dimension.ts';
import type { Quantity, QuantityProblem, QuantitySize, QuantityWindow, UnitProblem } from './quantity.ts';
import { isUnit, unit, type Unit } from './unit.ts';

const numberAtStart = /^([+\-−]?(?:\d+\.?\d*|\.\d+)(?:[eE][+\-−]?\d+)?)(.*)$/su;
/** Longer texts are sentences, not quantities. */
const longestText = 200;

/** Whether a quantity or window was understood. */
export function isProblem(read: Quantity | QuantityWindow | QuantitySize | QuantityProblem): read is QuantityProblem {
  return 'problem' in read;
}

/**
 * Reads a number with its unit. Decimal point only; no separators between thousands.
 *
 * @example readQuantity('14 mm') // { value: 0.014, dimension: [1, 0, 0, 0, 0, 0], unit: 'mm' }
 * @example readQuantity('25 gr') // { problem: 'unit-unknown', text: '25 gr', unit: 'gr', nearest: 'g' }
 */
export function readQuantity(text: string): Quantity | QuantityProblem {
  const split = splitNumber(text);
  if ('problem' in split) return split;
  if (split.rest === '') return { problem: 'unit-missing', text };
  const known = unit(split.rest);
  if (!isUnit(known)) return { ...known, text };
  const value = split.number * known.factor + known.offset;
  if (!Number.isFinite(value)) return { problem: 'number', text, reason: 'The number is too large.' };
  return { value, dimension: known.dimension, unit: known.symbol };
}

/**
 * Reads a window: `0.02 to 0.06 mm`, `0.5 mm to 1 cm`, `at least 3 mm`, `at most 5 mm`, or one quantity, which is both its ends.
 *
 * @example readWindow('at most 5 mm') // { max: 0.005, dimension: [1, 0, 0, 0, 0, 0], unit: 'mm' }
 */
export function readWindow(text: string): QuantityWindow | QuantityProblem {
  const open = /^\s*at (least|most)\s+(.*)$/su.exec(text);
  if (open) {
    const bound = readQuantity(open[2] as string);
    if (isProblem(bound)) return { ...bound, text };
    const side = open[1] === 'least' ? { min: bound.value } : { max: bound.value };
    return { ...side, dimension: bound.dimension, unit: bound.unit };
  }
  const ends = text.split(/\s+to\s+/u);
  if (ends.length > 2) return { problem: 'window', text, reason: 'A window has two ends: 0.02 to 0.06 mm.' };
  const last = readQuantity(ends.at(-1) as string);
  if (isProblem(last)) return { ...last, text };
  if (ends.length === 1) return { min: last.value, max: last.value, dimension: last.dimension, unit: last.unit };
  return closedWindow(text, ends[0] as string, last);
}

/**
 * Reads a size: `5 mm`; `5 to 4.97 mm`, the nominal size first and then its other limit; or `5 ±0.02 mm`.
 *
 * @example readSize('5 to 4.97 mm') // { nominal: 0.005, least: 0.00497, most: 0.005, dimension: [1, 0, 0, 0, 0, 0], unit: 'mm' }
 */
export function readSize(text: string): QuantitySize | QuantityProblem {
  const around = text.split('±');
  const ends = around.length > 1 ? around : text.split(/\s+to\s+/u);
  if (ends.length > 2) return { problem: 'window', text, reason: 'A size has one nominal and one window: 5 to 4.97 mm, or 5 ±0.02 mm.' };
  const last = readQuantity(ends.at(-1) as string);
  if (isProblem(last)) return { ...last, text };
  const { dimension, unit: shown, value } = last;
  if (ends.length === 1) return { nominal: value, least: value, most: value, dimension, unit: shown };
  const nominal = firstEnd(text, ends[0] as string, last);
  if (typeof nominal !== 'number') return nominal;
  if (around.length === 1) return { nominal, least: Math.min(nominal, value), most: Math.max(nominal, value), dimension, unit: shown };
  if (/^\s*[+\-−]/u.test(around[1] as string)) return { problem: 'window', text, reason: 'What follows ± has no sign of its own: 5 ±0.02 mm.' };
  return { nominal, least: nominal - value, most: nominal + value, dimension, unit: shown };
}

function closedWindow(text: string, firstText: string, last: Quantity): QuantityWindow | QuantityProblem {
  const min = firstEnd(text, firstText, last);
  if (typeof min !== 'number') return min;
  if (min > last.value) return { problem: 'window', text, reason: 'The smaller end comes first: 0.02 to 0.06 mm.' };
  return { min, max: last.value, dimension: last.dimension, unit: last.unit };
}

/** Value of the first of two numbers. Without a unit of its own it has that of the second. */
function firstEnd(text: string, firstText: string, last: Quantity): number | QuantityProblem {
  const split = splitNumber(firstText);
  if ('problem' in split) return { ...split, text };
  const own = unit(split.rest === '' ? last.unit : split.rest);
  if (!isUnit(own)) return { ...(own as UnitProblem), text };
  if (!sameDimension(own.dimension, last.dimension)) return { problem: 'window', text, reason: `Both ends want units of one kind; ${own.symbol} and ${last.unit} are not.` };
  const value = split.number * (own as Unit).factor + own.offset;
  return Number.isFinite(value) ? value : { problem: 'number', text, reason: 'The number is too large.' };
}

function splitNumber(text: string): { readonly number: number; readonly rest: string } | (QuantityProblem & { readonly problem: 'number' }) {
  const trimmed = text.trim();
  const refuse = (reason: string) => ({ problem: 'number', text, reason }) as const;
  if (trimmed.length > longestText) return refuse('A quantity is one number and one unit, such as 14 mm.');
  const match = numberAtStart.exec(trimmed);
  if (!match) return refuse('It must begin with a number in figures, such as 14 mm.');
  const digits = (match[1] as string).replaceAll('−', '-');
  const number = Number(digits);
  const after = match[2] as string;
  const rest = after.trim();
  if (/^[,.'’_]|^(?!1\s*\/)\d/u.test(rest)) return refuse(separatorReason(digits, rest));
  if (!Number.isFinite(number)) return refuse('The number is too large.');
  if (number === 0 && /[1-9]/u.test(digits.replace(/[eE].*/u, ''))) return refuse('The number is too small.');
  return { number, rest };
}

function separatorReason(digits: string, rest: string): string {
  if (/^,\d{3}(?!\d)/u.test(rest)) {
    const joined = `${digits}${rest.replace(/^,(\d{3}).*$/su, '$1')}`;
    return `A comma may mean thousands or a decimal: write ${joined} for thousands, a point for decimals.`;
  }
  if (/^,\d/u.test(rest)) return `Write a decimal point, not a comma: ${digits}.${/^,(\d+)/u.exec(rest)?.[1]}.`;
  if (/^\d/u.test(rest)) return 'Write the number without spaces: 14600 rpm.';
  return 'Write one number with a decimal point and no other signs: 14600.5 rpm.';
}
