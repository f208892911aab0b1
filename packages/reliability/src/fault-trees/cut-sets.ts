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
  const index = new Map(events.map((name, i) => [name, i]));
  const families = new SetFamilies(events.length, limit);
  const known = new Map<string, Family>();
  const familyOf = (name: string): Family => known.get(name) ?? families.single(index.get(name)!);
  for (const name of gates) known.set(name, gateFamily(families, tree.gates[name]!, familyOf));
  const top = familyOf(tree.top);
  return {
    events,
    countByOrder: families.countByOrder(top),
    sets: () => families.list(top).map((set) => set.map((event) => events[event]!).sort(compareText)).sort(compareSets),
    fussellVesely: (probabilities) => {
      const { sum, withEvent } = families.sumOfProducts(top, events.map((name) => probabilities[name]!));
      return Object.fromEntries(events.map((name, i) => [name, sum > 0 ? withEvent[i]! / sum : 0]));
    },
  };
}

function gateFamily(families: SetFamilies, gate: Gate, familyOf: (name: string) => Family): Family {
  const inputs = gate.inputs.map(familyOf);
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

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function compareSets(a: readonly string[], b: readonly string[]): number {
  if (a.length !== b.length) return a.length - b.length;
  for (let i = 0; i < a.length; i++) {
    const order = compareText(a[i]!, b[i]!);
    if (order !== 0) return order;
  }
  return 0;
}
