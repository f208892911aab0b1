/** Most strings by far: printable ASCII without quotation mark and backslash. */
const needsNoEscape = /^[ !#-[\]-~]*$/u;

/**
 * JSON in one spelling only: keys sorted by UTF-16 code unit, no blanks, numbers and strings as ECMAScript writes them.
 * Properties that are undefined are left out, as JSON has no word for them.
 *
 * @param value plain data: null, booleans, finite numbers, strings, arrays, objects
 * @returns     the text that is hashed
 * @throws TypeError when the value holds what JSON cannot say: NaN, infinities, functions, lone surrogates, holes in arrays
 * @source RFC 8785 (JSON Canonicalization Scheme), section 3.2 (from memory)
 * @example canonicalJson({ b: 1, a: [true, null] }) // '{"a":[true,null],"b":1}'
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'string') {
    if (needsNoEscape.test(value)) return `"${value}"`;
    if (/\p{Surrogate}/u.test(value)) throw new TypeError('canonicalJson: a string with half a surrogate pair has no canonical form');
    return JSON.stringify(value);
  }
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`canonicalJson: ${value} is not a number that JSON can hold`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${Array.from(value, (item) => canonicalJson(item)).join(',')}]`;
  if (typeof value === 'object' && isPlain(value)) {
    let members = '';
    for (const key of inOrder(Object.keys(value))) {
      const member = (value as Readonly<Record<string, unknown>>)[key];
      if (member !== undefined) members += `${members === '' ? '' : ','}${canonicalJson(key)}:${canonicalJson(member)}`;
    }
    return `{${members}}`;
  }
  throw new TypeError(`canonicalJson: plain data expected, got ${describe(value)}`);
}

/** Most objects are written with their keys in order already, and need no sorting. */
function inOrder(keys: string[]): readonly string[] {
  return keys.every((key, at) => at === 0 || keys[at - 1]! < key) ? keys : keys.sort();
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

function describe(value: unknown): string {
  return typeof value === 'object' ? (value?.constructor?.name ?? 'an object') : typeof value;
}
