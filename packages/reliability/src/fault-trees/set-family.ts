/** Handle of a family of event sets inside one `SetFamilies`. */
export type Family = number;

/** The family without sets, and the family that holds the empty set alone. */
export const nothing: Family = 0;
export const always: Family = 1;

/**
 * Families of sets of events, each free of supersets, as zero-suppressed decision diagrams with sharing.
 *
 * Layout: node i has event `event[i]`, the sets without it below `low[i]` and those with it below `high[i]`; events ascend downwards.
 * Nodes 0 and 1 are the terminals. Equal families have equal handles. Sets of more than `limit` events are dropped as they arise.
 *
 * @source Minato, Zero-suppressed BDDs for set manipulation in combinatorial problems (1993); Rauzy, New algorithms for fault tree
 *         analysis (1993), the operator "without" (from memory)
 */
export class SetFamilies {
  readonly #limit: number;
  readonly #events: number;
  #event = new Int32Array(1 << 12);
  #low = new Int32Array(1 << 12);
  #high = new Int32Array(1 << 12);
  #next = new Int32Array(1 << 12);
  #count = 2;
  #buckets = new Int32Array(1 << 13).fill(-1);
  readonly #union = new PairCache();
  /** One table for each number of events that there is still room for. */
  readonly #product: PairCache[] = [];
  readonly #without = new PairCache();

  /**
   * @param events  number of events; they are 0 … events − 1
   * @param limit   largest order of interest
   */
  constructor(events: number, limit: number) {
    this.#events = events;
    this.#limit = Math.min(limit, events);
    this.#event[0] = this.#event[1] = events;
  }

  /** The family of the one set {event}. */
  single(event: number): Family {
    return this.#limit < 1 ? nothing : this.#node(event, nothing, always);
  }

