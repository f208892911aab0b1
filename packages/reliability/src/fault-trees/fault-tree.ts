/** A gate is true when all, any, or at least k of its inputs are. Inputs are names of gates; a name that is no gate is a basic event. */
export type Gate<Input = string> =
  | { readonly type: 'and'; readonly inputs: readonly Input[] }
  | { readonly type: 'or'; readonly inputs: readonly Input[] }
  | { readonly type: 'atleast'; readonly k: number; readonly inputs: readonly Input[] };

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
  /** Basic events in the order in which a walk from the top meets them: neighbours in the tree lie close together. */
  readonly events: readonly string[];
  /**
   * Gates, each after all the gates it uses; the top gate is last. Empty when the top is itself a basic event. Inputs are
   * numbers: first those of the events, then those of the gates, in their order.
   */
  readonly gates: readonly Gate<number>[];
}

/**
 * Checks a tree and puts its gates and events in order.
 *
 * @throws FaultTreeError when a gate has no inputs, its k is not between 1 and their number, or it depends on itself
 */
export function orderTree(tree: FaultTree): OrderedTree {
  const gates: Gate[] = [];
  const events: string[] = [];
  /** Of each name that was met its place: an event's from 0 up, a gate's from -1 down; nothing while it lies on the way from the top to here. */
  const placed = new Map<string, number | undefined>();
  // The way is written out, with the input of each gate that is next: a chain of ten thousand gates must not overflow the call stack.
  const way: string[] = [];
  const nextInput: number[] = [];
  const meet = (name: string): void => {
    const gate = Object.hasOwn(tree.gates, name) ? tree.gates[name] : undefined;
    if (gate === undefined) {
      placed.set(name, events.length);
      events.push(name);
      return;
    }
    placed.set(name, undefined);
    checkGate(name, gate);
    way.push(name);
    nextInput.push(0);
  };
  meet(tree.top);
  for (let at = way.length - 1; at >= 0; at = way.length - 1) {
    const name = way[at]!;
    const gate = tree.gates[name]!;
    const input = gate.inputs[nextInput[at]!++];
    if (input === undefined) {
      placed.set(name, -1 - gates.length);
      gates.push(gate);
      way.pop();
      nextInput.pop();
      continue;
    }
    if (placed.get(input) !== undefined) continue;
    if (placed.has(input)) throw new FaultTreeError(input, `depends on itself: ${way.slice(way.indexOf(input)).join(' → ')} → ${input}`);
    meet(input);
  }
  const numberOf = (name: string): number => {
    const place = placed.get(name)!;
    return place < 0 ? events.length - 1 - place : place;
  };
  return { gates: gates.map((gate) => ({ ...gate, inputs: gate.inputs.map(numberOf) })), events };
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
