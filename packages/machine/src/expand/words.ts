/** `pin-screw` becomes `Pin screw`. */
export function titleFrom(key: string): string {
  const words = key.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `Whimbrel II` becomes `whimbrel-ii`. */
export function idFrom(name: string): string {
  return name.normalize('NFD').replaceAll(/[\u0300-\u036F]/gu, '').toLowerCase().replaceAll(/[^a-z0-9]+/gu, '-').replaceAll(/^-+|-+$/gu, '') || 'machine';
}

/** Without the keys whose value is undefined, so that `in` and equality mean what they say. */
export function compact<T extends object>(record: T): T {
  const kept: Partial<T> = {};
  for (const key of Object.keys(record) as (keyof T)[]) if (record[key] !== undefined) kept[key] = record[key];
  return kept as T;
}
