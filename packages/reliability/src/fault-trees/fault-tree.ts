/** A gate is true when all, any, or at least k of its inputs are. Inputs are names of gates; a name that is no gate is a basic event. */
export type Gate =
  | { readonly type: 'and'; readonly inputs: readonly string[] }
  | { readonly type: 'or'; readonly inputs: readonly string[] }
  | { readonly type: 'atleast'; readonly k: number; readonly inputs: readonly string[] };

/** A coherent fault tree: no negation, so that one more failure never mends anything. Gates may share inputs. */
export interface FaultTree {
  readonly top: string;
  readonly gates: Readonly<Record<string, Gate>>;
}

/** Why a tree is none. `gate` is the one to mend, `reason` goes on from its name. */
export class FaultTreeError extends Error {
  readonly gate: string;
  readonly reason: string;

  constructor(gate: string, reason: string) {
    super(`fault tree, gate ${gate}: ${reason}`);
    this.name = 'FaultTreeError';
    this.gate = gate;
    this.reason = reason;
  }
}

export interface OrderedTree {
  /** Gates, each after all the gates it uses; the top gate is last. Empty when the top is itself a basic event. */
  readonly gates: readonly string[];
  /** Basic events in the order in which a walk from the top meets them: neighbours in the tree lie close together. */
  readonly events: readonly string[];
}

/**
 * Checks a tree and puts its gates and events in order.
 *
 * @throws FaultTreeError when a gate has no inputs, its k is not between 1 and their number, or it depends on itself
 */
export function orderTree(tree: FaultTree): OrderedTree {
  const gates: string[] = [];
  const events: string[] = [];
  /** Of each name that was met, whether it stands in the order yet; the others lie on the way from the top to here. */
  const placed = new Map<string, boolean>();
  // The way is written out, with the input of each gate that is next: a chain of ten thousand gates must not overflow the call stack.
  const way: string[] = [];
  const nextInput: number[] = [];
  const meet = (name: string): void => {
    const gate = Object.hasOwn(tree.gates, name) ? tree.gates[name] : undefined;
    placed.set(name, gate === undefined);
    if (gate === undefined) {
      events.push(name);
      return;
    }
    checkGate(name, gate);
    way.push(name);
    nextInput.push(0);
  };
  meet(tree.top);
  for (let at = way.length - 1; at >= 0; at = way.length - 1) {
    const name = way[at]!;
    const input = tree.gates[name]!.inputs[nextInput[at]!++];
    if (input === undefined) {
      placed.set(name, true);
      gates.push(name);
      way.pop();
      nextInput.pop();
      continue;
    }
    const isPlaced = placed.get(input);
    if (isPlaced === false) throw new FaultTreeError(input, `depends on itself: ${way.slice(way.indexOf(input)).join(' → ')} → ${input}`);
    if (isPlaced === undefined) meet(input);
  }
  return { gates, events };
}

function checkGate(name: string, gate: Gate): void {
  if (gate.inputs.length === 0) throw new FaultTreeError(name, 'has no inputs; give at least one');
  if (hasTwins(gate.inputs)) throw new FaultTreeError(name, 'names an input twice; give each once');
  if (gate.type === 'atleast' && !(Number.isInteger(gate.k) && gate.k >= 1 && gate.k <= gate.inputs.length)) {
    throw new FaultTreeError(name, `k must be a whole number from 1 to ${gate.inputs.length}, its number of inputs, got ${gate.k}`);
  }
}

/** Most gates have a few inputs, which are compared sooner than they are hashed. */
function hasTwins(names: readonly string[]): boolean {
  return names.length > 8 ? new Set(names).size < names.length : names.some((name, at) => names.indexOf(name) < at);
}
