import fc from 'fast-check';
import { expect, test } from 'vitest';
import { minimalCutSets, singleCauses, type FaultTree, type Gate } from '../../src/index.ts';

// by hand: g wants two of b, c, d, and b alone makes two of h's inputs true
test('a vote is brought about alone by what stands below enough of its inputs', () => {
  const gates: FaultTree['gates'] = {
    t: { type: 'or', inputs: ['a', 'g', 'h'] },
    g: { type: 'atleast', k: 2, inputs: ['b', 'c', 'd'] },
    h: { type: 'atleast', k: 2, inputs: ['p', 'q', 'e'] },
    p: { type: 'or', inputs: ['b', 'f'] },
    q: { type: 'or', inputs: ['b', 'c'] },
  };
  expect(singleCauses({ top: 't', gates }).toSorted()).toEqual(['a', 'b']);
});

test('a top that is itself an event is its own cause', () => {
  expect(singleCauses({ top: 'pin', gates: {} })).toEqual(['pin']);
});

// by hand: more events than bits in a word
test('of many events under one gate each is a cause', () => {
  const inputs = Array.from({ length: 100 }, (_, i) => `e${i}`);
  expect(singleCauses({ top: 't', gates: { t: { type: 'or', inputs } } })).toEqual(inputs);
});

/** Trees of up to seven gates over eight events; a gate uses gates of higher number only. */
const trees = fc.array(fc.record({ type: fc.constantFrom('and', 'or', 'atleast'), inputs: fc.uniqueArray(fc.nat(15), { minLength: 1, maxLength: 4 }), k: fc.nat(3) }), { minLength: 1, maxLength: 7 }).map((rows): FaultTree => ({
  top: 'g0',
  gates: Object.fromEntries(rows.map(({ type, inputs, k }, i): [string, Gate] => {
    const names = [...new Set(inputs.map((n) => (n > i && n < rows.length ? `g${n}` : `e${n % 8}`)))];
    return [`g${i}`, type === 'atleast' ? { type, k: 1 + (k % names.length), inputs: names } : { type: type as 'and' | 'or', inputs: names }];
  })),
}));

// independent route: the general engine, by decision diagrams
test('are the minimal cut sets of one event', () => {
  fc.assert(fc.property(trees, (tree) => {
    expect(singleCauses(tree).toSorted()).toEqual(minimalCutSets(tree, 1).sets().flat());
  }));
});
