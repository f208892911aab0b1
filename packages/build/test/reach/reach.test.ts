import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Access } from '@rotorwright/machine';
import { reach } from '@rotorwright/build';
import { assemblyGraph } from '../../src/reach/graph.ts';
import { machineByHand, type RoughModule } from '../by-hand.ts';
import { Brute } from './brute.ts';

const order = (modules: Readonly<Record<string, RoughModule>>, ...goals: readonly string[]) => reach(machineByHand({ modules }), goals).ways[0]?.undo.map(({ id }) => id);
const reasons = (modules: Readonly<Record<string, RoughModule>>, ...goals: readonly string[]) => reach(machineByHand({ modules }), goals).ways[0]?.undo.map(({ id, because }) => `${id}: ${because}`);
const off = (id: string): Access => ({ off: id });

describe('the way in', () => {
  const lid: RoughModule = { parts: { base: { ground: true }, lid: {}, pin: {} }, joints: { 'lid-screw': { in: 'a/base', holds: ['a/lid'], copies: ['1', '2'] }, inner: { in: 'a/base', holds: ['a/pin'], behind: off('a/lid') } } };

  it('undoes what ties a part, after what stands in front', () => {
    expect(reasons({ a: lid }, 'a/pin')).toEqual(['a/lid-screw: It keeps the lid in the way of the inner.', 'a/inner: It ties the pin.']);
    expect(order({ a: lid }, 'a/lid')).toEqual(['a/lid-screw']);
  });

  it('takes what keeps a joint before the joint, and what closes a stack before the stack', () => {
    const shaft: RoughModule = {
      parts: { case: { ground: true }, shaft: {}, bearing: {}, gear: {} },
      stacks: { s: { spindle: 'a/shaft', housing: ['a/case'], order: [{ part: 'a/bearing' }, { part: 'a/gear' }, { joint: 'a/nut' }] } },
      joints: { nut: { kind: 'nut', in: 'a/shaft' }, pin: { kind: 'pin', in: 'a/shaft', holds: ['a/gear'] }, 'pin-screw': { kind: 'set-screw', in: 'a/shaft', holds: ['a/pin'] } },
    };
    expect(reasons({ a: shaft }, 'a/bearing')).toEqual(['a/nut: It closes the s stack.', 'a/pin-screw: It keeps the pin.', 'a/pin: It fixes what stands in the s stack.', 'a/s: It ties the bearing.']);
  });

  it('leaves on a part what is pressed or bonded into it, and breaks that only for what is held there', () => {
    const bell: RoughModule = { parts: { base: { ground: true }, bell: {}, magnet: {} }, joints: { screw: { in: 'a/base', holds: ['a/bell'] }, bond: { kind: 'bond', in: 'a/bell', holds: ['a/magnet'] } } };
    const [way] = reach(machineByHand({ modules: { a: bell } }), ['a/bell']).ways;
    expect(way).toMatchObject({ undo: [{ id: 'a/screw' }], out: ['a/bell'], along: ['a/magnet'] });
    expect(order({ a: bell }, 'a/magnet')).toEqual(['a/bond']);
  });

  it('leaves on its shaft what slides there, with all that hangs on it, until the shaft comes out', () => {
    const mast: RoughModule = {
      parts: { base: { ground: true }, tube: {}, sleeve: { movesOn: 'a/tube' }, gear: {} },
      joints: { collar: { in: 'a/base', holds: ['a/tube'] }, bolt: { in: 'a/tube', holds: ['a/sleeve'] }, 'gear-screw': { in: 'a/sleeve', holds: ['a/gear'] } },
    };
    const way = (goal: string) => reach(machineByHand({ modules: { a: mast } }), [goal]).ways[0];
    expect(way('a/bolt')).toMatchObject({ out: [], along: [] });
    expect(way('a/gear')).toMatchObject({ out: ['a/gear'] });
    expect(way('a/tube')).toMatchObject({ undo: [{ id: 'a/collar' }, { id: 'a/bolt' }], out: ['a/tube', 'a/sleeve'], along: ['a/gear'] });
  });

  it('chooses the cheaper of two ways, and tells the other beside it when it is close', () => {
    const two = (copies: readonly string[]): RoughModule => ({
      parts: { base: { ground: true }, left: {}, right: {}, core: {} },
      joints: { 'left-screw': { in: 'a/base', holds: ['a/left'], copies: ['1', '2', '3'] }, 'right-screw': { in: 'a/base', holds: ['a/right'], copies }, inner: { in: 'a/base', holds: ['a/core'], behind: { any: [off('a/left'), off('a/right')] } } },
    });
    const all = (copies: readonly string[]) => reach(machineByHand({ modules: { a: two(copies) } }), ['a/core']).ways.map(({ undo }) => undo.map(({ id }) => id));
    expect(all(['1', '2', '3', '4'])).toEqual([['a/left-screw', 'a/inner'], ['a/right-screw', 'a/inner']]);
    expect(all(['1', '2'])).toEqual([['a/right-screw', 'a/inner'], ['a/left-screw', 'a/inner']]);
    expect(all([...'123456789'])).toEqual([['a/left-screw', 'a/inner']]);
  });

  it('leaves on the side that the module keeps, however cheap; where both must go it says so', () => {
    const plates: RoughModule = {
      keep: 'left', openings: { plate: { any: [off('a/left'), off('a/right')] } },
      parts: { base: { ground: true }, left: {}, right: {}, block: {} },
      joints: {
        'case-left': { in: 'a/base', holds: ['a/left'] }, 'case-right': { in: 'a/base', holds: ['a/right'], copies: [...'12345'] },
        'block-left': { in: 'a/block', holds: ['a/left'] }, 'block-right': { in: 'a/block', holds: ['a/right'] }, hidden: { in: 'a/block', behind: { any: [off('a/left'), off('a/right')] } },
      },
    };
    const { ways, proven } = reach(machineByHand({ modules: { a: plates } }), ['a/hidden']);
    expect(ways[0]).toMatchObject({ bothSides: [], undo: [{ id: 'a/case-right' }, { id: 'a/block-right' }, { id: 'a/hidden' }] });
    expect(proven).toBe(true);
    expect(reach(machineByHand({ modules: { a: plates } }), ['a/left', 'a/right']).ways[0]).toMatchObject({ bothSides: ['a'] });
  });

  it('takes a module out of the machine where its own parts are in the way', () => {
    const modules: Readonly<Record<string, RoughModule>> = {
      frame: { parts: { side: { ground: true } } },
      box: { parts: { case: {}, gear: {} }, joints: { mount: { in: 'frame/side', holds: ['box/case'] }, screw: { in: 'box/case', holds: ['box/gear'], behind: off('box') } } },
    };
    expect(order(modules, 'box/gear')).toEqual(['box/mount', 'box/screw']);
    expect(order(modules, 'box')).toEqual(['box/mount']);
  });

  it('does not argue in a circle: two lids that lie on each other are no way in', () => {
    const locked: RoughModule = { parts: { base: { ground: true }, a: {}, b: {} }, joints: { one: { in: 'a/base', holds: ['a/a'], behind: off('a/b') }, two: { in: 'a/base', holds: ['a/b'], behind: off('a/a') } } };
    expect(reach(machineByHand({ modules: { a: locked } }), ['a/a'])).toMatchObject({ ways: [], proven: true, lowerBound: Infinity });
  });

  it('names what it does not know', () => {
    expect(() => reach(machineByHand({ modules: { a: lid } }), ['a/cover'])).toThrow(/reach: the machine has no part, joint, stack or module a\/cover/u);
  });
});

