import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Wants } from '../../src/reach/clauses.ts';
import type { AssemblyGraph } from '../../src/reach/graph.ts';
import { Prices } from '../../src/reach/prices.ts';
import type { Want } from '../../src/reach/wants.ts';

const nodeCount = 6;

/** Parts and ties of any shape: only what prices and wants look at. */
function graphOf(ties: readonly { readonly cost: number; readonly groups: readonly (readonly number[])[] }[]): AssemblyGraph {
  const groups = ties.flatMap(({ groups: own }, tie) => own.map((nodes) => ({ tie, nodes })));
  const nodes = Array.from({ length: nodeCount }, (_, at) => `part-${at}`);
  const groupsAt = nodes.map((_, node) => groups.flatMap((group, at) => (group.nodes.includes(node) ? [at] : [])));
  const made = { nodes, groups, groupsAt, ground: nodes.map((_, node) => node === nodeCount - 1), ties: ties.map(({ cost }, index) => ({ index, cost })) };
  return made as unknown as AssemblyGraph;
}

/** By trying every set of ties. */
function cheapest(graph: AssemblyGraph, wants: readonly Want[], undone: Uint8Array): number {
  const asked = new Wants(graph);
  let best = Infinity;
  for (let set = 0; set < 2 ** graph.ties.length; set += 1) {
    const taken = Uint8Array.from(graph.ties, (_, tie) => (((set >> tie) & 1) === 1 || undone[tie] === 1 ? 1 : 0));
    if (!wants.every((want) => asked.isMet(want, taken))) continue;
    best = Math.min(best, graph.ties.reduce((sum, { cost }, tie) => sum + (taken[tie] === 1 && undone[tie] !== 1 ? cost : 0), 0));
  }
  return best;
}

const node = fc.integer({ min: 0, max: nodeCount - 1 });
const group = fc.uniqueArray(node, { minLength: 2, maxLength: 3 });
const tiesWith = (mostGroups: number) => fc.array(fc.record({ cost: fc.integer({ min: 1, max: 9 }), groups: fc.array(group, { minLength: 1, maxLength: mostGroups }) }), { minLength: 1, maxLength: 8 });
const away = (from: number): Want => ({ away: [from], from: new Set(), ground: true, past: new Set() });
const free = new Uint8Array(8);

describe('what wants cost at least', () => {
  it('is the cheapest cut, for one want and ties in one place each (independent route: every set of ties)', () => {
    fc.assert(
      fc.property(tiesWith(1), fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }), (ties, gone) => {
        const graph = graphOf(ties);
        const undone = Uint8Array.from(ties, (_, tie) => Number(gone[tie] ?? false));
        expect(new Prices(graph).of(away(0), Float64Array.from(ties, ({ cost }) => cost), undone, free)).toBeCloseTo(cheapest(graph, [away(0)], undone), 4);
      }),
    );
  });

  it('is never more than the cheapest set that meets several, with copies and alternatives (independent route: every set of ties)', () => {
    const want = fc.oneof(node.filter((at) => at !== nodeCount - 1).map(away), fc.tuple(fc.constantFrom(0, 1), fc.constantFrom(2, 3)).map(([a, b]): Want => ({ any: [away(a), away(b)] })));
    fc.assert(
      fc.property(tiesWith(3), fc.array(want, { minLength: 1, maxLength: 3 }), (ties, wants) => {
        const graph = graphOf(ties);
        const [prices, rest, undone] = [new Prices(graph), Float64Array.from(ties, ({ cost }) => cost), new Uint8Array(ties.length)];
        const sum = wants.reduce((total, each) => total + prices.of(each, rest, undone, free), 0);
        expect(sum).toBeLessThanOrEqual(cheapest(graph, wants, undone) + 1e-5);
        expect(Math.min(...rest)).toBeGreaterThanOrEqual(-1e-5);
      }),
    );
  });

  it('has no end where what may not be chosen leads to the ground', () => {
    const graph = graphOf([{ cost: 3, groups: [[0, 1]] }, { cost: 4, groups: [[1, nodeCount - 1]] }]);
    const rest = () => Float64Array.of(3, 4);
    expect(new Prices(graph).of(away(0), rest(), new Uint8Array(2), Uint8Array.of(1, 1))).toBe(Infinity);
    expect(new Prices(graph).of(away(0), rest(), new Uint8Array(2), Uint8Array.of(1, 0))).toBe(4);
  });
});
