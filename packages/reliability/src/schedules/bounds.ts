/**
 * Whole-number variables as a pair of bounds, a trail of how they came about, and clauses learnt from conflicts: the core of a
 * lazy clause generation solver.
 *
 * A literal speaks of one bound: code 2x says x ≥ value, code 2x + 1 says x ≤ value. It is written as two numbers, code and value.
 * Layout of a clause: [code, value, code, value, …]; at least one must hold; the first two literals are watched.
 *
 * @source Ohrimenko, Stuckey, Codish, Propagation via lazy clause generation (2009); Eén, Sörensson, An extensible SAT-solver (2003) (from memory)
 */
export type Clause = { readonly literals: number[]; activity: number };

/** What forced a bound: literals that all hold, [code, value, …]. A decision has none. */
export type Reason = readonly number[] | undefined;

const opposite = (code: number): number => code ^ 1;
/** Not (x ≥ v) is x ≤ v − 1; not (x ≤ v) is x ≥ v + 1. */
const negated = (code: number, value: number): number => ((code & 1) === 0 ? value - 1 : value + 1);

/** Why the first literal of a clause must hold: all others fail. */
function causes(literals: readonly number[]): number[] {
  const reason: number[] = [];
  for (let k = 2; k < literals.length; k += 2) reason.push(opposite(literals[k]!), negated(literals[k]!, literals[k + 1]!));
  return reason;
}

export class Bounds {
  /** Bound by code: lower bounds at 2x, upper bounds at 2x + 1. */
  readonly bound: Float64Array;
  readonly #trailCode: number[] = [];
  readonly #trailOld: number[] = [];
  readonly #trailNew: number[] = [];
  readonly #trailReason: Reason[] = [];
  /** Trail entry before this one on the same code, or −1. */
  readonly #trailPrevious: number[] = [];
  readonly #latest: Int32Array;
  readonly #levels: number[] = [];
  /** By code, the literals of that code that are watched: their values, and beside each its clause. */
  readonly #watchValues: number[][];
  readonly #watchClauses: Clause[][];
  readonly #adjust: (code: number, value: number) => number;
  #learnt: Clause[] = [];
  #bump = 1;
  #head = 0;
  /** Literals that all hold and yet cannot; set when a bound crosses its partner. */
  conflict: Reason;
  readonly activity = new Map<number, number>();
  #literalBump = 1;
  conflicts = 0;

  /**
   * @param lower   first bounds
   * @param upper   last bounds
   * @param adjust  moves a bound on to the next allowed value (out of the gaps between windows)
   */
  constructor(lower: readonly number[], upper: readonly number[], adjust: (code: number, value: number) => number) {
    this.bound = new Float64Array(2 * lower.length);
    lower.forEach((value, x) => (this.bound[2 * x] = value));
    upper.forEach((value, x) => (this.bound[2 * x + 1] = value));
    this.#latest = new Int32Array(2 * lower.length).fill(-1);
    this.#watchValues = Array.from({ length: 2 * lower.length }, () => []);
    this.#watchClauses = Array.from({ length: 2 * lower.length }, () => []);
    this.#adjust = adjust;
  }

  get level(): number {
    return this.#levels.length;
  }

  get trailLength(): number {
    return this.#trailCode.length;
  }

  codeAt(entry: number): number {
    return this.#trailCode[entry]!;
  }

  holds(code: number, value: number): boolean {
    return (code & 1) === 0 ? this.bound[code]! >= value : this.bound[code]! <= value;
  }

  fails(code: number, value: number): boolean {
    return (code & 1) === 0 ? this.bound[code + 1]! < value : this.bound[code - 1]! > value;
  }

  /**
   * Makes a literal hold, because those of the reason do.
   *
   * @returns false on a conflict, which then stands in `conflict`
   */
  enforce(code: number, value: number, reason: Reason): boolean {
    if (this.holds(code, value)) return true;
    if (this.fails(code, value)) {
      // The partner's bound excludes it: the reason, and the partner just beyond the wanted value, cannot both be.
      this.conflict = [...(reason ?? []), opposite(code), negated(code, value)];
      return false;
    }
    this.#push(code, value, reason);
    const moved = this.#adjust(code, value);
    return moved === value ? true : this.enforce(code, moved, [code, value]);
  }

