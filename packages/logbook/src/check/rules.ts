/**
 * A rule takes a value from outside and says what is wrong with it; nothing when it is right.
 * `where` names the place in words that a sentence can start with: `body.note`.
 */
export type Rule = (value: unknown, where: string) => readonly string[];

export interface Shape {
  readonly required?: Readonly<Record<string, Rule>>;
  readonly optional?: Readonly<Record<string, Rule>>;
}

/** A text of a length between two bounds, without control characters and halves of characters. `lines` allows line breaks. */
export function text(min: number, max: number, options: { readonly lines?: boolean } = {}): Rule {
  const forbidden = options.lines === true ? /[^\P{Cc}\n]|\p{Surrogate}/u : /\p{Cc}|\p{Surrogate}/u;
  return (value, where) => {
    if (typeof value !== 'string') return [`${where} must be a text, got ${named(value)}`];
    if (value.trim().length < min) return [`${where} must not be empty`];
    if (value.length > max) return [`${where} may have ${max} characters at most, got ${value.length}`];
    return forbidden.test(value) ? [`${where} holds a character that cannot be printed`] : [];
  };
}

export function pattern(expression: RegExp, wanted: string): Rule {
  return (value, where) => (typeof value === 'string' && expression.test(value) ? [] : [`${where} must be ${wanted}, got ${named(value)}`]);
}

/** A hash as it is written everywhere here: 64 hex digits in lower case. */
export const sha256 = /^[0-9a-f]{64}$/u;

export function number(min: number, max: number, wanted: string): Rule {
  return (value, where) =>
    typeof value === 'number' && value >= min && value <= max ? [] : [`${where} must be ${wanted}, got ${named(value)}`];
}

export function whole(min: number, max: number): Rule {
  return (value, where) =>
    Number.isSafeInteger(value) && (value as number) >= min && (value as number) <= max
      ? []
      : [`${where} must be a whole number from ${min} to ${max}, got ${named(value)}`];
}

export function oneOf(words: readonly string[]): Rule {
  return (value, where) => (words.includes(value as string) ? [] : [`${where} must be one of ${words.join(', ')}, got ${named(value)}`]);
}

export function either(first: Rule, second: Rule): Rule {
  return (value, where) => {
    const problems = first(value, where);
    return problems.length === 0 || second(value, where).length === 0 ? [] : problems;
  };
}

export function list(item: Rule, min: number, max: number): Rule {
  return (value, where) => {
    if (!Array.isArray(value)) return [`${where} must be a list, got ${named(value)}`];
    if (value.length < min || value.length > max) return [`${where} must have ${min} to ${max} items, got ${value.length}`];
    return value.flatMap((each, at) => item(each, `${where}[${at}]`));
  };
}

/** An object with these members and no others. */
export function shape({ required = {}, optional = {} }: Shape): Rule {
  return (value, where) => {
    if (!isRecord(value)) return [`${where} must be an object, got ${named(value)}`];
    const inside = (key: string) => (where === 'entry' ? key : `${where}.${key}`);
    const missing = Object.keys(required).filter((key) => value[key] === undefined).map((key) => `${inside(key)} is missing`);
    const wrong = Object.entries({ ...required, ...optional }).flatMap(([key, rule]) =>
      value[key] === undefined ? [] : rule(value[key], inside(key)),
    );
    const known = new Set([...Object.keys(required), ...Object.keys(optional)]);
    const unknown = Object.keys(value).filter((key) => !known.has(key));
    return [...missing, ...wrong, ...unknown.slice(0, 5).map((key) => `${inside(shorten(key))} is not known here; known are ${[...known].join(', ')}`)];
  };
}

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The value as a message may quote it: short, whatever was sent. */
export function named(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return typeof value === 'string' ? `“${shorten(value)}”` : shorten(String(value));
}

function shorten(given: string): string {
  const printable = given.replace(/[\p{Cc}\p{Surrogate}]/gu, '·');
  return printable.length > 40 ? `${printable.slice(0, 40)}…` : printable;
}
