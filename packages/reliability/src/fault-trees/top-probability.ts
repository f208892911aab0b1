import { orderTree, type FaultTree, type Gate } from './fault-tree.ts';

export interface TopProbability {
  /** Probability of the top event, exact to rounding. */
  readonly probability: number;
  /** By event: what the top's probability gains when the event goes from impossible to certain (Birnbaum). */
  readonly birnbaum: Readonly<Record<string, number>>;
}

/**
 * Exact probability of the top event of a coherent fault tree with independent basic events, by a binary decision diagram.
 *
 * @param tree           gates may share inputs
 * @param probabilities  of every basic event, 0 to 1
 * @param maximumNodes   give up beyond this size
 * @returns              undefined when the diagram outgrows `maximumNodes`
 * @throws FaultTreeError when the tree is malformed; RangeError when a probability is missing or no probability
 * @source Bryant, Graph-based algorithms for Boolean function manipulation (1986); Rauzy, New algorithms for fault tree analysis (1993) (from memory)
 */
export function topProbability(tree: FaultTree, probabilities: Readonly<Record<string, number>>, maximumNodes = 2_000_000): TopProbability | undefined {
  return probabilitySolver(tree, maximumNodes)?.(probabilities);
}

/**
 * As `topProbability`, for one tree and many sets of probabilities: the diagram is made once.
 *
 * @returns undefined when the diagram outgrows `maximumNodes`
 * @throws FaultTreeError when the tree is malformed; what is returned throws RangeError when a probability is missing or none
 */
export function probabilitySolver(tree: FaultTree, maximumNodes = 2_000_000): ((probabilities: Readonly<Record<string, number>>) => TopProbability) | undefined {
  const { gates, events } = orderTree(tree);
  const diagram = new Diagram(events.length, maximumNodes);
  let top: number;
  try {
    const known = events.map((_, i) => diagram.make(i, 0, 1));
    for (const gate of gates) known.push(gateNode(diagram, gate, known));
    top = known.at(-1)!;
  } catch (problem) {
    if (problem instanceof TooLarge) return undefined;
    throw problem;
  }
  return (probabilities) => {
    const p = events.map((name) => {
      const value = Object.hasOwn(probabilities, name) ? probabilities[name] : undefined;
      if (!(value !== undefined && value >= 0 && value <= 1)) throw new RangeError(`topProbability: the probability of ${name} must be from 0 to 1, got ${value}`);
      return value;
    });
    const { value, slope } = diagram.evaluate(top, p);
    return { probability: value, birnbaum: Object.fromEntries(events.map((name, i) => [name, slope[i]!])) };
  };
}

class TooLarge extends Error {}

function gateNode(diagram: Diagram, gate: Gate<number>, known: readonly number[]): number {
  const inputs = gate.inputs.map((input) => known[input]!);
  if (gate.type === 'or') return inputs.reduce((f, g) => diagram.or(f, g));
  if (gate.type === 'and') return inputs.reduce((f, g) => diagram.and(f, g));
  let atLeast = [1, ...Array.from({ length: gate.k }, () => 0)];
  for (const input of inputs) atLeast = atLeast.map((without, j) => (j === 0 ? 1 : diagram.or(without, diagram.and(input, atLeast[j - 1]!))));
  return atLeast[gate.k]!;
}

/** Binary decision diagram of monotone functions: node i asks event `event[i]`; 0 is false, 1 is true. */
class Diagram {
  readonly #events: number;
  readonly #maximum: number;
  readonly #event: number[];
  readonly #low: number[] = [0, 1];
  readonly #high: number[] = [0, 1];
  readonly #unique = new Map<number, Map<number, number>>();
  readonly #and = new Map<number, number>();
  readonly #or = new Map<number, number>();

  constructor(events: number, maximum: number) {
    this.#events = events;
    // Keys of the tables are low × 2²⁶ + high, exact up to this size.
    this.#maximum = Math.min(maximum, 2 ** 26);
    this.#event = [events, events];
  }

  make(event: number, low: number, high: number): number {
    if (low === high) return low;
    let table = this.#unique.get(event);
    if (!table) this.#unique.set(event, (table = new Map()));
    const key = low * 2 ** 26 + high;
    const known = table.get(key);
    if (known !== undefined) return known;
    const made = this.#event.length;
    if (made >= this.#maximum) throw new TooLarge();
    this.#event.push(event);
    this.#low.push(low);
    this.#high.push(high);
    table.set(key, made);
    return made;
  }

  and(f: number, g: number): number {
    if (f === 0 || g === 0) return 0;
    if (f === 1 || f === g) return g;
    if (g === 1) return f;
    return this.#combine(this.#and, f, g, (a, b) => this.and(a, b));
  }

  or(f: number, g: number): number {
    if (f === 1 || g === 1) return 1;
    if (f === 0 || f === g) return g;
    if (g === 0) return f;
    return this.#combine(this.#or, f, g, (a, b) => this.or(a, b));
  }

  #combine(cache: Map<number, number>, f: number, g: number, operation: (f: number, g: number) => number): number {
    const key = f < g ? f * 2 ** 26 + g : g * 2 ** 26 + f;
    const known = cache.get(key);
    if (known !== undefined) return known;
    const event = Math.min(this.#event[f]!, this.#event[g]!);
    const [f0, f1] = this.#event[f] === event ? [this.#low[f]!, this.#high[f]!] : [f, f];
    const [g0, g1] = this.#event[g] === event ? [this.#low[g]!, this.#high[g]!] : [g, g];
    const result = this.make(event, operation(f0, g0), operation(f1, g1));
    cache.set(key, result);
    return result;
  }

  /** Probability that f is true, and its slope by each event's probability. Nodes are made after those below them, so a plain loop does. */
  evaluate(f: number, p: readonly number[]): { value: number; slope: Float64Array } {
    const count = this.#event.length;
    const value = new Float64Array(count);
    value[1] = 1;
    for (let i = 2; i < count; i++) {
      const q = p[this.#event[i]!]!;
      value[i] = q * value[this.#high[i]!]! + (1 - q) * value[this.#low[i]!]!;
    }
    const reach = new Float64Array(count);
    reach[f] = 1;
    const slope = new Float64Array(this.#events);
    for (let i = count - 1; i >= 2; i--) {
      const here = reach[i]!;
      if (here === 0) continue;
      const event = this.#event[i]!;
      const q = p[event]!;
      slope[event]! += here * (value[this.#high[i]!]! - value[this.#low[i]!]!);
      reach[this.#high[i]!]! += here * q;
      reach[this.#low[i]!]! += here * (1 - q);
    }
    return { value: value[f]!, slope };
  }
}