  /** Sets of either family, supersets dropped. */
  union(f: Family, g: Family): Family {
    if (f === nothing || f === g) return g;
    if (g === nothing) return f;
    if (f === always || g === always) return always;
    if (f > g) [f, g] = [g, f];
    const known = this.#union.get(f, g);
    if (known >= 0) return known;
    const a = this.#event[f]!;
    const b = this.#event[g]!;
    let result: Family;
    if (a === b) {
      const low = this.union(this.#low[f]!, this.#low[g]!);
      result = this.#node(a, low, this.without(this.union(this.#high[f]!, this.#high[g]!), low));
    } else {
      const [upper, other, event] = a < b ? [f, g, a] : [g, f, b];
      const low = this.union(this.#low[upper]!, other);
      result = this.#node(event, low, this.without(this.#high[upper]!, low));
    }
    this.#union.set(f, g, result);
    return result;
  }

  /** Every union of a set of f with a set of g, supersets and sets over the limit dropped. */
  product(f: Family, g: Family): Family {
    return this.#productWithin(f, g, this.#limit);
  }

  #productWithin(f: Family, g: Family, space: number): Family {
    if (f === nothing || g === nothing) return nothing;
    if (f === always || f === g) return this.#trim(g, space);
    if (g === always) return this.#trim(f, space);
    if (space === 0) return nothing;
    if (f > g) [f, g] = [g, f];
    const a = this.#event[f]!;
    const b = this.#event[g]!;
    // Where all events that are left fit, how much more would fit makes no difference, and the table is shared.
    const room = Math.min(space, this.#events - Math.min(a, b));
    const cache = this.#tableFor(room === space ? room : this.#events);
    const known = cache.get(f, g);
    if (known >= 0) return known;
    let result: Family;
    if (a === b) {
      const f0 = this.#low[f]!;
      const g0 = this.#low[g]!;
      const f1 = this.#high[f]!;
      const g1 = this.#high[g]!;
      const low = this.#productWithin(f0, g0, space);
      // With the event: f1·g1 ∪ f1·g0 ∪ f0·g1 = f1·(g1 ∪ g0) ∪ f0·g1.
      const high = this.union(this.#productWithin(f1, this.union(g1, g0), space - 1), this.#productWithin(f0, g1, space - 1));
      result = this.#node(a, low, this.without(high, low));
    } else {
      const [upper, other, event] = a < b ? [f, g, a] : [g, f, b];
      const low = this.#productWithin(this.#low[upper]!, other, space);
      const high = this.#productWithin(this.#high[upper]!, other, space - 1);
      result = this.#node(event, low, this.without(high, low));
    }
    cache.set(f, g, result);
    return result;
  }

  /** The sets of f that have at most `room` events. */
  #trim(f: Family, room: number): Family {
    if (f <= always || room >= Math.min(this.#limit, this.#events - this.#event[f]!)) return f;
    if (room === 0) return nothing;
    const cache = this.#tableFor(room);
    const known = cache.get(always, f);
    if (known >= 0) return known;
    const result = this.#node(this.#event[f]!, this.#trim(this.#low[f]!, room), this.#trim(this.#high[f]!, room - 1));
    cache.set(always, f, result);
    return result;
  }

  #tableFor(room: number): PairCache {
    return (this.#product[room] ??= new PairCache());
  }

  /** The sets of f that hold no set of g. */
  without(f: Family, g: Family): Family {
    if (f === nothing || g === nothing) return f;
    if (g === always || f === g) return nothing;
    if (f === always) return always;
    const known = this.#without.get(f, g);
    if (known >= 0) return known;
    const a = this.#event[f]!;
    const b = this.#event[g]!;
    let result: Family;
    if (a > b) result = this.without(f, this.#low[g]!);
    else if (a < b) result = this.#node(a, this.without(this.#low[f]!, g), this.without(this.#high[f]!, g));
    else {
      const low = this.#low[g]!;
      result = this.#node(a, this.without(this.#low[f]!, low), this.without(this.without(this.#high[f]!, low), this.#high[g]!));
    }
    this.#without.set(f, g, result);
    return result;
  }

  /** How many sets of each order (number of events) the family has; index = order. */
  countByOrder(f: Family): number[] {
    const known = new Map<Family, number[]>([
      [nothing, []],
      [always, [1]],
    ]);
    const count = (g: Family): number[] => {
      const before = known.get(g);
      if (before) return before;
      const low = count(this.#low[g]!);
      const high = count(this.#high[g]!);
      const sum = Array.from({ length: Math.max(low.length, high.length + 1) }, (_, order) => (low[order] ?? 0) + (high[order - 1] ?? 0));
      known.set(g, sum);
      return sum;
    };
    return count(f);
  }

  /** Hands over set after set, each ascending; the array is the same every time. */
  each(f: Family, take: (set: readonly number[]) => void): void {
    const path: number[] = [];
    const walk = (g: Family): void => {
      if (g === nothing) return;
      if (g === always) {
        take(path);
        return;
      }
      path.push(this.#event[g]!);
      walk(this.#high[g]!);
      path.pop();
      walk(this.#low[g]!);
    };
    walk(f);
  }

  /**
   * Sum over all sets of the product of their events' probabilities, and of that sum the part of the sets that hold each event.
   *
   * @param probabilities  of each event, 0 to 1
   */
  sumOfProducts(f: Family, probabilities: readonly number[]): { sum: number; withEvent: Float64Array } {
    const withEvent = new Float64Array(this.#events);
    const order = this.#below(f);
    const sums = new Map<Family, number>([[nothing, 0], [always, 1]]);
    for (const node of order) sums.set(node, sums.get(this.#low[node]!)! + probabilities[this.#event[node]!]! * sums.get(this.#high[node]!)!);
    const reach = new Map<Family, number>([[f, 1]]);
    for (const node of order.toReversed()) {
      const here = reach.get(node)!;
      const p = probabilities[this.#event[node]!]!;
      const high = this.#high[node]!;
      const low = this.#low[node]!;
      withEvent[this.#event[node]!]! += here * p * sums.get(high)!;
      reach.set(high, (reach.get(high) ?? 0) + here * p);
      reach.set(low, (reach.get(low) ?? 0) + here);
    }
    return { sum: sums.get(f)!, withEvent };
  }

  /** Nodes of f, each after those below it. */
  #below(f: Family): Family[] {
    const order: Family[] = [];
    const seen = new Set<Family>([nothing, always]);
    const visit = (node: Family): void => {
      if (seen.has(node)) return;
      seen.add(node);
      visit(this.#low[node]!);
      visit(this.#high[node]!);
      order.push(node);
    };
    visit(f);
    return order;
  }

  #node(event: number, low: Family, high: Family): Family {
    if (high === nothing) return low;
    const slot = mix(event, low, high) & (this.#buckets.length - 1);
    for (let i = this.#buckets[slot]!; i >= 0; i = this.#next[i]!) {
      if (this.#event[i] === event && this.#low[i] === low && this.#high[i] === high) return i;
    }
    const made = this.#count++;
    if (made === this.#event.length) this.#grow();
    this.#event[made] = event;
    this.#low[made] = low;
    this.#high[made] = high;
    const home = mix(event, low, high) & (this.#buckets.length - 1);
    this.#next[made] = this.#buckets[home]!;
    this.#buckets[home] = made;
    return made;
  }

  #grow(): void {
    const size = this.#event.length * 2;
    const wider = (old: Int32Array): Int32Array<ArrayBuffer> => {
      const next = new Int32Array(size);
      next.set(old);
      return next;
    };
    this.#event = wider(this.#event);
    this.#low = wider(this.#low);
    this.#high = wider(this.#high);
    this.#next = wider(this.#next);
    this.#buckets = new Int32Array(size * 2).fill(-1);
    for (let i = 2; i < this.#count - 1; i++) {
      const home = mix(this.#event[i]!, this.#low[i]!, this.#high[i]!) & (this.#buckets.length - 1);
      this.#next[i] = this.#buckets[home]!;
      this.#buckets[home] = i;
    }
  }
}

function mix(a: number, b: number, c: number): number {
  let h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b) ^ Math.imul(c, 0xc2b2ae35);
  h ^= h >>> 15;
  h = Math.imul(h, 0x2c1b3c6d);
  return h ^ (h >>> 13);
}

/** A table from pairs of handles to a handle; open addressing, grows, forgets nothing. */
class PairCache {
  #first = new Int32Array(1 << 8).fill(-1);
  #second = new Int32Array(1 << 8);
  #value = new Int32Array(1 << 8);
  #count = 0;

  get(f: number, g: number): number {
    const mask = this.#first.length - 1;
    for (let i = mix(f, g, 7) & mask; ; i = (i + 1) & mask) {
      if (this.#first[i] === f && this.#second[i] === g) return this.#value[i]!;
      if (this.#first[i] === -1) return -1;
    }
  }

  set(f: number, g: number, value: number): void {
    if (this.#count * 2 >= this.#first.length) {
      const [first, second, values] = [this.#first, this.#second, this.#value];
      this.#first = new Int32Array(first.length * 4).fill(-1);
      this.#second = new Int32Array(first.length * 4);
      this.#value = new Int32Array(first.length * 4);
      this.#count = 0;
      for (let i = 0; i < first.length; i++) if (first[i] !== -1) this.#put(first[i]!, second[i]!, values[i]!);
    }
    this.#put(f, g, value);
  }

  #put(f: number, g: number, value: number): void {
    const mask = this.#first.length - 1;
    let i = mix(f, g, 7) & mask;
    while (this.#first[i] !== -1) i = (i + 1) & mask;
    this.#first[i] = f;
    this.#second[i] = g;
    this.#value[i] = value;
    this.#count++;
  }
}
