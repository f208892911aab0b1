import { describe, expect, it } from 'vitest';
import type { StackLoad } from '@rotorwright/machine';
import { analyseStack, planBuild } from '@rotorwright/build';
import { noDirections } from '../src/stacks/index.ts';
import { machineByHand, type RoughMachine } from './by-hand.ts';

/** A blade grip in small: the housing is thrown outboard, the spindle's screw holds it back. Invented. */
function grip(loads: readonly StackLoad[]): RoughMachine {
  return {
    consumables: { 'ball-grease': { kind: 'grease', title: 'synthetic bearing grease' } },
    modules: {
      grip: {
        parts: {
          spindle: {}, housing: {}, shim: { kind: 'shim', until: 'grip/play' }, washer: { kind: 'washer', turnsWith: 'grip/spindle' },
          'bearing-in': { kind: 'deep-groove', grease: 'ball-grease' }, thrust: { kind: 'thrust-ball', grease: 'ball-grease', facing: { 'open-side': 'outboard' }, why: 'The pull throws the grease into the balls' },
        },
        stacks: {
          feathering: {
            spindle: 'grip/spindle', housing: ['grip/housing'], ends: ['inboard', 'outboard'], loads,
            order: [{ shoulder: 'grip/spindle' }, { part: 'grip/bearing-in' }, { shoulder: 'grip/housing' }, { part: 'grip/thrust' }, { part: 'grip/shim' }, { part: 'grip/washer' }, { joint: 'grip/screw' }],
          },
        },
        joints: { screw: { in: 'grip/spindle', thread: 'M3', locks: ['medium'] } },
        measurements: { play: { of: 'grip/feathering', window: { min: 0, max: 3e-5 }, unit: 'm', shown: 'mm', with: 'by feel' } },
      },
    },
  };
}

const outboard: StackLoad = { pushes: 'grip/housing', towards: 'outboard' };
const stepOf = (rough: RoughMachine, id = 'grip/feathering') => planBuild(machineByHand(rough)).steps.get(id);
const sides = (loads: readonly StackLoad[]) => {
  const machine = machineByHand(grip(loads));
  const stack = machine.stacks.get('grip/feathering');
  if (stack === undefined) throw new Error('the stack is missing');
  const washers = analyseStack(machine, stack, noDirections).facings.find((facing) => facing.washers)?.washers;
  return washers && { loose: stack.ends[washers.loose], tight: stack.ends[washers.tight] };
};

describe('the two washers of a thrust bearing', () => {
  it('in a blade grip: loose bore inboard on the grip, tight bore outboard at the screw (common practice; derived by hand from the load path)', () => {
    expect(sides([outboard])).toEqual({ loose: 'inboard', tight: 'outboard' });
  });

  it('are not said for a load that goes the other way: nothing stops it there', () => {
    expect(sides([{ pushes: 'grip/housing', towards: 'inboard' }])).toBeUndefined();
  });

  it('are the same whether the housing is pushed one way or the spindle the other (law: action and reaction)', () => {
    expect(sides([{ pushes: 'grip/spindle', towards: 'inboard' }])).toEqual(sides([outboard]));
    expect(sides([{ pushes: 'grip/washer', towards: 'inboard' }])).toEqual(sides([outboard]));
  });

  it('without a load are the only way round that can carry one; they are not guessed for a load through a mesh, or a push on something else', () => {
    expect(sides([])).toEqual(sides([outboard]));
    expect(sides([{ coupling: 'main-mesh' }])).toBeUndefined();
    expect(sides([{ pushes: 'grip/thrust', towards: 'outboard' }])).toBeUndefined();
    expect(sides([{ pushes: 'grip/housing', towards: 'sideways' }])).toBeUndefined();
  });
});

describe('a stack becomes one step', () => {
  it('that greases, then names each item in order, with its facing', () => {
    expect(stepOf(grip([outboard]))).toMatchObject({
      kind: 'assemble', title: 'Feathering stack', tools: ['Guide rod'], consumables: ['Synthetic bearing grease'], why: 'The pull throws the grease into the balls.',
      action: 'Assemble the four parts on the spindle, in this order from inboard to outboard.',
      actions: [
        'Pack inner bearing and thrust with synthetic bearing grease: fill a third to a half of the room.',
        'Stack the thrust set on a guide rod, then move it over in one go.',
        '1 of 7: the shoulder of the spindle.',
        '2 of 7: the inner bearing.',
        '3 of 7: the shoulder of the housing.',
        '4 of 7: the thrust, loose-bore washer inboard, tight-bore washer outboard and open side outboard.',
        '5 of 7: the shim, one to try: measuring decides its size.',
        '6 of 7: the washer.',
        '7 of 7: the screw closes it, in a step of its own.',
      ],
    });
  });

  it('that says nothing of washers when the load is not known', () => {
    expect(stepOf(grip([{ coupling: 'main-mesh' }]))?.actions.join(' ')).not.toContain('bore washer');
  });

  it('that is filled from the other end when a joint closes its first end only', () => {
    const rough = structuredClone(grip([outboard])) as { modules: { grip: { stacks: { feathering: { order: unknown } } } } };
    rough.modules.grip.stacks.feathering.order = [{ joint: 'grip/screw' }, { part: 'grip/bearing-in' }, { shoulder: 'grip/spindle' }];
    const step = stepOf(rough as unknown as RoughMachine);
    expect(step?.action).toBe('Assemble the one part on the spindle, in this order from outboard to inboard.');
    expect(step?.actions.slice(-3)).toEqual(['1 of 3: the shoulder of the spindle.', '2 of 3: the inner bearing.', '3 of 3: the screw closes it, in a step of its own.']);
  });

  it('and what is measured in it says what is wanted, in the builder’s unit', () => {
    expect(stepOf(grip([outboard]), 'grip/play')).toMatchObject({
      kind: 'measure', title: 'End play, feathering stack', action: 'Measure the end play of the feathering stack, by feel.', actions: ['It must be from 0 mm to 0.03 mm.'], tools: [],
      measure: { unit: 'm', shown: 'mm', min: 0, max: 3e-5, with: 'by feel' }, after: ['grip/screw'],
    });
  });
});

describe('grease on a part that stands in no stack', () => {
  it('is a step of its own, before what puts the part in place', () => {
    const plan = planBuild(machineByHand({ modules: { head: { parts: { hub: {}, damper: { copies: ['a', 'b'], grease: 'silicone-grease' } }, joints: { seat: { kind: 'press', in: 'head/hub', holds: ['head/damper.a', 'head/damper.b'] } } } } }));
    expect([...plan.steps.keys()]).toEqual(['head/damper', 'head/seat']);
    expect(plan.steps.get('head/damper')).toMatchObject({ title: 'Grease: damper', action: 'Grease the damper, two pieces, with silicone grease.', ticks: ['head/damper.a', 'head/damper.b'] });
  });
});
