import type { AssemblyGraph } from './graph.ts';
import type { Away, Want } from './wants.ts';
import { WayFinder, type Barred } from './way-finder.ts';

/** Ties of which at least one must be undone yet. An empty one can never be met. */
export type Clause = readonly number[];

/** So many ways between two parts are looked for at once; more come up when these are cut. */
const waysAtOnce = 5;

/** Reads wants against what is undone. */
export class Wants {
  readonly #finder: WayFinder;
  /** 1 for each tie of a way that was found already, while ways are looked for. */
  readonly #used: Uint8Array;

  constructor(graph: AssemblyGraph) {
    this.#finder = new WayFinder(graph);
    this.#used = new Uint8Array(graph.ties.length);
  }

  /**
   * What keeps a want from being met: as long as none of these ties is undone, it is not, whatever else is.
   *
   * @param undone 1 for each tie that is undone, by its number
   * @returns      nothing when the want is met
   */
  blocker(want: Want, undone: Uint8Array): readonly number[] | undefined {
    if ('undone' in want) return undone[want.undone] === 1 ? undefined : [want.undone];
    if ('all' in want) return firstOf(want.all, (each) => this.blocker(each, undone));
    if ('any' in want) {
      const all: number[] = [];
      for (const each of want.any) {
        const blocker = this.blocker(each, undone);
        if (blocker === undefined) return undefined;
        all.push(...blocker);
      }
      return all;
    }
    return this.#finder.way(want, undone);
  }

  isMet(want: Want, undone: Uint8Array): boolean {
    return this.blocker(want, undone) === undefined;
  }

  /**
   * What is missing for a want, as clauses that every set of undone ties must meet.
   *
   * @param barred 1 for ties that may not be chosen
   * @param most   clauses for parts that must come away from each other; the first is the shortest
   * @returns      nothing when the want is met
   */
  missing(want: Want, undone: Uint8Array, barred: Barred, most = waysAtOnce): readonly Clause[] {
    if ('undone' in want) return undone[want.undone] === 1 ? [] : [barred[want.undone] === 1 ? [] : [want.undone]];
    if ('all' in want) return want.all.flatMap((each) => this.missing(each, undone, barred, most));
    if ('any' in want) return oneOfEach(want.any.map((each) => this.missing(each, undone, barred, most)));
    return this.#waysToCut(want, undone, barred, most);
  }

  /** Ways that share no tie that may be chosen: each must be cut, and no cut serves two of them. */
  #waysToCut(want: Away, undone: Uint8Array, barred: Barred, most: number): readonly Clause[] {
    this.#used.fill(0);
    const found: Clause[] = [];
    while (found.length < most) {
      const way = this.#finder.way(want, undone, barred, this.#used);
      if (way === undefined) break;
      const clause = way.filter((tie) => barred[tie] !== 1);
      if (clause.length === 0) return [[]];
      found.push(clause);
      for (const tie of clause) this.#used[tie] = 1;
    }
    return found;
  }
}

/** What the first item yields that yields anything. */
function firstOf<Item, Found>(items: readonly Item[], find: (item: Item) => Found | undefined): Found | undefined {
  for (const item of items) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}

/**
 * Clauses that hold whichever alternative is taken: the first of each together, the second of each together, and so on.
 *
 * @param alternatives what is missing for each
 */
function oneOfEach(alternatives: readonly (readonly Clause[])[]): readonly Clause[] {
  if (alternatives.some((missing) => missing.length === 0)) return [];
  const possible = alternatives.filter((missing) => missing.every((clause) => clause.length > 0)).map((missing) => missing.toSorted((a, b) => a.length - b.length));
  if (possible.length === 0) return [[]];
  const count = Math.min(...possible.map((missing) => missing.length));
  return Array.from({ length: count }, (_, at) => [...new Set(possible.flatMap((missing) => missing[at] ?? []))]);
}
