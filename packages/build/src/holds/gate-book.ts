import type { FaultTree, Gate } from '@rotorwright/reliability';

/** Name of a gate or of a basic event; undefined: it never happens. */
export type Loss = string | undefined;

/**
 * Gates as they are made, each after all that it asks, and simplified on the way: what cannot happen drops out, and a gate
 * of one input is that input. Gates are numbered, so that no two share a name and none has to be put together.
 */
export class GateBook {
  readonly gates: Record<string, Gate> = {};
  #made = 0;

  /** Happens when one of these does. */
  any(inputs: readonly Loss[]): Loss {
    return this.#joined('or', happening(inputs));
  }

  /** Happens when all of these do; never, when one of them never does. */
  all(inputs: readonly Loss[]): Loss {
    return inputs.length === 0 || inputs.includes(undefined) ? undefined : this.#joined('and', happening(inputs));
  }

  /** Happens when at least k of these do. */
  atLeast(k: number, inputs: readonly Loss[]): Loss {
    const happen = inputs.filter((input) => input !== undefined);
    if (k > happen.length) return undefined;
    if (k <= 1) return this.any(happen);
    if (k === happen.length) return this.all(happen);
    // One that stands here twice counts twice; a gate names each input once.
    const apart = happen.map((input, i) => (happen.indexOf(input) === i ? input : this.#put({ type: 'or', inputs: [input] })));
    return this.#put({ type: 'atleast', k, inputs: apart });
  }

  #joined(type: 'and' | 'or', inputs: readonly string[]): Loss {
    return inputs.length < 2 ? inputs[0] : this.#put({ type, inputs });
  }

  #put(gate: Gate): string {
    const name = String(this.#made);
    this.#made += 1;
    this.gates[name] = gate;
    return name;
  }
}

/** Those that can happen, each once: most often all that there are. */
function happening(inputs: readonly Loss[]): readonly string[] {
  return areApart(inputs) ? inputs : [...new Set(inputs.filter((input) => input !== undefined))];
}

/** Most gates have a few inputs, which are compared sooner than they are hashed. */
function areApart(inputs: readonly Loss[]): inputs is readonly string[] {
  return inputs.length <= 8 && inputs.every((input, at) => input !== undefined && inputs.indexOf(input) === at);
}

/**
 * The same tree where some events never happen.
 *
 * @param tree of a book
 * @returns    nothing when the top can then never happen
 */
export function withOnly(tree: FaultTree, happens: (event: string) => boolean): FaultTree | undefined {
  const book = new GateBook();
  const known = new Map<string, Loss>();
  const lossOf = (input: string): Loss => (tree.gates[input] === undefined ? (happens(input) ? input : undefined) : known.get(input));
  for (const [name, gate] of Object.entries(tree.gates)) {
    const inputs = gate.inputs.map(lossOf);
    known.set(name, gate.type === 'or' ? book.any(inputs) : gate.type === 'and' ? book.all(inputs) : book.atLeast(gate.k, inputs));
  }
  const top = lossOf(tree.top);
  return top === undefined ? undefined : { top, gates: book.gates };
}
