import type { Outcome } from '@rotorwright/calculations';

/** What a calculation is given: numbers and words, in rows and records. */
export type Plain = number | string | readonly Plain[] | { readonly [name: string]: Plain };

export type Given = Readonly<Record<string, Plain>>;

interface Known {
  readonly calculation: string;
  readonly given: Given;
  readonly outcome: Outcome;
  /** Another one with the same number. */
  readonly next: Known | undefined;
}

/**
 * Outcomes by calculation and inputs. They are told apart by a number that is made of both, and compared in full: a drag
 * looks up a thousand, and words for each would cost more than most of the calculations.
 */
export class Outcomes {
  readonly #known = new Map<number, Known>();
  readonly #bits = new DataView(new ArrayBuffer(8));

  /** A number for a calculation and its inputs: alike ones have the same, others seldom. Small enough to be kept without a box. */
  numberOf(calculation: string, given: Given): number {
    return this.#mix(this.#mix(0x811c9dc5, calculation), given) >> 2;
  }

  /** FNV-1a, a word at a time. */
  #mix(before: number, value: Plain): number {
    let mixed = before;
    if (typeof value === 'number') {
      this.#bits.setFloat64(0, value);
      mixed = folded(folded(mixed, this.#bits.getInt32(0)), this.#bits.getInt32(4));
    } else if (typeof value === 'string') for (let at = 0; at < value.length; at += 1) mixed = folded(mixed, value.charCodeAt(at));
    else if (Array.isArray(value)) for (const each of value as readonly Plain[]) mixed = this.#mix(mixed, each);
    else for (const name in value) mixed = this.#mix(mixed, (value as Given)[name]!);
    return mixed;
  }

  get(calculation: string, given: Given, number: number): Outcome | undefined {
    let known = this.#known.get(number);
    while (known !== undefined && !(known.calculation === calculation && isSame(known.given, given))) known = known.next;
    return known?.outcome;
  }

  set(calculation: string, given: Given, number: number, outcome: Outcome): void {
    this.#known.set(number, { calculation, given, outcome, next: this.#known.get(number) });
  }
}

/** Bits of the upper half come down, for round numbers differ there alone. */
const folded = (mixed: number, word: number): number => Math.imul(mixed ^ word ^ (word >>> 15), 0x01000193);

/** Whether two inputs are the same to the last bit. */
function isSame(one: Plain, other: Plain): boolean {
  if (typeof one !== 'object' || typeof other !== 'object') return Object.is(one, other);
  if (Array.isArray(one) || Array.isArray(other)) {
    const [a, b] = [one, other] as readonly (readonly Plain[])[];
    return Array.isArray(one) && Array.isArray(other) && a!.length === b!.length && a!.every((each, at) => isSame(each, b![at]!));
  }
  const [a, b] = [one as Given, other as Given];
  let names = 0;
  for (const name in a) {
    if (!Object.hasOwn(b, name) || !isSame(a[name]!, b[name]!)) return false;
    names += 1;
  }
  for (const _ in b) names -= 1;
  return names === 0;
}
