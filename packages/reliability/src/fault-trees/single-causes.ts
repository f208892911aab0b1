import { orderTree, type FaultTree, type Gate } from './fault-tree.ts';

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
  // Row after row, for each event and each gate a bit for every event that brings it about alone.
  const words = Math.ceil(events.length / 32);
  const causes = new Uint32Array(words * (events.length + gates.length));
  for (let at = 0; at < events.length; at += 1) causes[at * words + (at >> 5)] = 1 << (at & 31);
  const atLeast = new Uint32Array(gates.reduce((most, gate) => Math.max(most, wantedBy(gate)), 0));
  for (const [at, gate] of gates.entries()) sumUp(causes, words, events.length + at, gate.inputs, atLeast, wantedBy(gate));
  const top = (events.length + gates.length - 1) * words;
  return events.filter((_, at) => (causes[top + (at >> 5)]! >>> (at & 31)) & 1);
}

function wantedBy(gate: Gate<number>): number {
  return gate.type === 'or' ? 1 : gate.type === 'and' ? gate.inputs.length : gate.k;
}

/**
 * Writes into a row what at least `wanted` of some other rows hold.
 *
 * @param atLeast working space: in `atLeast[j]` comes what more than j of the rows seen so far hold
 */
function sumUp(rows: Uint32Array, words: number, into: number, from: readonly number[], atLeast: Uint32Array, wanted: number): void {
  for (let word = 0; word < words; word += 1) {
    atLeast.fill(0, 0, wanted);
    for (const row of from) {
      let carry = rows[row * words + word]!;
      for (let j = 0; carry !== 0 && j < wanted; j += 1) {
        const before = atLeast[j]!;
        atLeast[j] = before | carry;
        carry &= before;
      }
    }
    rows[into * words + word] = atLeast[wanted - 1]!;
  }
}
