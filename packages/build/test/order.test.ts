import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planBuild, type Plan } from '@rotorwright/build';
import { machineByHand, type RoughMachine, type RoughModule } from './by-hand.ts';

const planOf = (modules: RoughMachine['modules'], more: Omit<RoughMachine, 'modules'> = {}) => planBuild(machineByHand({ ...more, modules }));
const order = (plan: Plan) => [...plan.steps.keys()];

describe('access', () => {
  const two = (behind: NonNullable<RoughModule['joints']>[string]['behind']): RoughModule => ({
    parts: { base: {}, cover: {}, lid: {} },
    joints: { 'cover-screw': { in: 'a/base', holds: ['a/cover'] }, 'lid-screw': { in: 'a/base', holds: ['a/lid'] }, inner: { in: 'a/base', ...(behind === undefined ? {} : { behind }) } },
  });

  it('without any, the file’s order stands', () => {
    expect(order(planOf({ a: two(undefined) }))).toEqual(['a/cover-screw', 'a/lid-screw', 'a/inner']);
  });

  it('what is behind a part is made before the part is put on; behind a joint, before the joint', () => {
    expect(order(planOf({ a: two({ off: 'a/cover' }) }))).toEqual(['a/lid-screw', 'a/inner', 'a/cover-screw']);
    expect(order(planOf({ a: two({ off: 'a/cover-screw' }) }))).toEqual(['a/lid-screw', 'a/inner', 'a/cover-screw']);
    expect(order(planOf({ a: two({ all: [{ off: 'a/cover' }, { off: 'a/lid' }] }) }))).toEqual(['a/inner', 'a/cover-screw', 'a/lid-screw']);
  });

  it('where one of several will do, the first that closes no loop is taken, and the side that stays on last', () => {
    const any = { any: [{ off: 'a/cover' }, { off: 'a/lid' }] } as const;
    expect(order(planOf({ a: two(any) }))).toEqual(['a/lid-screw', 'a/inner', 'a/cover-screw']);
    expect(order(planOf({ a: { ...two(any), keep: 'cover' } }))).toEqual(['a/cover-screw', 'a/inner', 'a/lid-screw']);
    const blocked = two(any);
    const joints = { ...blocked.joints, 'cover-screw': { ...blocked.joints?.['cover-screw'], behind: { off: 'a/inner' } } };
    expect(planOf({ a: { ...blocked, joints } })).toMatchObject({ findings: [] });
    expect(order(planOf({ a: { ...blocked, joints } }))).toEqual(['a/cover-screw', 'a/inner', 'a/lid-screw']);
  });
});

describe('joints and stacks', () => {
  it('a joint that holds another, or sits on it, comes after it; its compound must have cured', () => {
    const plan = planOf({ a: { parts: { arm: {} }, joints: { link: { kind: 'ball-link', in: 'a/stud' }, stud: { kind: 'stud', in: 'a/arm', locks: ['medium'] } } } });
    expect(order(plan)).toEqual(['a/stud', 'a/link']);
    expect(plan.steps.get('a/link')).toMatchObject({ after: ['a/stud'], cured: ['a/stud'] });
  });

  it('what closes a stack comes after it, and measuring after both, while the compound is wet', () => {
    const plan = planOf({
      a: {
        parts: { shaft: {}, box: {}, bearing: {} },
        joints: { nut: { kind: 'nut', in: 'a/shaft', locks: ['medium'] } },
        measurements: { play: { of: 'a/main', setBy: ['a/nut'] } },
        stacks: { main: { spindle: 'a/shaft', housing: ['a/box'], order: [{ part: 'a/bearing' }, { joint: 'a/nut' }] } },
      },
    });
    expect(order(plan)).toEqual(['a/main', 'a/nut', 'a/play']);
    expect(plan.steps.get('a/play')).toMatchObject({ after: ['a/nut'], cured: [], actions: ['Adjust it by the nut before the compound sets.', 'Note the value; what is wanted comes from the figure of that name.'] });
  });

  it('pressed and glued members come ready into their stack, pinned ones are pinned in it; access has the last word', () => {
    const module = (kind: 'bond' | 'pin', behind?: { off: string }): RoughModule => ({
      parts: { shaft: {}, box: {}, gear: {}, bearing: {} },
      joints: { fix: { kind, in: 'a/shaft', holds: ['a/gear'], fit: 'press', locks: ['press'], ...(behind === undefined ? {} : { behind }) } },
      stacks: { main: { spindle: 'a/shaft', housing: ['a/box'], order: [{ part: 'a/gear' }, { part: 'a/bearing' }] } },
    });
    expect(order(planOf({ a: module('bond') }))).toEqual(['a/fix', 'a/main']);
    expect(planOf({ a: module('bond') }).steps.get('a/main')?.cured).toEqual(['a/fix']);
    expect(order(planOf({ a: module('pin') }))).toEqual(['a/main', 'a/fix']);
    const hidden = planOf({ a: module('pin', { off: 'a/bearing' }) });
    expect(order(hidden)).toEqual(['a/fix', 'a/main']);
    expect(hidden.findings).toEqual([]);
  });
});

