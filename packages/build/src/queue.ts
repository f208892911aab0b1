interface Entry<Item> {
  readonly item: Item;
  readonly rank: number;
  readonly turn: number;
}

/** Items that come out by their rank, the lowest first; of equal ones the one that went in last. A binary heap. */
export class Queue<Item> {
  readonly #rank: (item: Item) => number;
  readonly #heap: Entry<Item>[] = [];
  #turns = 0;

  constructor(rank: (item: Item) => number) {
    this.#rank = rank;
  }

  push(item: Item): void {
    const heap = this.#heap;
    const entry = { item, rank: this.#rank(item), turn: this.#turns };
    this.#turns += 1;
    let at = heap.push(entry) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!isBefore(entry, heap[above]!)) break;
      heap[at] = heap[above]!;
      at = above;
    }
    heap[at] = entry;
  }

  pop(): Item | undefined {
    const heap = this.#heap;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === undefined || heap.length === 0) return first?.item;
    let at = 0;
    for (let below = 1; below < heap.length; below = 2 * at + 1) {
      if (below + 1 < heap.length && isBefore(heap[below + 1]!, heap[below]!)) below += 1;
      if (!isBefore(heap[below]!, last)) break;
      heap[at] = heap[below]!;
      at = below;
    }
    heap[at] = last;
    return first.item;
  }
}

function isBefore<Item>(one: Entry<Item>, other: Entry<Item>): boolean {
  return one.rank < other.rank || (one.rank === other.rank && one.turn > other.turn);
}
