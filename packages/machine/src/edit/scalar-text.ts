import { isMap, isScalar, parseDocument, type Pair } from 'yaml';

/**
 * A value or key as it is written: bare where that reads back as the same text, in quotes where it would not.
 *
 * @example scalarSource('14600 rpm') // '14600 rpm'
 * @example scalarSource('Heat, then turn') // '"Heat, then turn"'
 */
export function scalarSource(value: string | number | boolean): string {
  if (typeof value !== 'string') return String(value);
  return readsBack(value) ? value : JSON.stringify(value);
}

function readsBack(text: string): boolean {
  if (/[\r\n]/u.test(text)) return false;
  // Inside braces the rules are strictest; what is safe there is safe everywhere.
  const document = parseDocument(`{a: ${text}}`, { prettyErrors: false, logLevel: 'silent' });
  if (document.errors.length > 0 || document.warnings.length > 0 || !isMap(document.contents) || document.contents.items.length !== 1) return false;
  const { value } = document.contents.items[0] as Pair;
  return isScalar(value) && value.type === 'PLAIN' && value.source === text && value.value !== null;
}