describe('modules', () => {
  const screwed = (to: string): RoughModule => ({ parts: { body: {} }, joints: { mount: { in: to } } });

  it('come after the modules that they are built on, else in the order of the file', () => {
    const plan = planOf({ tail: screwed('boom/body'), boom: screwed('frame/body'), frame: { parts: { body: {} }, joints: { square: { in: 'frame/body' } } }, skid: screwed('frame/body') });
    expect(plan.modules.map(({ id, after }) => [id, after])).toEqual([['frame', []], ['boom', ['frame']], ['tail', ['boom']], ['skid', ['frame']]]);
  });

  it('are mounted last, when all in them is done', () => {
    const plan = planOf({ frame: { parts: { body: {} } }, box: { parts: { body: {}, lid: {} }, joints: { mount: { in: 'frame/body', holds: ['box/body'] }, lid: { in: 'box/body', holds: ['box/lid'] } }, measurements: { gap: { of: 'box/lid' } } } });
    expect(order(plan)).toEqual(['box/lid', 'box/gap', 'box/mount']);
  });

  it('go in before what stands in their way', () => {
    const plan = planOf({ boom: { parts: { tube: {} }, joints: { clamp: { in: 'boom/tube' } } }, box: { behind: { off: 'boom/clamp' }, parts: { body: {} }, joints: { mount: { in: 'boom/tube', holds: ['box/body'] } } } });
    expect(order(plan)).toEqual(['box/mount', 'boom/clamp']);
  });

  it('that lean on each other are still planned, with every step', () => {
    const plan = planOf({ a: screwed('b/body'), b: screwed('a/body') });
    expect(plan.modules.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(plan.findings).toEqual([]);
  });

  it('a mesh is measured with both modules in the machine', () => {
    const coupling = { driver: { path: '', on: 'x', part: 'a/gear', choices: [] }, driven: { path: '', on: 'y', part: 'b/gear', choices: [] } };
    const module = (id: string, measurements: RoughModule['measurements'] = {}): RoughModule => ({ parts: { gear: {} }, joints: { mount: { in: 'frame/body', holds: [`${id}/gear`] } }, measurements });
    const plan = planOf({ frame: { parts: { body: {} } }, a: module('a', { backlash: { quantity: 'backlash', of: 'mesh' } }), b: module('b') }, { couplings: { mesh: coupling } });
    expect(order(plan)).toEqual(['a/mount', 'b/mount', 'a/backlash']);
    expect(plan.modules.map(({ id }) => id)).toEqual(['a', 'b']);
  });
});

describe('a reference that leads nowhere', () => {
  it('does not keep the rest from being planned', () => {
    const plan = planOf({ a: { joints: { one: { in: 'a/gone', holds: ['b/gone', 'a/two'], behind: { off: 'c/gone' } }, two: {} }, measurements: { play: { of: 'gone' } }, steps: { look: { after: ['a/gone'] } } } });
    expect(order(plan)).toEqual(['a/play', 'a/look', 'a/two', 'a/one']);
  });
});

describe('a loop', () => {
  const plan = planOf({
    a: { joints: { one: { behind: { off: 'a/two' } }, two: { behind: { off: 'a/three' } }, three: { behind: { off: 'a/one' } }, four: {} }, steps: { first: { after: ['a/last'] }, last: { after: ['a/first'] } } },
  });

  it('is named, once each, from the step that the file has first', () => {
    expect(plan.findings.map(({ code, severity, path, values }) => [code, severity, path, values['loop']])).toEqual([
      ['order/cycle', 'error', 'modules.a.joints.one', 'a/one → a/two → a/three → a/one'],
      ['order/cycle', 'error', 'modules.a.steps.first', 'a/first → a/last → a/first'],
    ]);
  });

  it('leaves a plan with every step, that can be worked off', () => {
    expect(order(plan).toSorted()).toEqual(['a/first', 'a/four', 'a/last', 'a/one', 'a/three', 'a/two']);
    for (const step of plan.steps.values()) for (const id of step.after) expect(order(plan).indexOf(id)).toBeLessThan(order(plan).indexOf(step.id));
  });
});

const anyMachine = fc.array(fc.record({ holds: fc.option(fc.nat(19)), behind: fc.option(fc.nat(19)), other: fc.option(fc.nat(19)) }), { minLength: 2, maxLength: 20 }).map((joints) => {
  const id = (at: number) => `m/j${at % joints.length}`;
  return {
    m: {
      joints: Object.fromEntries(
        joints.map(({ holds, behind, other }, at) => [
          `j${at}`,
          { ...(holds === null ? {} : { holds: [id(holds)] }), ...(behind === null ? {} : { behind: other === null ? { off: id(behind) } : { any: [{ off: id(behind) }, { off: id(other) }] } }) },
        ]),
      ),
    },
  } satisfies RoughMachine['modules'];
});

describe('laws', () => {
  it('every step is planned once, after all that it waits for, and the same every time', () => {
    fc.assert(
      fc.property(anyMachine, (modules) => {
        const plan = planOf(modules);
        const ids = order(plan);
        expect(ids.toSorted()).toEqual(Object.keys(modules.m.joints).map((key) => `m/${key}`).toSorted());
        for (const step of plan.steps.values()) {
          for (const id of step.after) expect(ids.indexOf(id)).toBeLessThan(ids.indexOf(step.id));
          for (const id of step.cured) expect(step.after).toContain(id);
        }
        expect(order(planOf(modules))).toEqual(ids);
      }),
    );
  });

  it('without a loop, a joint comes after what it holds and before what hides it', () => {
    fc.assert(
      fc.property(anyMachine, (modules) => {
        const plan = planOf(modules);
        if (plan.findings.some(({ code }) => code === 'order/cycle')) return;
        const at = (id: string) => order(plan).indexOf(id);
        for (const [key, joint] of Object.entries(modules.m.joints as Record<string, { holds?: string[]; behind?: { off?: string; any?: { off: string }[] } }>)) {
          const id = `m/${key}`;
          for (const held of joint.holds ?? []) if (held !== id) expect(at(held)).toBeLessThan(at(id));
          const ways = joint.behind?.any ?? (joint.behind?.off === undefined ? [] : [{ off: joint.behind.off }]);
          if (ways.length > 0) expect(ways.some(({ off }) => off === id || at(id) < at(off))).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('holds for a chain of two thousand', () => {
    const joints = Object.fromEntries(Array.from({ length: 2000 }, (_, at) => [`j${at}`, at === 0 ? {} : { holds: [`m/j${at - 1}`] }]));
    expect(order(planOf({ m: { joints } }))[1999]).toBe('m/j1999');
  });
});
