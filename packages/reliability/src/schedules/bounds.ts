/**
 * Whole-number variables as a pair of bounds, a trail of how they came about, and clauses learnt from conflicts: the core of a
 * lazy clause generation solver.
 *
 * A literal speaks of one bound: code 2x says x ≥ value, code 2x + 1 says x ≤ value. It is written as two numbers, code and value;
 * lists of literals are [code, value, code, value, …].
 *
 * @source Ohrimenko, Stuckey, Codish, Propagation via lazy clause generation (2009); Eén, Sörensson, An extensible SAT-solver (2003) (from memory)
 */

/** At least one literal must hold; the first two are watched. */
interface Clause {
  readonly literals: number[];
  activity: number;
}

/** What moved a bound: a kind, and three numbers that mean what the kind says. */
export interface Rules {
  /** Moves a bound on to the next allowed value (out of the gaps between windows). */
  readonly adjust: (code: number, value: number) => number;
  /**
   * Adds to `into` literals that together force the bound of `code` at least to `value`. Each held before trail entry `entry`, of
   * which the kind and the numbers are.
   */
  readonly explain: (into: number[], entry: number, code: number, value: number, kind: number, a: number, b: number, c: number) => void;
  /** A literal took part in a conflict. */
  readonly met: (code: number, value: number) => void;
}

/** Kinds of reasons that the core knows; those of the rules are greater. */
const DECIDED = 0;
const CLAUSE = 1;
const GIVEN = 2;
const ADJUSTED = 3;
export const FIRST_RULE_KIND = 4;

const opposite = (code: number): number => code ^ 1;
/** Not (x ≥ v) is x ≤ v − 1; not (x ≤ v) is x ≥ v + 1. */
const negated = (code: number, value: number): number => ((code & 1) === 0 ? value - 1 : value + 1);

