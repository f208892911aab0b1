import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readMachine, type Machine } from '@rotorwright/machine';
import { planBuild } from '@rotorwright/build';
import { wordCount } from '../src/words/index.ts';

function read(name: string): Machine {
  const { machine } = readMachine(readFileSync(new URL(`../../../examples/${name}/machine.yaml`, import.meta.url), 'utf8'));
  if (machine === undefined) throw new Error(`examples/${name} is no machine`);
  return machine;
}
const machine = read('whimbrel');
const plan = planBuild(machine);
const ids = [...plan.steps.keys()];

describe('the plan of a whole machine', () => {
  it('has one step for every joint, stack, measurement and written step, and one for each module that is stripped', () => {
    const things = [machine.joints, machine.stacks, machine.measurements, machine.steps].flatMap((map) => [...map.keys()]);
    const stripped = [...machine.modules.values()].filter(({ comes }) => comes === 'assembled').map(({ id }) => id);
    const greased = ids.filter((id) => machine.parts.has(id));
    expect(ids.toSorted()).toEqual([...things, ...stripped, ...greased].toSorted());
    expect(things.length).toBeGreaterThan(120);
  });

  it('lists each step in its module, once', () => {
    expect(plan.modules.flatMap(({ steps }) => steps.map(({ id }) => id)).toSorted()).toEqual(ids.toSorted());
  });

  it('never waits for what comes later', () => {
    for (const step of plan.steps.values()) for (const id of step.after) expect(ids.indexOf(id), `${id} before ${step.id}`).toBeLessThan(ids.indexOf(step.id));
  });

  it('asks for a second look at what a crash or an injury hangs on, and not at the rest', () => {
    const asking = ids.filter((id) => plan.steps.get(id)?.secondLook);
    for (const id of ['tail-case/cross-pin', 'tail-case/pin-screw', 'main-grip.A/retaining-screw', 'main-grip.B/feathering', 'head/hub-bolt', 'mast/collar-clamp', 'tail-hub/hub-pin']) expect(asking).toContain(id);
    for (const id of ['engine/muffler-screw', 'body/canopy-nut', 'electronics/switch-screw', 'clutch/bracket-screw', 'tail-case/play', 'clutch']) expect(asking).not.toContain(id);
  });

  it('says everything in sentences of at most 20 words, but for the builder’s own', () => {
    for (const { id, kind, action, actions } of plan.steps.values()) {
      const asked = machine.measurements.get(id)?.ask;
      for (const words of [...(machine.steps.has(id) ? [] : [action]), ...actions]) {
        if (words === asked) continue;
        expect(wordCount(words), `${kind} ${id}: ${words}`).toBeLessThanOrEqual(20);
        expect(words).not.toMatch(/undefined|NaN| {2}|\(\)|\bthe [,.]/u);
      }
    }
  });

  it('names no loop', () => {
    expect(plan.findings.filter(({ code }) => code === 'order/cycle')).toEqual([]);
  });

  it('a machine of fifteen lines has a plan without steps', () => {
    expect(planBuild(read('turnstone'))).toMatchObject({ modules: [], steps: new Map(), findings: [] });
  });
});
