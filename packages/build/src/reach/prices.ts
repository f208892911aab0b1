import type { AssemblyGraph } from './graph.ts';
import { incidenceOf, type Incidence } from './incidence.ts';
import type { Away, Want } from './wants.ts';
import type { Barred } from './way-finder.ts';

/** Less is nothing, s of work. */
const smallest = 1e-6;

/**
 * What wants cost at least. Each is paid for by the ties that could meet it, none beyond its own cost, and what a tie has
 * paid for one want it no longer has for the next: so no set of ties that meets them all costs less than the sum.
 *
 * For parts that must come away from each other that is a flow from one to the other, through ties as wide as they cost.
 * Every way must be cut, so what flows is never more than the cheapest cut; a flow of one want alone comes up to it,
 * but for ties with copies in several places, which are as wide as they cost only once.
 *
 * @source greatest flow by shortest augmenting ways: J. Edmonds, R. Karp, J. ACM 19 (1972) (from memory)
 */
export class Prices {
  readonly #graph: AssemblyGraph;
  readonly #places: Incidence;
  /** What flows from a place into its group and back out, and through each group. */
  readonly #into: Float64Array;
  readonly #outOf: Float64Array;
  readonly #through: Float64Array;
  /** Places and groups through which anything has flowed for the want at hand. */
  #wet: number[] = [];
  /** States of a search: nodes; then, for each group, its near and its far end. Which search met it last, from what, at which place. */
  readonly #met: Int32Array;
  readonly #from: Int32Array;
  readonly #at: Int32Array;
  /** The states that the last search met, in the order in which it did, and how many. */
  readonly #open: Int32Array;
  #count = 0;
  #turn = 0;
  /** While it is not known which of several ways is taken: ties that pay, each followed by what it had before. */
  #paid: number[] | undefined;
  /** 1 for each tie where a cheapest cut was found since `forget`. */
  readonly #cut: Uint8Array;

  constructor(graph: AssemblyGraph) {
    this.#graph = graph;
    const { groups, nodes } = graph;
    this.#places = incidenceOf(graph);
    const { length } = this.#places.nodeAt;
    this.#into = new Float64Array(length);
    this.#outOf = new Float64Array(length);
    this.#through = new Float64Array(groups.length);
    const states = nodes.length + 2 * groups.length;
    this.#met = new Int32Array(states);
    this.#from = new Int32Array(states);
    this.#at = new Int32Array(states);
    this.#open = new Int32Array(states);
    this.#cut = new Uint8Array(graph.ties.length);
  }

  /** Ties that a cheapest way to meet the wants of late would choose: where the flow was held up. */
  isCut(tie: number): boolean {
    return this.#cut[tie] === 1;
  }

  forgetCuts(): void {
    this.#cut.fill(0);
  }

  /**
   * @param rest   of each tie what it has not paid yet; the price is taken from it
   * @param barred 1 for ties that may not be chosen: these pay nothing, and let everything through
   * @returns      Infinity when nothing can meet the want
   */
  of(want: Want, rest: Float64Array, undone: Uint8Array, barred: Barred): number {
    if ('undone' in want) {
      if (undone[want.undone] === 1) return 0;
      const price = barred[want.undone] === 1 ? Infinity : (rest[want.undone] ?? 0);
      this.#pay(rest, want.undone, 0);
      return price;
    }
    if ('all' in want) return want.all.reduce((sum, each) => sum + this.of(each, rest, undone, barred), 0);
    if ('any' in want) {
      // Whichever is taken pays; of each tie there is left what is left in the worst case.
      const outer = this.#paid;
      const left = new Map<number, number>();
      let least = Infinity;
      for (const each of want.any) {
        this.#paid = [];
        least = Math.min(least, this.of(each, rest, undone, barred));
        this.#takeBack(rest, this.#paid, left);
      }
      this.#paid = outer;
      if (least > 0) for (const [tie, amount] of left) this.#pay(rest, tie, Math.min(rest[tie] as number, amount));
      return least;
    }
    return this.#flow(want, rest, undone, barred);
  }

