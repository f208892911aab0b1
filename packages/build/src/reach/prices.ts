import type { AssemblyGraph } from './graph.ts';
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
  /** Where the nodes of each group begin among the places; a place is one node in one group. */
  readonly #first: readonly number[];
  readonly #nodeAt: readonly number[];
  /** What flows from a place into its group and back out, and through each group. */
  readonly #into: Float64Array;
  readonly #outOf: Float64Array;
  readonly #through: Float64Array;
  /** States of a search: nodes; then, for each group, its near and its far end. Which search met it last, from what, at which place. */
  readonly #met: Int32Array;
  readonly #from: Int32Array;
  readonly #at: Int32Array;
  readonly #placesOf: readonly (readonly { readonly group: number; readonly place: number }[])[];
  #turn = 0;
  /** 1 for each tie where a cheapest cut was found since `forget`. */
  readonly #cut: Uint8Array;

  constructor(graph: AssemblyGraph) {
    this.#graph = graph;
    const { groups, nodes } = graph;
    let places = 0;
    this.#first = groups.map((group) => (places += group.nodes.length) - group.nodes.length);
    this.#nodeAt = groups.flatMap((group) => group.nodes);
    const placesOf: { group: number; place: number }[][] = nodes.map(() => []);
    for (const [group, first] of this.#first.entries()) for (const [at, node] of (groups[group]?.nodes ?? []).entries()) placesOf[node]?.push({ group, place: first + at });
    this.#placesOf = placesOf;
    this.#into = new Float64Array(places);
    this.#outOf = new Float64Array(places);
    this.#through = new Float64Array(groups.length);
    const states = nodes.length + 2 * groups.length;
    this.#met = new Int32Array(states);
    this.#from = new Int32Array(states);
    this.#at = new Int32Array(states);
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
   * @param barred ties that may not be chosen: these pay nothing, and let everything through
   * @returns      Infinity when nothing can meet the want
   */
  of(want: Want, rest: Float64Array, undone: Uint8Array, barred: Barred): number {
    if ('undone' in want) {
      if (undone[want.undone] === 1) return 0;
      const price = barred(want.undone) ? Infinity : (rest[want.undone] ?? 0);
      rest[want.undone] = 0;
      return price;
    }
    if ('all' in want) return want.all.reduce((sum, each) => sum + this.of(each, rest, undone, barred), 0);
    if ('any' in want) {
      // Whichever is taken pays; of each tie there is left what is left in the worst case.
      const ways = want.any.map((each) => {
        const left = rest.slice();
        return { price: this.of(each, left, undone, barred), left };
      });
      const least = Math.min(...ways.map(({ price }) => price));
      if (least > 0) for (const { left } of ways) for (let tie = 0; tie < rest.length; tie += 1) rest[tie] = Math.min(rest[tie] as number, left[tie] as number);
      return least;
    }
    return this.#flow(want, rest, undone, barred);
  }

  #flow(want: Away, rest: Float64Array, undone: Uint8Array, barred: Barred): number {
    this.#into.fill(0);
    this.#outOf.fill(0);
    this.#through.fill(0);
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
    for (const [group, { tie }] of this.#graph.groups.entries()) if (this.#met[count + 2 * group] === this.#turn && this.#met[count + 2 * group + 1] !== this.#turn) this.#cut[tie] = 1;
    return sum;
  }

  /** A shortest way on which more can flow, some of it by sending less where it flows against the way. */
  #way({ away, from, ground, past }: Away, rest: Float64Array, undone: Uint8Array, barred: Barred): number | undefined {
    const { nodes, groups, ground: grounded } = this.#graph;
    const count = nodes.length;
    this.#turn += 1;
    const open: number[] = [];
    const meet = (state: number, before: number, place: number): void => {
      if (this.#met[state] === this.#turn) return;
      this.#met[state] = this.#turn;
      this.#from[state] = before;
      this.#at[state] = place;
      open.push(state);
    };
    for (const node of away) meet(node, -1, -1);
    for (const state of open) {
      if (state < count) {
        if ((ground && grounded[state] === true) || from.has(state)) return state;
        for (const { group, place } of this.#placesOf[state] ?? []) {
          const { tie } = groups[group] as AssemblyGraph['groups'][number];
          if (undone[tie] === 1 || past.has(tie)) continue;
          meet(count + 2 * group, state, place);
          if ((this.#outOf[place] as number) > smallest) meet(count + 2 * group + 1, state, place);
        }
        continue;
      }
      const group = (state - count) >> 1;
      const isFar = ((state - count) & 1) === 1;
      const { tie, nodes: members } = groups[group] as AssemblyGraph['groups'][number];
      const first = this.#first[group] as number;
      for (let place = first; place < first + members.length; place += 1) if (isFar || (this.#into[place] as number) > smallest) meet(this.#nodeAt[place] as number, state, place);
      if (isFar ? (this.#through[group] as number) > smallest : (rest[tie] as number) > smallest || barred(tie)) meet(isFar ? state - 1 : state + 1, state, -1);
    }
    return undefined;
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
        const tie = this.#graph.groups[group]?.tie ?? -1;
        crossed.set(tie, (crossed.get(tie) ?? 0) + 1);
        if (!barred(tie)) width = Math.min(width, (rest[tie] as number) / (crossed.get(tie) as number));
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
        if (isFar) this.#outOf[place]! += intoGroup ? -more : more;
        else this.#into[place]! += intoGroup ? more : -more;
        return;
      }
      const group = (state - count) >> 1;
      const sent = before > state ? -more : more;
      this.#through[group]! += sent;
      const tie = this.#graph.groups[group]?.tie ?? -1;
      if (!barred(tie)) rest[tie]! -= sent;
    });
  }

  #steps(end: number, each: (state: number, before: number, place: number) => void): void {
    for (let state = end; this.#from[state] !== -1; state = this.#from[state] as number) each(state, this.#from[state] as number, this.#at[state] as number);
  }
}
