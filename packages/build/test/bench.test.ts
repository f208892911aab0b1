import { describe, expect, it } from 'vitest';
import { needs, nextSteps, planBuild, type StepStatus } from '@rotorwright/build';
import { machineByHand } from './by-hand.ts';

const plan = planBuild(
  machineByHand({
    modules: {
      arm: {
        parts: { arm: {}, rod: {} },
        joints: {
          stud: { kind: 'stud', thread: 'M2.5', in: 'arm/arm', locks: ['medium'], torque: 0.5 },
          link: { kind: 'ball-link', in: 'arm/stud', holds: ['arm/rod'] },
          screw: { thread: 'M3', head: 'socket', class: '12.9', length: 0.008, copies: ['a', 'b'], torque: 1.1, locks: ['medium'] },
          'far-screw': { thread: 'M3', head: 'socket', class: '12.9', length: 0.008, torque: 1.1 },
          'long-screw': { thread: 'M3', head: 'socket', class: '12.9', length: 0.012, torque: 1.1 },
          'big-screw': { thread: 'M10', head: 'socket' },
        },
        measurements: { play: { of: 'arm/rod', with: 'dial gauge', setBy: ['arm/screw'] } },
      },
    },
  }),
);

const next = (states: Readonly<Record<string, StepStatus>>) => nextSteps(plan, new Map(Object.entries(states)));
const ids = (steps: readonly { readonly id: string }[]) => steps.map(({ id }) => id);

describe('what is next', () => {
  it('at first: all that waits for nothing, in the order of work', () => {
    expect(ids(next({}).ready)).toEqual(['arm/stud', 'arm/screw', 'arm/far-screw', 'arm/long-screw', 'arm/big-screw']);
    const waiting = next({}).waiting.map(({ step, for: waits }) => [step.id, waits.map((wait) => [wait.step.id, wait.because])]);
    expect(new Map(waiting as [string, unknown][])).toEqual(new Map<string, unknown>([['arm/link', [['arm/stud', 'open']]], ['arm/play', [['arm/link', 'open'], ['arm/screw', 'open']]]]));
  });

  it('a link waits until the compound of its stud has cured, a measurement does not', () => {
    const until = '2026-03-02T08:00:00.000Z';
    const state = next({ 'arm/stud': { state: 'curing', until }, 'arm/screw': { state: 'curing', until: '2026-03-01T08:00:00.000Z' }, 'arm/link': { state: 'signed' } });
    expect(ids(state.ready)).toContain('arm/play');
    expect(ids(state.curing.map(({ step }) => step))).toEqual(['arm/screw', 'arm/stud']);
    const waiting = next({ 'arm/stud': { state: 'curing', until } }).waiting.find(({ step }) => step.id === 'arm/link');
    expect(waiting?.for).toMatchObject([{ because: 'curing', until }]);
  });

  it('what is undone is to be done, and holds up what comes after', () => {
    const state = next({ 'arm/stud': { state: 'undone' }, 'arm/screw': { state: 'signed' } });
    expect(ids(state.ready)).toContain('arm/stud');
    expect(state.waiting.find(({ step }) => step.id === 'arm/link')?.for).toMatchObject([{ because: 'undone' }]);
  });

  it('nothing, when all is signed', () => {
    expect(next(Object.fromEntries([...plan.steps.keys()].map((id) => [id, { state: 'signed' }])))).toEqual({ ready: [], waiting: [], curing: [] });
  });
});

describe('what must lie on the bench', () => {
  it('screws that are alike are counted together, by thread and length', () => {
    const screws = needs(plan.steps.values()).fasteners.filter(({ kind }) => kind === 'screw');
    expect(screws.map(({ thread, length, count, steps }) => [thread, length, count, steps.length])).toEqual([['M3', 0.008, 3, 2], ['M3', 0.012, 1, 1], ['M10', undefined, 1, 1]]);
  });

  it('tools and bottles for the steps that are asked for, each once, with the steps that want them', () => {
    const stud = plan.steps.get('arm/stud');
    const screw = plan.steps.get('arm/screw');
    const wanted = needs([stud, screw].filter((step) => step !== undefined));
    expect(wanted.tools.map(({ name, steps }) => [name, steps])).toEqual([['Hexagon key 2.5 mm', ['arm/screw']], ['Stud or ball wrench', ['arm/stud']], ['Torque wrench', ['arm/stud', 'arm/screw']]]);
    expect(wanted.consumables.map(({ name }) => name)).toEqual(['Degreaser', 'Medium-strength threadlocker']);
    expect(wanted.takes).toBe((stud?.takes ?? 0) + (screw?.takes ?? 0));
  });

  it('nothing for nothing', () => {
    expect(needs([])).toEqual({ tools: [], consumables: [], fasteners: [], takes: 0 });
  });
});
