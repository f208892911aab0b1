import { DECIDED, negated, opposite, type Trail } from './trail.ts';

/** What a conflict teaches: a clause, of which the first literal is forced once everything above `level` is taken back. */
export interface Lesson {
  readonly literals: number[];
  readonly level: number;
}

/** Learns from conflicts on a trail: what of it must not come about together again. */
export class Learner {
  readonly #trail: Trail;
  readonly #met: (code: number, value: number) => void;
  // Scratch: the weakest value needed of each trail entry that takes part.
  #needed = new Float64Array(1024);
  #isNeeded = new Uint8Array(1024);

  /** @param met  told of each literal that takes part in a conflict */
  constructor(trail: Trail, met: (code: number, value: number) => void) {
    this.#trail = trail;
    this.#met = met;
  }

  /**
   * Walks back along the trail to the first cause that alone, on the level of the conflict, leads to it; what it teaches forbids
   * that cause together with the earlier ones.
   *
   * @param conflict  literals that all hold and yet cannot
   * @returns nothing when the conflict holds without any decision: nothing is left to search
   */
  from(conflict: readonly number[]): Lesson | undefined {
    const trail = this.#trail;
    if (this.#needed.length < trail.code.length) {
      this.#needed = new Float64Array(trail.code.length);
      this.#isNeeded = new Uint8Array(trail.code.length);
    }
    // The conflict may lie on an earlier level than the present one, when it was found late.
    let top = 0;
    for (let i = 0; i < conflict.length; i += 2) {
      const entry = trail.entryOf(conflict[i]!, conflict[i + 1]!);
      if (entry >= 0) top = Math.max(top, trail.level[entry]!);
    }
    if (top === 0) return undefined;
    const base = trail.levels[0]!;
    const levelStart = trail.levels[top - 1]!;
    const marked: number[] = [];
    let open = 0;
    let at = -1;
    const add = (literals: readonly number[]): void => {
      for (let i = 0; i < literals.length; i += 2) {
        const code = literals[i]!;
        const value = literals[i + 1]!;
        const entry = trail.entryOf(code, value);
        if (entry < base) continue;
        if (this.#isNeeded[entry] === 0) {
          this.#isNeeded[entry] = 1;
          this.#needed[entry] = value;
          this.#met(code, value);
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
      trail.explain(reason, at, trail.code[at]!, this.#needed[at]!);
      add(reason);
      at--;
    }
    const causes = this.#strongest(marked, at);
    const literals: number[] = [opposite(trail.code[at]!), negated(trail.code[at]!, this.#needed[at]!)];
    let second = 0;
    for (const entry of causes) {
      if (this.#superfluous(entry, base, reason)) continue;
      literals.push(opposite(trail.code[entry]!), negated(trail.code[entry]!, this.#needed[entry]!));
      const level = trail.level[entry]!;
      if (level > second) {
        second = level;
        const last = literals.length - 2;
        [literals[2], literals[3], literals[last], literals[last + 1]] = [literals[last]!, literals[last + 1]!, literals[2]!, literals[3]!];
      }
    }
    this.#isNeeded[at] = 0;
    for (const entry of causes) this.#isNeeded[entry] = 0;
    return { literals, level: second };
  }

  /** Of several causes on one bound the last says most: the others are dropped, and no longer marked as needed. */
  #strongest(marked: readonly number[], last: number): number[] {
    const trail = this.#trail;
    return marked.filter((entry) => {
      let later = trail.latest[trail.code[entry]!]!;
      while (later > entry && !(later <= last && this.#isNeeded[later] === 1)) later = trail.previous[later]!;
      if (later > entry) this.#isNeeded[entry] = 0;
      return later === entry;
    });
  }

  /** A cause is superfluous when its own reason follows from the other causes. */
  #superfluous(entry: number, base: number, reason: number[]): boolean {
    const trail = this.#trail;
    if (trail.kind[entry] === DECIDED) return false;
    reason.length = 0;
    trail.explain(reason, entry, trail.code[entry]!, this.#needed[entry]!);
    for (let i = 0; i < reason.length; i += 2) {
      const cause = trail.entryOf(reason[i]!, reason[i + 1]!);
      if (cause < base) continue;
      if (this.#isNeeded[cause] === 0) return false;
      const needed = this.#needed[cause]!;
      if ((reason[i]! & 1) === 0 ? reason[i + 1]! > needed : reason[i + 1]! < needed) return false;
    }
    return true;
  }
}
