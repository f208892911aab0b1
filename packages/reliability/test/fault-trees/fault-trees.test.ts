import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FaultTreeError, minimalCutSets, topProbability, type FaultTree, type Gate } from '../../src/index.ts';

const bridge: FaultTree = {
  top: 'top',
  gates: {
    top: { type: 'or', inputs: ['ab', 'cd', 'aed', 'ceb'] },
    ab: { type: 'and', inputs: ['a', 'b'] },
    cd: { type: 'and', inputs: ['c', 'd'] },
    aed: { type: 'and', inputs: ['a', 'e', 'd'] },
    ceb: { type: 'and', inputs: ['c', 'e', 'b'] },
  },
};

describe('minimal cut sets', () => {
  test('of a bridge are its four paths', () => {
    expect(minimalCutSets(bridge).sets()).toEqual([['a', 'b'], ['c', 'd'], ['a', 'd', 'e'], ['b', 'c', 'e']]);
  });

  test('up to an order leave out the larger ones and count the rest', () => {
    expect(minimalCutSets(bridge, 2).sets()).toEqual([['a', 'b'], ['c', 'd']]);
    expect(minimalCutSets(bridge).countByOrder).toEqual([0, 0, 2, 2]);
  });

  test('of a top that is itself an event is that event', () => {
    expect(minimalCutSets({ top: 'pin', gates: {} }).sets()).toEqual([['pin']]);
  });

  // by hand: 2 of 3 fails with any pair
  test('of a vote are all pairs', () => {
    expect(minimalCutSets({ top: 't', gates: { t: { type: 'atleast', k: 2, inputs: ['x', 'y', 'z'] } } }).sets()).toEqual([['x', 'y'], ['x', 'z'], ['y', 'z']]);
  });
});

describe('the probability of the top event', () => {
  // by hand: closed form 3p² − 2p³ = 0.028
  test('of a vote of three', () => {
    const tree: FaultTree = { top: 't', gates: { t: { type: 'atleast', k: 2, inputs: ['x', 'y', 'z'] } } };
    const { probability, birnbaum } = topProbability(tree, { x: 0.1, y: 0.1, z: 0.1 })!;
    expect(probability).toBeCloseTo(0.028, 15);
    expect(birnbaum['x']).toBeCloseTo(0.18, 15);
  });

  // published: pressure tank of the NASA Fault Tree Handbook with Aerospace Applications (2002), as given in a public test file: 3.50133481e-5
  test('of a pressure tank', () => {
    const tree: FaultTree = {
      top: 'E1',
      gates: {
        E1: { type: 'or', inputs: ['T', 'E2'] }, E2: { type: 'or', inputs: ['E3', 'K2'] }, E3: { type: 'and', inputs: ['S', 'E4'] },
        E4: { type: 'or', inputs: ['S1', 'E5'] }, E5: { type: 'or', inputs: ['K1', 'R'] },
      },
    };
    const p = { T: 5e-6, K2: 3e-5, S: 1e-4, S1: 3e-5, K1: 5e-6, R: 1e-4 };
    expect(topProbability(tree, p)!.probability / 3.5013348120867e-5).toBeCloseTo(1, 6);
    expect(minimalCutSets(tree).sets()).toEqual([['K2'], ['T'], ['K1', 'S'], ['R', 'S'], ['S', 'S1']]);
    // by hand: the share of K2 in the rare-event sum, 3e-5 / 3.50135e-5
    expect(minimalCutSets(tree).fussellVesely(p)['K2']).toBeCloseTo(3e-5 / 3.50135e-5, 12);
  });

  test('is not given when the diagram grows beyond its bound', () => {
    const names = Array.from({ length: 40 }, (_, i) => `e${i}`);
    const wide: FaultTree = { top: 't', gates: { t: { type: 'atleast', k: 20, inputs: names } } };
    const p = Object.fromEntries(names.map((name) => [name, 0.5]));
    expect(topProbability(wide, p, 50)).toBeUndefined();
    // law: a fair vote of 40 with k = 20 lies above one half by half the middle term of the binomial
    expect(topProbability(wide, p)!.probability).toBeGreaterThan(0.5);
  });

  test('wants every probability', () => {
    expect(() => topProbability(bridge, { a: 0.1 })).toThrow(/probability of \w must be from 0 to 1, got undefined/);
  });
});

