import type { FaultTree, Gate } from '@rotorwright/reliability';

/** Name of a gate or of a basic event; undefined: it never happens. */
export type Loss = string | undefined;

/** Gates as they are made, simplified on the way: what cannot happen drops out, and a gate of one input is that input. */
export class GateBook {
  readonly gates: Record<string, Gate> = {};

  /** Happens when one of these does. */
  any(name: string, inputs: readonly Loss[]): Loss {
    return this.#put(name, 'or', happening(inputs));
  }

  /** Happens when all of these do; never, when one of them never does. */
  all(name: string, inputs: readonly Loss[]): Loss {
    return inputs.length === 0 || inputs.includes(undefined) ? undefined : this.#put(name, 'and', happening(inputs));
  }

  /** Happens when at least k of these do. */
  atLeast(name: string, k: number, inputs: readonly Loss[]): Loss {
    const happen = inputs.filter((input) => input !== undefined);
    if (k > happen.length) return undefined;
    if (k <= 1) return this.any(name, happen);
    if (k === happen.length) return this.all(name, happen);
    // One that stands here twice counts twice; a gate names each input once.
    const apart = happen.map((input, i) => (happen.indexOf(input) === i ? input : this.#again(`${name}#${i}`, input)));
    this.gates[name] = { type: 'atleast', k, inputs: apart };
    return name;
  }

  #again(name: string, input: string): string {
    this.gates[name] = { type: 'or', inputs: [input] };
    return name;
  }

  #put(name: string, type: 'and' | 'or', inputs: readonly string[]): Loss {
    if (inputs.length < 2) return inputs[0];
    this.gates[name] = { type, inputs };
    return name;
  }
}

/** Those that can happen, each once; most gates have a few inputs, which are compared sooner than they are hashed. */
function happening(inputs: readonly Loss[]): readonly string[] {
  if (inputs.length > 8) return [...new Set(inputs.filter((input) => input !== undefined))];
  return inputs.filter((input, at): input is string => input !== undefined && inputs.indexOf(input) === at);
}

/**
 * The same tree where some events never happen.
 *
 * @param tree its gates stand in the order in which a book makes them: each after all that it asks
 * @returns    nothing when the top can then never happen
 */
export function withOnly(tree: FaultTree, happens: (event: string) => boolean): FaultTree | undefined {
  const book = new GateBook();
  const known = new Map<string, Loss>();
  const lossOf = (input: string): Loss => (tree.gates[input] === undefined ? (happens(input) ? input : undefined) : known.get(input));
  for (const [name, gate] of Object.entries(tree.gates)) {
    const inputs = gate.inputs.map(lossOf);
    known.set(name, gate.type === 'or' ? book.any(name, inputs) : gate.type === 'and' ? book.all(name, inputs) : book.atLeast(name, gate.k, inputs));
  }
  const top = lossOf(tree.top);
  return top === undefined ? undefined : { top, gates: book.gates };
}
