import { minimalCutSets, type FaultTree } from '@rotorwright/reliability';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { holds } from '../../src/index.ts';
import { machineByHand, type RoughModule } from '../by-hand.ts';
import { simulate } from './simulate.ts';

const lock = fc.constantFrom<readonly ('none' | 'medium' | 'insert' | 'press')[] | undefined>(undefined, ['none'], ['medium'], ['insert', 'medium'], ['press']);
const joint = fc.record({
  from: fc.nat(5), to: fc.nat(5), copies: fc.nat(2), spare: fc.nat(2), backup: fc.nat(4).map((n) => n === 0), link: fc.nat(4).map((n) => n === 0), locks: lock,
  keeper: fc.option(fc.record({ backup: fc.boolean(), locks: lock, copies: fc.nat(1) }), { freq: 3 }),
});
const stack = fc.option(fc.record({ spindle: fc.integer({ min: 1, max: 5 }), housing: fc.integer({ min: 1, max: 5 }), copies: fc.nat(1) }), { freq: 2 });

/** Six parts, the first of them the ground; each hangs on an earlier one, and some more joints go anywhere. */
const machines = fc.record({ tree: fc.tuple(...[1, 2, 3, 4, 5].map(() => joint)), more: fc.array(joint, { maxLength: 3 }), stack }).map(({ tree, more, stack: row }) => {
  const parts: NonNullable<RoughModule['parts']> = Object.fromEntries([0, 1, 2, 3, 4, 5].map((i) => [`p${i}`, { ground: i === 0 }]));
  const joints: Record<string, NonNullable<RoughModule['joints']>[string]> = {};
  const names = (count: number): readonly string[] => (count === 0 ? [] : Array.from({ length: count + 1 }, (_, i) => String(i + 1)));
  [...tree.map((one, i) => ({ ...one, from: one.from % (i + 1), to: i + 1 })), ...more].forEach(({ from, to, copies, spare, backup, link, locks, keeper }, i) => {
    if (from === to) return;
    const count = Math.max(1, names(copies).length);
    joints[`j${i}`] = { kind: link ? 'ball-link' : 'screw', in: `m/p${from}`, holds: [`m/p${to}`], copies: names(copies), backup, ...(spare > 0 && spare < count ? { enough: count - spare } : {}), ...(link ? { locks: ['press'] as const } : locks === undefined ? {} : { locks }) };
    if (keeper === null || copies > 0 || link) return;
    joints[`k${i}`] = { kind: 'set-screw', in: `m/p${from}`, holds: [`m/j${i}`], copies: names(keeper.copies), backup: keeper.backup, ...(keeper.locks === undefined ? {} : { locks: keeper.locks }) };
  });
  const stacked = row !== null && row.spindle !== row.housing;
  if (stacked) joints['closer'] = { kind: 'circlip', in: `m/p${row.spindle}`, copies: names(row.copies), locks: ['press'] };
  return machineByHand({
    modules: {
      m: {
        parts: { ...parts, bearing: { kind: 'deep-groove' } }, joints,
        ...(stacked ? { stacks: { s: { spindle: `m/p${row.spindle}`, housing: [`m/p${row.housing}`], order: [{ shoulder: `m/p${row.spindle}` }, { part: 'm/bearing' }, { shoulder: `m/p${row.housing}` }, { joint: 'm/closer' }] } } } : {}),
      },
    },
    shafts: { a: { part: 'm/p1' }, b: { part: 'm/p5' } },
    hazards: { off: { when: { comesOff: 'm/p5' } }, cut: { when: { noTorque: ['a', 'b'] } }, both: { when: { all: [{ comesOff: 'm/p4' }, { any: [{ comesOff: 'm/p3' }, { comesOff: 'm/p2' }] }] } } },
  });
});

const isTrue = ({ gates }: FaultTree, name: string, happened: ReadonlySet<string>): boolean => {
  const gate = gates[name];
  if (gate === undefined) return happened.has(name);
  const count = gate.inputs.filter((input) => isTrue({ top: name, gates }, input, happened)).length;
  return count >= (gate.type === 'or' ? 1 : gate.type === 'and' ? gate.inputs.length : gate.k);
};

type Simulated = ReturnType<typeof simulate>;
const played: Readonly<Record<string, (state: Simulated) => boolean>> = {
  off: ({ inPlace }) => !inPlace.has('m/p5'),
  cut: ({ passes }) => !passes('m/p1', 'm/p5'),
  both: ({ inPlace }) => !inPlace.has('m/p4') && (!inPlace.has('m/p3') || !inPlace.has('m/p2')),
};

// independent route: the rules played through on sets of things that happened
test('fault trees say what the rules say, for whatever happens', () => {
  fc.assert(fc.property(machines, fc.array(fc.array(fc.nat(3), { minLength: 60, maxLength: 60 }), { minLength: 6, maxLength: 6 }), (machine, draws) => {
    const { hazards, events } = holds(machine);
    for (const draw of draws) {
      const happened = new Set([...events.keys()].filter((_, i) => draw[i % 60] === 0));
      const state = simulate(machine, happened);
      for (const [id, { tree, gaps }] of hazards) if (gaps.length === 0) expect([id, tree !== undefined && isTrue(tree, tree.top, happened)]).toEqual([id, played[id]!(state)]);
    }
  }), { numRuns: 60 });
});

test('minimal cut sets bring their hazard about, none with one event less, and nothing does without one of them', () => {
  fc.assert(fc.property(machines, fc.array(fc.nat(3), { minLength: 60, maxLength: 60 }), (machine, draw) => {
    const { hazards, events } = holds(machine);
    for (const [id, { tree, gaps, singlePoints }] of hazards) {
      if (tree === undefined || gaps.length > 0) continue;
      const sets = minimalCutSets(tree).sets();
      const brings = (set: readonly string[]): boolean => played[id]!(simulate(machine, new Set(set)));
      for (const set of sets.slice(0, 12)) {
        expect(brings(set)).toBe(true);
        for (const spared of set) expect(brings(set.filter((event) => event !== spared))).toBe(false);
      }
      const happened = [...events.keys()].filter((_, i) => draw[i % 60] === 0);
      expect(sets.some((set) => set.every((event) => happened.includes(event)))).toBe(brings(happened));
      expect(singlePoints.flatMap((point) => point.events.map((event) => event.id)).toSorted()).toEqual(sets.filter((set) => set.length === 1).flat().toSorted());
    }
  }), { numRuns: 40 });
});