/** Random trees over a few events, with shared gates. */
const anyTree = fc
  .record({ events: fc.integer({ min: 1, max: 9 }), gates: fc.array(fc.tuple(fc.nat(2), fc.array(fc.nat(50), { minLength: 1, maxLength: 4 }), fc.nat(3)), { minLength: 1, maxLength: 9 }) })
  .map(({ events, gates }): { tree: FaultTree; events: string[] } => {
    const names = Array.from({ length: events }, (_, i) => `e${i}`);
    const made: Record<string, Gate> = {};
    for (const [i, [type, picks, k]] of gates.entries()) {
      const pool = [...names, ...Object.keys(made)];
      const inputs = [...new Set(picks.map((pick) => pool[pick % pool.length]!))];
      made[`g${i}`] = type === 0 ? { type: 'or', inputs } : type === 1 ? { type: 'and', inputs } : { type: 'atleast', k: 1 + (k % inputs.length), inputs };
    }
    return { tree: { top: `g${gates.length - 1}`, gates: made }, events: names };
  });

function happens(tree: FaultTree, name: string, failed: ReadonlySet<string>): boolean {
  const gate = tree.gates[name];
  if (!gate) return failed.has(name);
  const count = gate.inputs.filter((input) => happens(tree, input, failed)).length;
  return gate.type === 'or' ? count > 0 : gate.type === 'and' ? count === gate.inputs.length : count >= gate.k;
}

// independent route: every combination of events is tried
test('cut sets and probability agree with trying every combination', () => {
  fc.assert(
    fc.property(anyTree, ({ tree, events }) => {
      const p = Object.fromEntries(events.map((name, i) => [name, 0.05 + 0.1 * i]));
      const causes: string[][] = [];
      let total = 0;
      for (let bits = 0; bits < 2 ** events.length; bits++) {
        const failed = new Set(events.filter((_, i) => (bits >> i) & 1));
        if (!happens(tree, tree.top, failed)) continue;
        total += events.reduce((product, name) => product * (failed.has(name) ? p[name]! : 1 - p[name]!), 1);
        causes.push([...failed]);
      }
      const minimal = causes.filter((set) => !causes.some((other) => other.length < set.length && other.every((name) => set.includes(name))));
      const key = (sets: string[][]): string[] => sets.map((set) => [...set].sort().join()).sort();
      expect(key(minimalCutSets(tree).sets())).toEqual(key(minimal));
      for (const limit of [1, 2, 3]) expect(key(minimalCutSets(tree, limit).sets())).toEqual(key(minimal.filter((set) => set.length <= limit)));
      expect(topProbability(tree, p)!.probability).toBeCloseTo(total, 12);
    }),
    { numRuns: 300 },
  );
});

describe('a malformed tree is refused', () => {
  test.each([
    ['a loop', { top: 'a', gates: { a: { type: 'or', inputs: ['b'] }, b: { type: 'or', inputs: ['a'] } } }, /depends on itself: a → b → a/],
    ['an empty gate', { top: 'a', gates: { a: { type: 'or', inputs: [] } } }, /has no inputs/],
    ['a vote of more than there are', { top: 'a', gates: { a: { type: 'atleast', k: 3, inputs: ['x', 'y'] } } }, /k must be a whole number from 1 to 2/],
    ['an input named twice', { top: 'a', gates: { a: { type: 'or', inputs: ['x', 'x'] } } }, /names an input twice/],
  ] as const)('%s', (_, tree, message) => {
    expect(() => minimalCutSets(tree as FaultTree)).toThrow(message);
    expect(() => minimalCutSets(tree as FaultTree)).toThrow(FaultTreeError);
  });
});

test('a chain of ten thousand gates does not overflow the stack', () => {
  const gates: Record<string, Gate> = {};
  for (let i = 0; i < 10_000; i++) gates[`g${i}`] = { type: 'or', inputs: [i === 0 ? 'e' : `g${i - 1}`] };
  expect(minimalCutSets({ top: 'g9999', gates }).sets()).toEqual([['e']]);
});
