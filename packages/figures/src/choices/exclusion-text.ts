import { showQuantity } from '@rotorwright/units';
import type { Exclusion } from './rules.ts';

/** Why a combination is ruled out, in a sentence. */
export function exclusionText({ kind, of, value, min, max, shown }: Exclusion): string {
  if (kind === 'loop') return `The two ways round ${of} ask for different speeds.`;
  const show = (each: number): string => showQuantity(each, shown ?? '-', { significant: 5 });
  const given = value === undefined ? 'not known' : show(value);
  if (kind === 'centre') return `${of} needs a centre distance of ${given}; the frame allows ${windowText(show, min, max)}.`;
  return `${of} is ${given}; ${kind === 'band' ? 'wanted' : 'allowed'} is ${windowText(show, min, max)}.`;
}

function windowText(show: (value: number) => string, min: number | undefined, max: number | undefined): string {
  if (min === undefined) return `at most ${show(max!)}`;
  if (max === undefined) return `at least ${show(min)}`;
  return min === max ? show(min) : `${show(min)} to ${show(max)}`;
}