const parts = ['a/p0', 'a/p1', 'a/p2', 'a/p3', 'b/p4', 'b/p5', 'b/p6'] as const;
const anyPart = fc.constantFrom(...parts);
const joints = ['a/j0', 'a/j1', 'a/j2', 'b/j3', 'b/j4', 'b/j5', 'b/j6'] as const;
const anyJoint = fc.constantFrom(...joints);
const anyOff = fc.oneof({ weight: 5, arbitrary: anyPart }, { weight: 2, arbitrary: anyJoint }, { weight: 1, arbitrary: fc.constantFrom('a', 'b') }).map(off);
const anyAccess: fc.Arbitrary<Access> = fc.oneof({ weight: 3, arbitrary: anyOff }, { weight: 2, arbitrary: fc.array(anyOff, { minLength: 2, maxLength: 3 }).map((any) => ({ any })) }, { weight: 1, arbitrary: fc.tuple(anyOff, anyOff).map((all) => ({ all })) });
const rarely = <Value>(arbitrary: fc.Arbitrary<Value>) => fc.option(arbitrary, { nil: undefined, freq: 2 });
const joint = fc.record({
  kind: fc.constantFrom('screw' as const, 'screw' as const, 'nut' as const, 'pin' as const, 'press' as const, 'ball-link' as const),
  in: fc.oneof({ weight: 6, arbitrary: anyPart }, { weight: 1, arbitrary: anyJoint }),
  holds: fc.oneof({ weight: 6, arbitrary: anyPart }, { weight: 1, arbitrary: anyJoint }).map((id) => [id]),
  copies: fc.integer({ min: 1, max: 3 }).map((count) => (count === 1 ? [] : [...'123'].slice(0, count))),
  behind: rarely(anyAccess),
});
const stack = fc.record({ spindle: anyPart, housing: anyPart.map((id) => [id]), order: fc.tuple(anyPart, rarely(anyJoint)).map(([part, closer]) => [{ part }, ...(closer === undefined ? [] : [{ joint: closer }])]) });
const given = <Value extends object>(value: Value) => Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as { [Key in keyof Value]: Exclude<Value[Key], undefined> };
const anyMachine = fc.record({ made: fc.array(joint, { minLength: 7, maxLength: 7 }), stacks: fc.array(stack, { maxLength: 2 }), behindPart: rarely(fc.tuple(anyPart, anyAccess)), behindModule: rarely(anyAccess) }).map(({ made, stacks, behindPart, behindModule }) => {
  const own = (module: string, ids: readonly string[]) => ids.filter((id) => id.startsWith(`${module}/`));
  const key = (id: string) => id.split('/')[1] ?? id;
  const module = (name: string): RoughModule => ({
    parts: Object.fromEntries(own(name, parts).map((id) => [key(id), { ground: id === 'a/p0', ...(behindPart?.[0] === id ? { behind: behindPart[1] } : {}) }])),
    joints: Object.fromEntries(own(name, joints).map((id) => [key(id), given(made[joints.indexOf(id as (typeof joints)[number])] as (typeof made)[number])])),
    stacks: name === 'b' ? Object.fromEntries(stacks.map((each, at) => [`s${at}`, each])) : {},
    ...(name === 'b' && behindModule !== undefined ? { behind: behindModule } : {}),
  });
  return machineByHand({ modules: { a: module('a'), b: module('b') } });
});

describe('against trying everything', () => {
  it('finds the cheapest set, and an order in which each is free when its turn comes', () => {
    let reached = 0;
    fc.assert(fc.property(anyMachine, fc.constantFrom(...parts.slice(1)), (machine, goal) => {
      const graph = assemblyGraph(machine);
      const costOf = (id: string) => graph.ties[graph.tieOf.get(id) ?? -1]?.cost ?? Number.NaN;
      const brute = new Brute(machine);
      const { lowerBound, proven, ways, cut } = reach(machine, [goal]);
      expect({ proven, cut }).toEqual({ proven: true, cut: false });
      expect(lowerBound).toBe(brute.cheapest(goal, costOf));
      for (const { undo } of ways) {
        const undone = new Set<string>();
        for (const { id } of undo) {
          expect(brute.isFree(id, undone), `${id} after ${[...undone].join()}`).toBe(true);
          undone.add(id);
        }
        expect(brute.isBare(goal, undone)).toBe(true);
        reached += 1;
      }
    }), { numRuns: 120 });
    // Most random machines are knots; enough of them must not be.
    expect(reached).toBeGreaterThan(40);
  });
});
