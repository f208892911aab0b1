import { orderTree, type FaultTree } from './fault-tree.ts';

/**
 * Basic events that bring about the top event alone: its minimal cut sets of one event, without forming any other.
 *
 * An event alone makes a gate true when it alone makes true as many inputs as the gate wants. So one pass over the gates
 * does, with a bit for each event; trees of many thousand events take milliseconds.
 *
 * @returns names of events, in the order in which a walk from the top meets them
 * @throws FaultTreeError when the tree is malformed
 * @example singleCauses({ top: 't', gates: { t: { type: 'or', inputs: ['a', 'g'] }, g: { type: 'and', inputs: ['b', 'c'] } } }) // ['a']
 */
export function singleCauses(tree: FaultTree): string[] {
  const { gates, events } = orderTree(tree);
  const words = Math.ceil(events.length / 32);
  const causes = new Map<string, Uint32Array>();
  events.forEach((name, i) => {
    const own = new Uint32Array(words);
    own[i >> 5]! |= 1 << (i & 31);
    causes.set(name, own);
  });
  for (const name of gates) {
    const gate = tree.gates[name]!;
    const inputs = gate.inputs.map((input) => causes.get(input)!);
    causes.set(name, madeTrueBy(inputs, gate.type === 'or' ? 1 : gate.type === 'and' ? inputs.length : gate.k, words));
  }
  const top = causes.get(tree.top)!;
  return events.filter((_, i) => (top[i >> 5]! >>> (i & 31)) & 1);
}

/** Events that are in at least `wanted` of the sets: `atLeast[j]` holds those in more than j of the sets seen so far. */
function madeTrueBy(sets: readonly Uint32Array[], wanted: number, words: number): Uint32Array {
  const atLeast = Array.from({ length: wanted }, () => new Uint32Array(words));
  for (const set of sets) {
    for (let word = 0; word < words; word++) {
      let carry = set[word]!;
      for (let j = 0; carry !== 0 && j < wanted; j++) {
        const before = atLeast[j]![word]!;
        atLeast[j]![word] = before | carry;
        carry &= before;
      }
    }
  }
  return atLeast[wanted - 1]!;
}
