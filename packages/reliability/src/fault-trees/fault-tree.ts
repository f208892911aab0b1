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
  const seen = new Set<string>();
  const open = new Set<string>();
  // An explicit stack: a chain of ten thousand gates must not overflow the call stack.
  const stack: { name: string; next: number }[] = [{ name: tree.top, next: 0 }];
  while (stack.length > 0) {
    const here = stack.at(-1)!;
    const gate = Object.hasOwn(tree.gates, here.name) ? tree.gates[here.name] : undefined;
    if (here.next === 0) {
      if (seen.has(here.name)) {
        stack.pop();
        continue;
      }
      if (!gate) {
        seen.add(here.name);
        events.push(here.name);
        stack.pop();
        continue;
      }
      checkGate(here.name, gate);
      open.add(here.name);
    }
    const input = gate!.inputs[here.next++];
    if (input === undefined) {
      seen.add(here.name);
      open.delete(here.name);
      gates.push(here.name);
      stack.pop();
    } else {
      if (open.has(input)) throw new FaultTreeError(input, `depends on itself: ${[...open].slice([...open].indexOf(input)).join(' → ')} → ${input}`);
      stack.push({ name: input, next: 0 });
    }
  }
  return { gates, events };
}

function checkGate(name: string, gate: Gate): void {
  if (gate.inputs.length === 0) throw new FaultTreeError(name, 'has no inputs; give at least one');
  if (new Set(gate.inputs).size < gate.inputs.length) throw new FaultTreeError(name, 'names an input twice; give each once');
  if (gate.type === 'atleast' && !(Number.isInteger(gate.k) && gate.k >= 1 && gate.k <= gate.inputs.length)) {
    throw new FaultTreeError(name, `k must be a whole number from 1 to ${gate.inputs.length}, its number of inputs, got ${gate.k}`);
  }
}
