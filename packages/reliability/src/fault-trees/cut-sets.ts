import { orderTree, type FaultTree, type Gate } from './fault-tree.ts';
import { always, nothing, SetFamilies, type Family } from './set-family.ts';

export interface CutSets {
  /** Basic events of the tree, whether in a set or not. */
  readonly events: readonly string[];
  /** How many there are of each order; index = number of events. Complete up to `limit`. */
  readonly countByOrder: readonly number[];
  /** The sets themselves, made when asked for: by order, then by name. */
  readonly sets: () => string[][];
  /** Of the sum of the cut sets' probabilities the part that holds each event (Fussell–Vesely); 0 where the sum is 0. */
  readonly fussellVesely: (probabilities: Readonly<Record<string, number>>) => Record<string, number>;
}

/**
 * Minimal cut sets of a coherent fault tree: the smallest combinations of basic events that bring about the top event.
 *
 * @param tree   gates may share inputs
 * @param limit  largest number of events of interest; larger sets are left out. All sets when not given
 * @throws FaultTreeError when the tree is malformed
 * @source bottom-up expansion with minimisation on zero-suppressed decision diagrams; see `SetFamilies`
 */
export function minimalCutSets(tree: FaultTree, limit = Infinity): CutSets {
  const { gates, events } = orderTree(tree);
  const families = new SetFamilies(events.length, limit);
  const known = events.map((_, i): Family => families.single(i));
  for (const gate of gates) known.push(gateFamily(families, gate, known));
  const top = known.at(-1)!;
  return {
    events,
    countByOrder: families.countByOrder(top),
    sets: () => listed(events, (take) => families.each(top, take)),
    fussellVesely: (probabilities) => {
      const { sum, withEvent } = families.sumOfProducts(top, events.map((name) => probabilities[name]!));
      return Object.fromEntries(events.map((name, i) => [name, sum > 0 ? withEvent[i]! / sum : 0]));
    },
  };
}

function gateFamily(families: SetFamilies, gate: Gate<number>, known: readonly Family[]): Family {
  const inputs = gate.inputs.map((input) => known[input]!);
  if (gate.type === 'or') return balanced(inputs, (f, g) => families.union(f, g), nothing);
  if (gate.type === 'and') return balanced(inputs, (f, g) => families.product(f, g), always);
  // At least j of the first i inputs: with the i-th and j − 1 of those before it, or j of those before it.
  let atLeast: Family[] = [always, ...Array.from({ length: gate.k }, () => nothing)];
  for (const input of inputs) {
    atLeast = atLeast.map((without, j) => (j === 0 ? always : families.union(without, families.product(input, atLeast[j - 1]!))));
  }
  return atLeast[gate.k]!;
}

/** Combines like with like, which keeps the diagrams in between small. */
function balanced(inputs: readonly Family[], combine: (f: Family, g: Family) => Family, empty: Family): Family {
  if (inputs.length === 0) return empty;
  let row = inputs;
  while (row.length > 1) {
    row = Array.from({ length: Math.ceil(row.length / 2) }, (_, i) => (2 * i + 1 < row.length ? combine(row[2 * i]!, row[2 * i + 1]!) : row[2 * i]!));
  }
  return row[0]!;
}

/** Sets of events by name: by order, then by name. Names are compared once; after that their ranks are counted. */
function listed(events: readonly string[], each: (take: (set: readonly number[]) => void) => void): string[][] {
  const byName = events.map((_, event) => event).sort((a, b) => (events[a]! < events[b]! ? -1 : 1));
  const names = byName.map((event) => events[event]!);
  const rank = new Uint32Array(events.length);
  for (const [place, event] of byName.entries()) rank[event] = place;
  /** Ranks of all sets of an order, one set after another; index = order, which is never 0. */
  const ranks: number[][] = [];
  each((set) => {
    const row = (ranks[set.length] ??= []);
    const from = row.length;
    for (const event of set) {
      let at = row.push(rank[event]!) - 1;
      for (; at > from && row[at - 1]! > row[at]!; at -= 1) [row[at - 1], row[at]] = [row[at]!, row[at - 1]!];
    }
  });
  const sets: string[][] = [];
  for (const [order, row] of ranks.entries()) if (row !== undefined) for (const from of ascending(row, order, events.length)) sets.push(row.slice(from, from + order).map((place) => names[place]!));
  return sets;
}

/** Where each of the rows begins, the least row first: counted from the last place to the first, which leaves what is equal in its order. */
function ascending(rows: readonly number[], width: number, base: number): Uint32Array {
  let starts = Uint32Array.from({ length: rows.length / width }, (_, index) => index * width);
  for (let place = width - 1; place >= 0; place -= 1) {
    const next = new Uint32Array(base + 1);
    for (const start of starts) next[rows[start + place]! + 1]! += 1;
    for (let value = 1; value <= base; value += 1) next[value]! += next[value - 1]!;
    const sorted = new Uint32Array(starts.length);
    for (const start of starts) sorted[next[rows[start + place]!]!++] = start;
    starts = sorted;
  }
  return starts;
}
