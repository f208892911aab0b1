import { membersOf } from '../lookup.ts';
import { carries, type Assembly, type Body, type Tie } from './assembly.ts';

/**
 * How far each body is from the ground, by the best way: as few second lines as can be, then as few ball links, then as
 * few stacks, then as few joints. A body is kept by its ties to bodies of lower rank; so a blade hangs on its grip, and the
 * grip on its spindle, not on the links that turn it.
 */
export interface Ranks {
  /** Undefined: the file does not say what keeps it. */
  readonly of: (body: Body) => number | undefined;
  /** Whether the best way to the first leads through more stacks, links or second lines than that to the second. */
  readonly isTierAbove: (body: Body, other: Body) => boolean;
}

export function ranksOf(assembly: Assembly): Ranks {
  const base = assembly.bodies.size + 1;
  const weights = { joint: 1, stack: base, link: base ** 2, backup: base ** 3 } as const;
  const known = new Map<Body, number>();
  const weightOf = ({ joint }: Tie): number => (joint.backup ? weights.backup : joint.kind === 'ball-link' ? weights.link : weights.joint);
  const waiting = new Queue();
  for (const body of assembly.ground) waiting.put(body, 0);
  for (let next = waiting.take(); next !== undefined; next = waiting.take()) {
    const { body, rank } = next;
    if (known.has(body)) continue;
    known.set(body, rank);
    for (const tie of assembly.ties.get(body) ?? []) if (carries(tie.joint, 'place')) waiting.put(otherEnd(tie, body), rank + weightOf(tie));
    for (const stack of assembly.stacksOf.get(body) ?? []) {
      const columns = [stack.spindle, ...stack.housing];
      // What lies loose in a stack keeps nothing, and comes after what joints keep on its spindle or in its housing.
      if (columns.includes(body)) for (const other of membersOf(stack)) waiting.put(other, rank + (columns.includes(other) ? 1 : 2) * weights.stack);
    }
  }
  const tier = (body: Body): number => Math.floor((known.get(body) ?? Infinity) / base);
  return { of: (body) => known.get(body), isTierAbove: (body, other) => tier(body) > tier(other) };
}

export function otherEnd({ between: [a, b] }: Tie, body: Body): Body {
  return body === a ? b : a;
}

/** Bodies by rank, smallest first: a binary heap. */
class Queue {
  readonly #heap: { readonly body: Body; readonly rank: number }[] = [];

  put(body: Body, rank: number): void {
    const heap = this.#heap;
    let at = heap.push({ body, rank }) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (heap[above]!.rank <= rank) break;
      [heap[at], heap[above]] = [heap[above]!, heap[at]!];
      at = above;
    }
  }

  take(): { readonly body: Body; readonly rank: number } | undefined {
    const heap = this.#heap;
    const top = heap[0];
    const last = heap.pop();
    if (top === undefined || last === undefined || heap.length === 0) return top;
    heap[0] = last;
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      let least = at;
      if (left < heap.length && heap[left]!.rank < heap[least]!.rank) least = left;
      if (right < heap.length && heap[right]!.rank < heap[least]!.rank) least = right;
      if (least === at) return top;
      [heap[at], heap[least]] = [heap[least]!, heap[at]!];
      at = least;
    }
  }
}
