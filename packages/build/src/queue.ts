/** Items that come out by their rank, the lowest first; of equal ones the one that went in last. A binary heap. */
export class Queue<Item> {
  readonly #rank: (item: Item) => number;
  readonly #heap: { readonly item: Item; readonly rank: number; readonly turn: number }[] = [];
  #turns = 0;

  constructor(rank: (item: Item) => number) {
    this.#rank = rank;
  }

  push(item: Item): void {
    this.#heap.push({ item, rank: this.#rank(item), turn: this.#turns });
    this.#turns += 1;
    let at = this.#heap.length - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.#isBefore(at, parent)) break;
      this.#swap(at, parent);
      at = parent;
    }
  }

  pop(): Item | undefined {
    const [first] = this.#heap;
    const last = this.#heap.pop();
    if (first === undefined || last === undefined) return undefined;
    if (this.#heap.length > 0) this.#heap[0] = last;
    for (let at = 0; ; ) {
      const children = [2 * at + 1, 2 * at + 2].filter((child) => child < this.#heap.length && this.#isBefore(child, at));
      const [left, right] = children;
      if (left === undefined) break;
      const least = right !== undefined && this.#isBefore(right, left) ? right : left;
      this.#swap(at, least);
      at = least;
    }
    return first.item;
  }

  #isBefore(a: number, b: number): boolean {
    const [one, other] = [this.#heap[a], this.#heap[b]];
    if (one === undefined || other === undefined) return false;
    return one.rank < other.rank || (one.rank === other.rank && one.turn > other.turn);
  }

  #swap(a: number, b: number): void {
    const [one, other] = [this.#heap[a], this.#heap[b]];
    if (one === undefined || other === undefined) return;
    this.#heap[a] = other;
    this.#heap[b] = one;
  }
}