  #push(code: number, value: number, reason: Reason): void {
    this.#trailPrevious.push(this.#latest[code]!);
    this.#latest[code] = this.#trailCode.length;
    this.#trailCode.push(code);
    this.#trailOld.push(this.bound[code]!);
    this.#trailNew.push(value);
    this.#trailReason.push(reason);
    this.bound[code] = value;
  }

  decide(code: number, value: number): boolean {
    this.#levels.push(this.#trailCode.length);
    return this.enforce(code, value, undefined);
  }

  backTo(level: number): void {
    if (level >= this.#levels.length) return;
    const keep = this.#levels[level]!;
    for (let entry = this.#trailCode.length - 1; entry >= keep; entry--) {
      const code = this.#trailCode[entry]!;
      this.bound[code] = this.#trailOld[entry]!;
      this.#latest[code] = this.#trailPrevious[entry]!;
    }
    for (const list of [this.#trailCode, this.#trailOld, this.#trailNew, this.#trailReason, this.#trailPrevious]) list.length = keep;
    this.#levels.length = level;
    this.#head = Math.min(this.#head, keep);
  }

  /** Runs the learnt clauses over what is new on the trail, handing each new bound to `also`. False on a conflict. */
  propagate(also: (code: number) => boolean): boolean {
    while (this.#head < this.#trailCode.length) {
      const code = this.#trailCode[this.#head++]!;
      if (!this.#propagateClauses(opposite(code)) || !also(code)) return false;
    }
    return true;
  }

  #watch(code: number, value: number, clause: Clause): void {
    this.#watchValues[code]!.push(value);
    this.#watchClauses[code]!.push(clause);
  }

  /** A bound on one side moved: literals of the other side (`code`) may fail now. False on a conflict. */
  #propagateClauses(code: number): boolean {
    const values = this.#watchValues[code]!;
    const clauses = this.#watchClauses[code]!;
    // x ≥ v fails when the upper bound lies below v, x ≤ v when the lower bound lies above.
    const sign = (code & 1) === 0 ? 1 : -1;
    const partner = sign * this.bound[code ^ 1]!;
    let kept = 0;
    let sound = true;
    for (let i = 0; i < values.length; i++) {
      const value = values[i]!;
      const clause = clauses[i]!;
      if (!sound || sign * value <= partner || this.#keepsWatch(code, value, clause)) {
        values[kept] = value;
        clauses[kept++] = clause;
        if (sound && this.conflict) sound = false;
      }
    }
    values.length = kept;
    clauses.length = kept;
    return sound;
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
    this.enforce(literals[0]!, literals[1]!, causes(literals));
    return true;
  }

  /** Trail entry that first made a literal hold; −1 when it held from the start. */
  #entryOf(code: number, value: number): number {
    let entry = this.#latest[code]!;
    while (entry >= 0) {
      const old = this.#trailOld[entry]!;
      if ((code & 1) === 0 ? old < value : old > value) return entry;
      entry = this.#trailPrevious[entry]!;
    }
    return -1;
  }

  /**
   * Learns from the conflict: walks back along the trail to the first cause that alone, on this level, leads to it; adds the clause
   * that forbids it together with the earlier causes, goes back to where that clause first bites, and applies it.
   *
   * @returns false when the conflict holds without any decision: nothing is left to search
   */
  learn(): boolean {
    this.conflicts++;
    const base = this.#levels[0] ?? this.#trailCode.length;
    // Weakest value needed of each trail entry that takes part.
    const needed = new Map<number, number>();
    let open = 0;
    let start = -1;
    // The conflict may lie on an earlier level than the present one, when it was found late.
    const levelOf = (entry: number): number => {
      let low = 0;
      let high = this.#levels.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (this.#levels[middle]! <= entry) low = middle + 1;
        else high = middle;
      }
      return low;
    };
    const conflict = this.conflict!;
    let top = 0;
    for (let i = 0; i < conflict.length; i += 2) {
      const entry = this.#entryOf(conflict[i]!, conflict[i + 1]!);
      if (entry >= base) top = Math.max(top, levelOf(entry));
    }
    if (top === 0) return false;
    const levelStart = this.#levels[top - 1]!;
    const add = (code: number, value: number): void => {
      const entry = this.#entryOf(code, value);
      if (entry < base) return;
      const before = needed.get(entry);
      if (before === undefined) {
        needed.set(entry, value);
        this.#bumpLiteral(code, value);
        if (entry >= levelStart) {
          open++;
          start = Math.max(start, entry);
        }
      } else if ((code & 1) === 0 ? value > before : value < before) needed.set(entry, value);
    };
    for (let i = 0; i < conflict.length; i += 2) add(conflict[i]!, conflict[i + 1]!);
    let at = start;
    for (;;) {
      while (!needed.has(at)) at--;
      if (open === 1) break;
      needed.delete(at);
      open--;
      const reason = this.#trailReason[at]!;
      for (let i = 0; i < reason.length; i += 2) add(reason[i]!, reason[i + 1]!);
      at--;
    }

    const literals: number[] = [opposite(this.#trailCode[at]!), negated(this.#trailCode[at]!, needed.get(at)!)];
    needed.delete(at);
    let second = 0;
    for (const [entry, value] of needed) {
      if (this.#redundant(entry, needed, base)) continue;
      literals.push(opposite(this.#trailCode[entry]!), negated(this.#trailCode[entry]!, value));
      const level = levelOf(entry);
      if (level > second) {
        second = level;
        const last = literals.length - 2;
        [literals[2], literals[3], literals[last], literals[last + 1]] = [literals[last]!, literals[last + 1]!, literals[2]!, literals[3]!];
      }
    }
    this.backTo(second);
    this.conflict = undefined;
    this.#bump /= 0.999;
    this.#literalBump /= 0.95;
    if (this.#literalBump > 1e100) this.#rescale();
    if (literals.length === 2) {
      return this.enforce(literals[0]!, literals[1]!, []);
    }
    const clause: Clause = { literals, activity: this.#bump };
    this.#learnt.push(clause);
    this.#watch(literals[0]!, literals[1]!, clause);
    this.#watch(literals[2]!, literals[3]!, clause);
    return this.enforce(literals[0]!, literals[1]!, causes(literals));
  }

  /** A cause is superfluous when its own reason follows from the other causes. */
  #redundant(entry: number, needed: ReadonlyMap<number, number>, base: number): boolean {
    const reason = this.#trailReason[entry];
    if (!reason) return false;
    for (let i = 0; i < reason.length; i += 2) {
      const cause = this.#entryOf(reason[i]!, reason[i + 1]!);
      if (cause < base) continue;
      const value = needed.get(cause);
      if (value === undefined || cause === entry) return false;
      if ((reason[i]! & 1) === 0 ? reason[i + 1]! > value : reason[i + 1]! < value) return false;
    }
    return true;
  }

  /** Forgets the less useful half of the clauses; only at level 0, where none of them is a reason. */
  forget(most: number): void {
    if (this.#learnt.length <= most) return;
    const ranked = [...this.#learnt].sort((a, b) => b.activity - a.activity);
    const keep = new Set(ranked.filter((clause, i) => i < most / 2 || clause.literals.length <= 4));
    this.#learnt = this.#learnt.filter((clause) => keep.has(clause));
    for (const [code, clauses] of this.#watchClauses.entries()) {
      this.#watchValues[code] = this.#watchValues[code]!.filter((_, i) => keep.has(clauses[i]!));
      this.#watchClauses[code] = clauses.filter((clause) => keep.has(clause));
    }
  }

  #bumpClause(clause: Clause): void {
    clause.activity += this.#bump;
    if (clause.activity > 1e100) {
      for (const each of this.#learnt) each.activity *= 1e-100;
      this.#bump *= 1e-100;
    }
  }

  /** Literals are kept as x ≥ v; x ≤ v counts as x ≥ v + 1. */
  #bumpLiteral(code: number, value: number): void {
    const key = (code >> 1) * 2 ** 40 + ((code & 1) === 0 ? value : value + 1);
    this.activity.set(key, (this.activity.get(key) ?? 0) + this.#literalBump);
  }

  #rescale(): void {
    for (const [key, value] of this.activity) {
      if (value * 1e-100 < 1e-20) this.activity.delete(key);
      else this.activity.set(key, value * 1e-100);
    }
    this.#literalBump *= 1e-100;
  }
}
