import { isSingle, type AnsweredSingle, type AnsweredValue } from '@rotorwright/calculations';
import type { CheckValue } from './check.ts';

/** An answered value without its units. */
export function plain(value: AnsweredValue): CheckValue {
  if (isSingle(value)) return value.value;
  if (Array.isArray(value)) return value.map(plain);
  return Object.fromEntries(Object.entries(value as Readonly<Record<string, AnsweredSingle>>).map(([name, { value: own }]) => [name, own as number]));
}

/**
 * The largest deviation among all numbers, with its sign: computed less expected, or as a share of the expected value.
 * Infinite where text differs, a list is shorter or longer, or a name is missing or not wanted.
 */
export function deviationOf(computed: CheckValue | undefined, expected: CheckValue | undefined, mode: 'relative' | 'absolute'): number {
  if (typeof computed === 'number' && typeof expected === 'number') {
    if (computed === expected) return 0;
    return mode === 'absolute' ? computed - expected : (computed - expected) / Math.abs(expected);
  }
  if (typeof computed !== 'object' || typeof expected !== 'object') return computed === expected ? 0 : Infinity;
  if (Array.isArray(computed) !== Array.isArray(expected)) return Infinity;
  const ours = new Map<string, CheckValue>(Object.entries(computed));
  const theirs = new Map<string, CheckValue>(Object.entries(expected));
  const names = [...new Set([...ours.keys(), ...theirs.keys()])];
  return names.map((name) => deviationOf(ours.get(name), theirs.get(name), mode)).reduce((most, each) => (Math.abs(each) > Math.abs(most) ? each : most), 0);
}