  #pay(rest: Float64Array, tie: number, left: number): void {
    this.#paid?.push(tie, rest[tie] as number);
    rest[tie] = left;
  }

  /** Gives ties back what they paid for one of several ways, and notes of each the least that any way left it. */
  #takeBack(rest: Float64Array, paid: readonly number[], left: Map<number, number>): void {
    for (let at = 0; at < paid.length; at += 2) {
      const tie = paid[at] as number;
      left.set(tie, Math.min(left.get(tie) ?? Infinity, rest[tie] as number));
    }
    for (let at = paid.length - 2; at >= 0; at -= 2) rest[paid[at] as number] = paid[at + 1] as number;
  }

  #flow(want: Away, rest: Float64Array, undone: Uint8Array, barred: Barred): number {
    for (const wet of this.#wet) {
      if (wet < 0) this.#through[-1 - wet] = 0;
      else this.#into[wet] = this.#outOf[wet] = 0;
    }
    this.#wet = [];
    let sum = 0;
    for (let end = this.#way(want, rest, undone, barred); end !== undefined; end = this.#way(want, rest, undone, barred)) {
      const more = this.#widthOf(end, rest, barred);
      if (more === Infinity) return Infinity;
      this.#send(end, more, rest, barred);
      sum += more;
      // A tie in several places shares what it has left among them, by ever smaller pieces.
      if (more < smallest) break;
    }
    const count = this.#graph.nodes.length;
    for (let at = 0; at < this.#count; at += 1) {
      const state = this.#open[at] as number;
      if (state >= count && ((state - count) & 1) === 0 && this.#met[state + 1] !== this.#turn) this.#cut[this.#places.tieOf[(state - count) >> 1] as number] = 1;
    }
    return sum;
  }

  /** A shortest way on which more can flow, some of it by sending less where it flows against the way. */
  #way({ away, from, ground, past }: Away, rest: Float64Array, undone: Uint8Array, barred: Barred): number | undefined {
    const { nodes, ground: grounded } = this.#graph;
    const { tieOf, firstOfGroup, nodeAt, groupAt, firstOfNode, placesOfNodes } = this.#places;
    const count = nodes.length;
    const [hasFrom, hasPast] = [from.size > 0, past.size > 0];
    this.#turn += 1;
    this.#count = 0;
    for (const node of away) this.#meet(node, -1, -1);
    for (let at = 0; at < this.#count; at += 1) {
      const state = this.#open[at] as number;
      if (state < count) {
        if ((ground && grounded[state] === true) || (hasFrom && from.has(state))) return state;
        const end = firstOfNode[state + 1] as number;
        for (let index = firstOfNode[state] as number; index < end; index += 1) {
          const place = placesOfNodes[index] as number;
          const group = groupAt[place] as number;
          const tie = tieOf[group] as number;
          if (undone[tie] === 1 || (hasPast && past.has(tie))) continue;
          this.#meet(count + 2 * group, state, place);
          if ((this.#outOf[place] as number) > smallest) this.#meet(count + 2 * group + 1, state, place);
        }
        continue;
      }
      const group = (state - count) >> 1;
      const isFar = ((state - count) & 1) === 1;
      const tie = tieOf[group] as number;
      const end = firstOfGroup[group + 1] as number;
      for (let place = firstOfGroup[group] as number; place < end; place += 1) if (isFar || (this.#into[place] as number) > smallest) this.#meet(nodeAt[place] as number, state, place);
      if (isFar ? (this.#through[group] as number) > smallest : (rest[tie] as number) > smallest || barred[tie] === 1) this.#meet(isFar ? state - 1 : state + 1, state, -1);
    }
    return undefined;
  }

  #meet(state: number, before: number, place: number): void {
    if (this.#met[state] === this.#turn) return;
    this.#met[state] = this.#turn;
    this.#from[state] = before;
    this.#at[state] = place;
    this.#open[this.#count] = state;
    this.#count += 1;
  }

  /** How much more a way takes. */
  #widthOf(end: number, rest: Float64Array, barred: Barred): number {
    const crossed = new Map<number, number>();
    let width = Infinity;
    this.#steps(end, (state, before, place) => {
      const count = this.#graph.nodes.length;
      if (place !== -1) {
        // Into a far end, or out of a near end, is back along what flows.
        if (before < count && ((state - count) & 1) === 1) width = Math.min(width, this.#outOf[place] as number);
        if (before >= count && ((before - count) & 1) === 0) width = Math.min(width, this.#into[place] as number);
        return;
      }
      const group = (state - count) >> 1;
      if (before > state) width = Math.min(width, this.#through[group] as number);
      else {
        const tie = this.#places.tieOf[group] as number;
        crossed.set(tie, (crossed.get(tie) ?? 0) + 1);
        if (barred[tie] !== 1) width = Math.min(width, (rest[tie] as number) / (crossed.get(tie) as number));
      }
    });
    return width;
  }

  #send(end: number, more: number, rest: Float64Array, barred: Barred): void {
    const count = this.#graph.nodes.length;
    this.#steps(end, (state, before, place) => {
      if (place !== -1) {
        const [intoGroup, group] = before < count ? [true, state] : [false, before];
        const isFar = ((group - count) & 1) === 1;
        this.#wet.push(place);
        if (isFar) this.#outOf[place]! += intoGroup ? -more : more;
        else this.#into[place]! += intoGroup ? more : -more;
        return;
      }
      const group = (state - count) >> 1;
      const sent = before > state ? -more : more;
      this.#through[group]! += sent;
      this.#wet.push(-1 - group);
      const tie = this.#places.tieOf[group] as number;
      if (barred[tie] !== 1) this.#pay(rest, tie, (rest[tie] as number) - sent);
    });
  }

  #steps(end: number, each: (state: number, before: number, place: number) => void): void {
    for (let state = end; this.#from[state] !== -1; state = this.#from[state] as number) each(state, this.#from[state] as number, this.#at[state] as number);
  }
}