/** First place in an ascending list whose value is not less. */
function firstFrom(values: readonly number[], value: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

export class Bounds {
  /** Bound by code: lower bounds at 2x, upper bounds at 2x + 1. */
  readonly bound: Float64Array;
  readonly #rules: Rules;

  // The trail: what was moved, from where to where, on which level, the entry before on the same code, and why.
  #length = 0;
  #code = new Int32Array(1024);
  #old = new Float64Array(1024);
  #level = new Int32Array(1024);
  #previous = new Int32Array(1024);
  #kind = new Int32Array(1024);
  #a = new Float64Array(1024);
  #b = new Float64Array(1024);
  #c = new Float64Array(1024);
  readonly #clauseOf: (Clause | undefined)[] = [];
  /** Last trail entry of each code, or −1. */
  readonly #latest: Int32Array;
  readonly #levels: number[] = [];
  #head = 0;

  /** By code, the literals of that code that are watched: their values, ascending, and beside each its clauses. */
  readonly #watchValues: number[][];
  readonly #watchClauses: Clause[][][];
  /** By code, the bound of which the clauses were last told. */
  readonly #told: Float64Array;
  #learnt: Clause[] = [];
  #bump = 1;

  // Scratch of `learn`: the weakest value needed of each trail entry that takes part.
  #needed = new Float64Array(1024);
  #isNeeded = new Uint8Array(1024);

  /** Literals that all hold and yet cannot; set when a bound crosses its partner. */
  conflict: number[] | undefined;
  conflicts = 0;

  /**
   * @param lower  first bounds
   * @param upper  last bounds
   */
  constructor(lower: readonly number[], upper: readonly number[], rules: Rules) {
    this.#rules = rules;
    this.bound = new Float64Array(2 * lower.length);
    lower.forEach((value, x) => (this.bound[2 * x] = value));
    upper.forEach((value, x) => (this.bound[2 * x + 1] = value));
    this.#told = Float64Array.from(this.bound);
    this.#latest = new Int32Array(2 * lower.length).fill(-1);
    this.#watchValues = Array.from({ length: 2 * lower.length }, () => []);
    this.#watchClauses = Array.from({ length: 2 * lower.length }, () => []);
  }

  get level(): number {
    return this.#levels.length;
  }

  holds(code: number, value: number): boolean {
    return (code & 1) === 0 ? this.bound[code]! >= value : this.bound[code]! <= value;
  }

  fails(code: number, value: number): boolean {
    return (code & 1) === 0 ? this.bound[code + 1]! < value : this.bound[code - 1]! > value;
  }

  /** Whether a literal held before a trail entry was made. */
  heldBefore(code: number, value: number, entry: number): boolean {
    return this.holds(code, value) && this.#entryOf(code, value) < entry;
  }

  /** Whether a literal holds whatever is decided. */
  holdsAlways(code: number, value: number): boolean {
    return this.holds(code, value) && this.#entryOf(code, value) < (this.#levels[0] ?? this.#length);
  }

  /** Makes a literal hold for good. False when it cannot: nothing is left to search. */
  give(code: number, value: number): boolean {
    return this.enforce(code, value, GIVEN, 0, 0, 0);
  }

  /** Tries a literal that neither holds nor fails. */
  decide(code: number, value: number): void {
    this.#levels.push(this.#length);
    this.enforce(code, value, DECIDED, 0, 0, 0);
  }

  /**
   * Makes a literal hold, for a reason of the rules.
   *
   * @returns false on a conflict, which then stands in `conflict`
   */
  enforce(code: number, value: number, kind: number, a: number, b: number, c: number, clause?: Clause): boolean {
    if (this.holds(code, value)) return true;
    if (this.#length + 1 >= this.#code.length) this.#grow();
    const entry = this.#length;
    this.#kind[entry] = kind;
    this.#a[entry] = a;
    this.#b[entry] = b;
    this.#c[entry] = c;
    this.#clauseOf[entry] = clause;
    if (this.fails(code, value)) {
      // The partner's bound excludes it: the reason, and the partner just beyond the wanted value, cannot both be.
      const conflict: number[] = [];
      this.#explain(conflict, entry, code, value);
      conflict.push(opposite(code), negated(code, value));
      this.conflict = conflict;
      return false;
    }
    this.#code[entry] = code;
    this.#old[entry] = this.bound[code]!;
    this.#level[entry] = this.#levels.length;
    this.#previous[entry] = this.#latest[code]!;
    this.#latest[code] = entry;
    this.bound[code] = value;
    this.#length++;
    const moved = this.#rules.adjust(code, value);
    return moved === value || this.enforce(code, moved, ADJUSTED, value, 0, 0);
  }

  #explain(into: number[], entry: number, code: number, value: number): void {
    const kind = this.#kind[entry]!;
    if (kind === CLAUSE) {
      const { literals } = this.#clauseOf[entry]!;
      for (let k = 2; k < literals.length; k += 2) into.push(opposite(literals[k]!), negated(literals[k]!, literals[k + 1]!));
    } else if (kind === ADJUSTED) into.push(code, this.#a[entry]!);
    else if (kind >= FIRST_RULE_KIND) this.#rules.explain(into, entry, code, value, kind, this.#a[entry]!, this.#b[entry]!, this.#c[entry]!);
  }

  #grow(): void {
    const size = 2 * this.#code.length;
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
    this.#code = ints(this.#code);
    this.#old = floats(this.#old);
    this.#level = ints(this.#level);
    this.#previous = ints(this.#previous);
    this.#kind = ints(this.#kind);
    this.#a = floats(this.#a);
    this.#b = floats(this.#b);
    this.#c = floats(this.#c);
    this.#needed = floats(this.#needed);
    const marks = new Uint8Array(size);
    marks.set(this.#isNeeded);
    this.#isNeeded = marks;
  }

  backTo(level: number): void {
    if (level >= this.#levels.length) return;
    const keep = this.#levels[level]!;
    for (let entry = this.#length - 1; entry >= keep; entry--) {
      const code = this.#code[entry]!;
      this.bound[code] = this.#old[entry]!;
      this.#told[code] = this.#old[entry]!;
      this.#latest[code] = this.#previous[entry]!;
    }
    this.#length = keep;
    this.#clauseOf.length = keep;
    this.#levels.length = level;
    this.#head = Math.min(this.#head, keep);
  }

  /** Runs the learnt clauses over what is new on the trail, handing each new bound to `also`. False on a conflict. */
  propagate(also: (code: number) => boolean): boolean {
    while (this.#head < this.#length) {
      const entry = this.#head++;
      const code = this.#code[entry]!;
      // Of several moves of one bound the last says all.
      if (this.#latest[code] !== entry) continue;
      if (!this.#propagateClauses(code) || !also(code)) return false;
    }
    return true;
  }

  #watch(code: number, value: number, clause: Clause): void {
    const values = this.#watchValues[code]!;
    const at = firstFrom(values, value);
    if (values[at] === value) this.#watchClauses[code]![at]!.push(clause);
    else {
      values.splice(at, 0, value);
      this.#watchClauses[code]!.splice(at, 0, [clause]);
    }
  }

  /** A bound moved: literals of the other side fail now, those between where it was and where it is. False on a conflict. */
  #propagateClauses(moved: number): boolean {
    const before = this.#told[moved]!;
    const now = this.bound[moved]!;
    this.#told[moved] = now;
    const code = opposite(moved);
    const values = this.#watchValues[code]!;
    const lists = this.#watchClauses[code]!;
    // x ≥ v fails when v lies above the upper bound, x ≤ v when v lies below the lower one.
    const low = (code & 1) === 0 ? now + 1 : before;
    const high = (code & 1) === 0 ? before : now - 1;
    for (let at = firstFrom(values, low); at < values.length && values[at]! <= high; at++) {
      const value = values[at]!;
      const clauses = lists[at]!;
      let kept = 0;
      let i = 0;
      for (; i < clauses.length && !this.conflict; i++) {
        const clause = clauses[i]!;
        if (this.#keepsWatch(code, value, clause)) clauses[kept++] = clause;
      }
      for (; i < clauses.length; i++) clauses[kept++] = clauses[i]!;
      clauses.length = kept;
      if (this.conflict) return false;
    }
    return true;
  }

  /** The watched literal fails. Finds another to watch (and returns false), or forces the one that is left. */
  #keepsWatch(code: number, value: number, clause: Clause): boolean {
    const { literals } = clause;
    if (literals[0] === code && literals[1] === value) {
      literals[0] = literals[2]!;
      literals[1] = literals[3]!;
      literals[2] = code;
      literals[3] = value;
    }
    if (this.holds(literals[0]!, literals[1]!)) return true;
    for (let k = 4; k < literals.length; k += 2) {
      const otherCode = literals[k]!;
      const otherValue = literals[k + 1]!;
      if (this.fails(otherCode, otherValue)) continue;
      literals[k] = code;
      literals[k + 1] = value;
      literals[2] = otherCode;
      literals[3] = otherValue;
      this.#watch(otherCode, otherValue, clause);
      return false;
    }
    this.#bumpClause(clause);
    this.enforce(literals[0]!, literals[1]!, CLAUSE, 0, 0, 0, clause);
    return true;
  }

  /** Trail entry that first made a literal hold, which it does; −1 when it held from the start. */
  #entryOf(code: number, value: number): number {
    let entry = this.#latest[code]!;
    if ((code & 1) === 0) while (entry >= 0 && this.#old[entry]! >= value) entry = this.#previous[entry]!;
    else while (entry >= 0 && this.#old[entry]! <= value) entry = this.#previous[entry]!;
    return entry;
  }

  /**
   * Learns from the conflict: walks back along the trail to the first cause that alone, on this level, leads to it; adds the clause
   * that forbids it together with the earlier causes, goes back to where that clause first bites, and applies it.
   *
   * @returns false when the conflict holds without any decision: nothing is left to search
   */
  learn(): boolean {
    this.conflicts++;
    const conflict = this.conflict!;
    this.conflict = undefined;
    // The conflict may lie on an earlier level than the present one, when it was found late.
    let top = 0;
    for (let i = 0; i < conflict.length; i += 2) {
      const entry = this.#entryOf(conflict[i]!, conflict[i + 1]!);
      if (entry >= 0) top = Math.max(top, this.#level[entry]!);
    }
    if (top === 0) return false;
    const base = this.#levels[0]!;
    const levelStart = this.#levels[top - 1]!;
    const marked: number[] = [];
    let open = 0;
    let at = -1;
    const add = (literals: readonly number[]): void => {
      for (let i = 0; i < literals.length; i += 2) {
        const code = literals[i]!;
        const value = literals[i + 1]!;
        const entry = this.#entryOf(code, value);
        if (entry < base) continue;
        if (this.#isNeeded[entry] === 0) {
          this.#isNeeded[entry] = 1;
          this.#needed[entry] = value;
          this.#rules.met(code, value);
          if (entry >= levelStart) {
            open++;
            if (entry > at) at = entry;
          } else marked.push(entry);
        } else if ((code & 1) === 0 ? value > this.#needed[entry]! : value < this.#needed[entry]!) this.#needed[entry] = value;
      }
    };
    add(conflict);
    const reason: number[] = [];
    for (;;) {
      while (this.#isNeeded[at] === 0) at--;
      if (open === 1) break;
      this.#isNeeded[at] = 0;
      open--;
      reason.length = 0;
      this.#explain(reason, at, this.#code[at]!, this.#needed[at]!);
      add(reason);
      at--;
    }
    const causes = this.#strongest(marked, at);
    const literals: number[] = [opposite(this.#code[at]!), negated(this.#code[at]!, this.#needed[at]!)];
    let second = 0;
    for (const entry of causes) {
      if (this.#superfluous(entry, base, reason)) continue;
      literals.push(opposite(this.#code[entry]!), negated(this.#code[entry]!, this.#needed[entry]!));
      const level = this.#level[entry]!;
      if (level > second) {
        second = level;
        const last = literals.length - 2;
        [literals[2], literals[3], literals[last], literals[last + 1]] = [literals[last]!, literals[last + 1]!, literals[2]!, literals[3]!];
      }
    }
    this.#isNeeded[at] = 0;
    for (const entry of causes) this.#isNeeded[entry] = 0;
    this.backTo(second);
    this.#bump /= 0.999;
    if (literals.length === 2) return this.give(literals[0]!, literals[1]!);
    const clause: Clause = { literals, activity: this.#bump };
    this.#learnt.push(clause);
    this.#watch(literals[0]!, literals[1]!, clause);
    this.#watch(literals[2]!, literals[3]!, clause);
    return this.enforce(literals[0]!, literals[1]!, CLAUSE, 0, 0, 0, clause);
  }

  /** Of several causes on one bound the last says most: the others are dropped, and no longer marked as needed. */
  #strongest(marked: readonly number[], last: number): number[] {
    return marked.filter((entry) => {
      let later = this.#latest[this.#code[entry]!]!;
      while (later > entry && !(later <= last && this.#isNeeded[later] === 1)) later = this.#previous[later]!;
      if (later > entry) this.#isNeeded[entry] = 0;
      return later === entry;
    });
  }

  /** A cause is superfluous when its own reason follows from the other causes. */
  #superfluous(entry: number, base: number, reason: number[]): boolean {
    if (this.#kind[entry] === DECIDED) return false;
    reason.length = 0;
    this.#explain(reason, entry, this.#code[entry]!, this.#needed[entry]!);
    for (let i = 0; i < reason.length; i += 2) {
      const cause = this.#entryOf(reason[i]!, reason[i + 1]!);
      if (cause < base) continue;
      if (this.#isNeeded[cause] === 0) return false;
      const needed = this.#needed[cause]!;
      if ((reason[i]! & 1) === 0 ? reason[i + 1]! > needed : reason[i + 1]! < needed) return false;
    }
    return true;
  }

  /** Forgets the less useful half of the clauses; only at level 0, where none of them is a reason that is asked for. */
  forget(most: number): void {
    if (this.#learnt.length <= most) return;
    const ranked = [...this.#learnt].sort((a, b) => b.activity - a.activity);
    const keep = new Set(ranked.filter((clause, i) => i < most / 2 || clause.literals.length <= 4));
    this.#learnt = this.#learnt.filter((clause) => keep.has(clause));
    for (const [code, lists] of this.#watchClauses.entries()) {
      const kept = lists.map((clauses) => clauses.filter((clause) => keep.has(clause)));
      this.#watchValues[code] = this.#watchValues[code]!.filter((_, at) => kept[at]!.length > 0);
      this.#watchClauses[code] = kept.filter((clauses) => clauses.length > 0);
    }
  }

  #bumpClause(clause: Clause): void {
    clause.activity += this.#bump;
    if (clause.activity > 1e100) {
      for (const each of this.#learnt) each.activity *= 1e-100;
      this.#bump *= 1e-100;
    }
  }
}
