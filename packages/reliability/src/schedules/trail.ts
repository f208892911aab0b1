/** A clause: at least one literal must hold; the first two are watched. */
export interface Clause {
  readonly literals: number[];
  activity: number;
}

/** What the trail asks of those who move bounds for reasons of their own. */
export interface Reasons {
  /**
   * Adds to `into` literals that together force the bound of `code` at least to `value`. Each held before trail entry `entry`, of
   * which the kind and the numbers are.
   */
  readonly explain: (into: number[], entry: number, code: number, value: number, kind: number, a: number, b: number, c: number) => void;
}

/** Kinds of reasons that the core knows; those of the rules are greater. */
export const DECIDED = 0;
export const CLAUSE = 1;
export const GIVEN = 2;
export const ADJUSTED = 3;
export const FIRST_RULE_KIND = 4;

export const opposite = (code: number): number => code ^ 1;
/** Not (x ≥ v) is x ≤ v − 1; not (x ≤ v) is x ≥ v + 1. */
export const negated = (code: number, value: number): number => ((code & 1) === 0 ? value - 1 : value + 1);

/** How bounds came about: what was moved, from where, on which level, the entry before on the same code, and why. */
export class Trail {
  readonly #reasons: Reasons;
  length = 0;
  code = new Int32Array(1024);
  old = new Float64Array(1024);
  level = new Int32Array(1024);
  previous = new Int32Array(1024);
  kind = new Int32Array(1024);
  #a = new Float64Array(1024);
  #b = new Float64Array(1024);
  #c = new Float64Array(1024);
  readonly #clauseOf: (Clause | undefined)[] = [];
  /** Last entry of each code, or −1. */
  readonly latest: Int32Array;
  /** First entry of each level. */
  readonly levels: number[] = [];

  constructor(codes: number, reasons: Reasons) {
    this.#reasons = reasons;
    this.latest = new Int32Array(codes).fill(-1);
  }

  /** Notes why the next entry comes, before it is known whether it can: `explain` then says it. */
  because(kind: number, a: number, b: number, c: number, clause: Clause | undefined): void {
    const entry = this.length;
    if (entry + 1 >= this.code.length) this.#grow();
    this.kind[entry] = kind;
    this.#a[entry] = a;
    this.#b[entry] = b;
    this.#c[entry] = c;
    this.#clauseOf[entry] = clause;
  }

  /** Makes the entry of which `because` said why. */
  push(code: number, old: number): void {
    const entry = this.length;
    this.code[entry] = code;
    this.old[entry] = old;
    this.level[entry] = this.levels.length;
    this.previous[entry] = this.latest[code]!;
    this.latest[code] = entry;
    this.length++;
  }

  /** Drops the entries of a level and of all above it; what they moved is put back by the caller. */
  cut(level: number): void {
    this.length = this.levels[level]!;
    this.#clauseOf.length = this.length;
    this.levels.length = level;
  }

  /** Literals that together made an entry move its bound at least to `value`. */
  explain(into: number[], entry: number, code: number, value: number): void {
    const kind = this.kind[entry]!;
    if (kind === CLAUSE) {
      const { literals } = this.#clauseOf[entry]!;
      for (let k = 2; k < literals.length; k += 2) into.push(opposite(literals[k]!), negated(literals[k]!, literals[k + 1]!));
    } else if (kind === ADJUSTED) into.push(code, this.#a[entry]!);
    else if (kind >= FIRST_RULE_KIND) this.#reasons.explain(into, entry, code, value, kind, this.#a[entry]!, this.#b[entry]!, this.#c[entry]!);
  }

  /** Entry that first made a literal hold, which it does; −1 when it held from the start. */
  entryOf(code: number, value: number): number {
    let entry = this.latest[code]!;
    if ((code & 1) === 0) while (entry >= 0 && this.old[entry]! >= value) entry = this.previous[entry]!;
    else while (entry >= 0 && this.old[entry]! <= value) entry = this.previous[entry]!;
    return entry;
  }

  #grow(): void {
    const size = 2 * this.code.length;
    const ints = (old: Int32Array): Int32Array<ArrayBuffer> => {
      const wider = new Int32Array(size);
      wider.set(old);
      return wider;
    };
    const floats = (old: Float64Array): Float64Array<ArrayBuffer> => {
      const wider = new Float64Array(size);
      wider.set(old);
      return wider;
    };
    this.code = ints(this.code);
    this.old = floats(this.old);
    this.level = ints(this.level);
    this.previous = ints(this.previous);
    this.kind = ints(this.kind);
    this.#a = floats(this.#a);
    this.#b = floats(this.#b);
    this.#c = floats(this.#c);
  }
}
