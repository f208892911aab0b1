import { editDistance } from '@rotorwright/units';

/** Says what is there that the word may have been meant for. */
export function nearestTo(given: string, known: readonly string[]): string {
  if (known.length === 0) return 'There is none.';
  const [first, ...rest] = known.toSorted((a, b) => distance(given, a) - distance(given, b));
  return known.length <= 6 ? `There is ${[first, ...rest].join(', ')}.` : `The nearest is ${[first, ...rest.slice(0, 2)].join(', then ')}.`;
}

/** A word that starts with what was given, or holds it, is nearer than one that merely has as many letters. */
const distance = (given: string, word: string): number => editDistance(given.toLowerCase(), word.toLowerCase()) - (word.toLowerCase().includes(given.toLowerCase()) ? 100 : 0);
