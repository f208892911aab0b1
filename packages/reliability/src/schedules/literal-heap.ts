/** More literals than this are thinned out to the busier half. */
const MOST = 40_000;

/**
 * Which literals take part in conflicts, the busiest of late at the top. Literals are kept as x ≥ value; x ≤ value counts as
 * x ≥ value + 1.
 *
 * Layout: literal k is x[k] ≥ value[k] with activity[k]; heap[0 … size − 1] are literals, place[k] says where, −1 when taken out.
 */
export class LiteralHeap {
  readonly #known: Map<number, number>[];
  #x: number[] = [];
  #value: number[] = [];
  #activity: number[] = [];
  #heap: number[] = [];
  #place: number[] = [];
  /** Literals taken out since the search last went back, and how many there were when each level began. */
  #taken: number[] = [];
  #bump = 1;

  constructor(variables: number) {
    this.#known = Array.from({ length: variables }, () => new Map<number, number>());
  }

  met(code: number, bound: number): void {
    const x = code >> 1;
    const value = (code & 1) === 0 ? bound : bound + 1;
    let k = this.#known[x]!.get(value);
    if (k === undefined) {
      k = this.#x.length;
      this.#known[x]!.set(value, k);
      this.#x.push(x);
      this.#value.push(value);
      this.#activity.push(0);
      this.#place.push(-1);
      this.#putBack(k);
    }
    this.#activity[k]! += this.#bump;
    if (this.#place[k]! >= 0) this.#up(this.#place[k]!);
  }

  /** To be called after each conflict: what is met later counts for more. */
  age(): void {
    this.#bump /= 0.95;
    if (this.#bump > 1e100) {
      this.#activity = this.#activity.map((activity) => activity * 1e-100);
      this.#bump *= 1e-100;
    }
  }

  /** The busiest literal that is open, as [x, value]; it is out of the heap until `restore`. */
  next(isOpen: (x: number, value: number) => boolean): readonly [number, number] | undefined {
    while (this.#heap.length > 0) {
      const k = this.#heap[0]!;
      this.#takeTop();
      this.#taken.push(k);
      if (isOpen(this.#x[k]!, this.#value[k]!)) return [this.#x[k]!, this.#value[k]!];
    }
    return undefined;
  }

  /** The search went back: whatever was taken out may be open again. */
  restore(): void {
    for (const k of this.#taken) if (this.#place[k]! < 0) this.#putBack(k);
    this.#taken = [];
    if (this.#x.length > MOST) this.#thin();
  }

  #thin(): void {
    const kept = this.#x.map((_, k) => k).sort((a, b) => this.#activity[b]! - this.#activity[a]!).slice(0, MOST / 2);
    for (const known of this.#known) known.clear();
    const [x, value, activity] = [this.#x, this.#value, this.#activity];
    this.#x = kept.map((k) => x[k]!);
    this.#value = kept.map((k) => value[k]!);
    this.#activity = kept.map((k) => activity[k]!);
    this.#x.forEach((each, k) => this.#known[each]!.set(this.#value[k]!, k));
    // Sorted from the busiest down is a heap.
    this.#heap = kept.map((_, k) => k);
    this.#place = kept.map((_, k) => k);
  }

  #putBack(k: number): void {
    this.#place[k] = this.#heap.length;
    this.#heap.push(k);
    this.#up(this.#place[k]!);
  }

  #takeTop(): void {
    const top = this.#heap[0]!;
    const last = this.#heap.pop()!;
    this.#place[top] = -1;
    if (this.#heap.length === 0) return;
    this.#heap[0] = last;
    this.#place[last] = 0;
    this.#down();
  }

  #up(at: number): void {
    const heap = this.#heap;
    const k = heap[at]!;
    const own = this.#activity[k]!;
    while (at > 0) {
      const above = (at - 1) >> 1;
      const other = heap[above]!;
      if (this.#activity[other]! >= own) break;
      heap[at] = other;
      this.#place[other] = at;
      at = above;
    }
    heap[at] = k;
    this.#place[k] = at;
  }

  #down(): void {
    const heap = this.#heap;
    const k = heap[0]!;
    const own = this.#activity[k]!;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= heap.length) break;
      if (below + 1 < heap.length && this.#activity[heap[below + 1]!]! > this.#activity[heap[below]!]!) below++;
      const other = heap[below]!;
      if (this.#activity[other]! <= own) break;
      heap[at] = other;
      this.#place[other] = at;
      at = below;
    }
    heap[at] = k;
    this.#place[k] = at;
  }
}
