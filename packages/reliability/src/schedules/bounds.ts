/**
 * Whole-number variables as a pair of bounds, a trail of how they came about, and clauses learnt from conflicts: the core of a
 * lazy clause generation solver.
 *
 * A literal speaks of one bound: code 2x says x ≥ value, code 2x + 1 says x ≤ value. It is written as two numbers, code and value;
 * lists of literals are [code, value, code, value, …].
 *
 * @source Ohrimenko, Stuckey, Codish, Propagation via lazy clause generation (2009); Eén, Sörensson, An extensible SAT-solver (2003) (from memory)
 */
import { Learner } from './learning.ts';
import { ADJUSTED, CLAUSE, DECIDED, GIVEN, negated, opposite, Trail, type Clause, type Reasons } from './trail.ts';

/** What moved a bound: a kind, and three numbers that mean what the kind says. */
export interface Rules extends Reasons {
  /** Moves a bound on to the next allowed value (out of the gaps between windows). */
  readonly adjust: (code: number, value: number) => number;
  /** A literal took part in a conflict. */
  readonly met: (code: number, value: number) => void;
}

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
  readonly #trail: Trail;
  readonly #learner: Learner;
  /** Trail entry that the clauses are told of next. */
  #head = 0;

  /** By code, the literals of that code that are watched: their values, ascending, and beside each its clauses. */
  readonly #watchValues: number[][];
  readonly #watchClauses: Clause[][][];
  /** By code, the bound of which the clauses were last told. */
  readonly #told: Float64Array;
  #learnt: Clause[] = [];
  #bump = 1;

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
    this.#trail = new Trail(2 * lower.length, rules);
    this.#learner = new Learner(this.#trail, rules.met);
    this.#watchValues = Array.from({ length: 2 * lower.length }, () => []);
    this.#watchClauses = Array.from({ length: 2 * lower.length }, () => []);
  }

  get level(): number {
    return this.#trail.levels.length;
  }

  holds(code: number, value: number): boolean {
    return (code & 1) === 0 ? this.bound[code]! >= value : this.bound[code]! <= value;
  }

  fails(code: number, value: number): boolean {
    return (code & 1) === 0 ? this.bound[code + 1]! < value : this.bound[code - 1]! > value;
  }

  /** Whether a literal held before a trail entry was made. */
  heldBefore(code: number, value: number, entry: number): boolean {
    return this.holds(code, value) && this.#trail.entryOf(code, value) < entry;
  }

  /** Whether a literal holds whatever is decided. */
  holdsAlways(code: number, value: number): boolean {
    return this.holds(code, value) && this.#trail.entryOf(code, value) < (this.#trail.levels[0] ?? this.#trail.length);
  }

  /** Makes a literal hold for good. False when it cannot: nothing is left to search. */
  give(code: number, value: number): boolean {
    return this.enforce(code, value, GIVEN, 0, 0, 0);
  }

  /** Tries a literal that neither holds nor fails. */
  decide(code: number, value: number): void {
    this.#trail.levels.push(this.#trail.length);
    this.enforce(code, value, DECIDED, 0, 0, 0);
  }

  /**
   * Makes a literal hold, for a reason of the rules.
   *
   * @returns false on a conflict, which then stands in `conflict`
   */
  enforce(code: number, value: number, kind: number, a: number, b: number, c: number, clause?: Clause): boolean {
    if (this.holds(code, value)) return true;
    const trail = this.#trail;
    trail.because(kind, a, b, c, clause);
    if (this.fails(code, value)) {
      // The partner's bound excludes it: the reason, and the partner just beyond the wanted value, cannot both be.
      const conflict: number[] = [];
      trail.explain(conflict, trail.length, code, value);
      conflict.push(opposite(code), negated(code, value));
      this.conflict = conflict;
      return false;
    }
    trail.push(code, this.bound[code]!);
    this.bound[code] = value;
    const moved = this.#rules.adjust(code, value);
    return moved === value || this.enforce(code, moved, ADJUSTED, value, 0, 0);
  }

  backTo(level: number): void {
    const trail = this.#trail;
    if (level >= trail.levels.length) return;
    const keep = trail.levels[level]!;
    for (let entry = trail.length - 1; entry >= keep; entry--) {
      const code = trail.code[entry]!;
      this.bound[code] = trail.old[entry]!;
      this.#told[code] = trail.old[entry]!;
      trail.latest[code] = trail.previous[entry]!;
    }
    trail.cut(level);
    this.#head = Math.min(this.#head, keep);
  }

  /** Runs the learnt clauses over what is new on the trail, handing each new bound to `also`. False on a conflict. */
  propagate(also: (code: number) => boolean): boolean {
    while (this.#head < this.#trail.length) {
      const entry = this.#head++;
      const code = this.#trail.code[entry]!;
      // Of several moves of one bound the last says all.
      if (this.#trail.latest[code] !== entry) continue;
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

  /**
   * Learns from the conflict: adds the clause that it teaches, goes back to where that clause first bites, and applies it.
   *
   * @returns false when the conflict holds without any decision: nothing is left to search
   */
  learn(): boolean {
    this.conflicts++;
    const lesson = this.#learner.from(this.conflict!);
    this.conflict = undefined;
    if (lesson === undefined) return false;
    const { literals, level } = lesson;
    this.backTo(level);
    this.#bump /= 0.999;
    if (literals.length === 2) return this.give(literals[0]!, literals[1]!);
    const clause: Clause = { literals, activity: this.#bump };
    this.#learnt.push(clause);
    this.#watch(literals[0]!, literals[1]!, clause);
    this.#watch(literals[2]!, literals[3]!, clause);
    return this.enforce(literals[0]!, literals[1]!, CLAUSE, 0, 0, 0, clause);
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
