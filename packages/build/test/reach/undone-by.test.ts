import { describe, expect, it } from 'vitest';
import { planBuild, undoneBy } from '@rotorwright/build';
import { machineByHand } from '../by-hand.ts';

const plan = planBuild(machineByHand({
  modules: {
    a: {
      parts: { case: { ground: true }, shaft: {}, bearing: {}, gear: {}, cap: {}, ball: { grease: 'g' } },
      stacks: { s: { spindle: 'a/shaft', housing: ['a/case'], order: [{ part: 'a/bearing' }, { part: 'a/gear' }, { joint: 'a/nut' }] } },
      joints: {
        nut: { kind: 'nut', in: 'a/shaft' }, pin: { kind: 'pin', in: 'a/shaft', holds: ['a/gear'] }, 'pin-screw': { kind: 'set-screw', in: 'a/shaft', holds: ['a/pin'] },
        'cap-screw': { in: 'a/case', holds: ['a/cap'], copies: ['1', '2'] }, clip: { kind: 'ball-link', in: 'a/cap', holds: ['a/ball'] },
      },
      measurements: { play: { of: 'a/s' }, gap: { quantity: 'gap', of: 'a/cap', setBy: ['a/cap-screw'] } },
      steps: { turn: { after: ['a/play'] } },
    },
  },
  consumables: { g: { kind: 'grease' } },
}));
const fallen = (...things: readonly string[]) => Object.fromEntries([...undoneBy(plan)(things)].map(([id, fall]) => [id, fall.why === 'opened' ? 'opened' : fall.with]));

describe('what is undone', () => {
  it('with what closes a stack goes the stack, what was measured at it, and the check that followed', () => {
    expect(fallen('a/nut')).toEqual({ 'a/nut': 'opened', 'a/s': 'a/nut', 'a/play': 'a/nut', 'a/turn': 'a/play', 'a/pin': 'a/s', 'a/pin-screw': 'a/pin' });
  });

  it('with a pin goes what keeps it, and not the stack that it stands in', () => {
    expect(fallen('a/pin')).toEqual({ 'a/pin': 'opened', 'a/pin-screw': 'a/pin' });
    expect(fallen('a/pin-screw')).toEqual({ 'a/pin-screw': 'opened' });
  });

  it('with a screw, or one copy of it, goes what it sets', () => {
    expect(fallen('a/cap-screw.2')).toEqual({ 'a/cap-screw': 'opened', 'a/gap': 'a/cap-screw' });
  });

  it('with a part goes all that ties it, and its grease; with a module everything', () => {
    expect(fallen('a/ball')).toEqual({ 'a/ball': 'opened', 'a/clip': 'opened' });
    expect(fallen('a/clip')).toEqual({ 'a/ball': 'a/clip', 'a/clip': 'opened' });
    expect(Object.keys(fallen('a'))).toEqual([...plan.steps.keys()]);
  });

  it('comes in the order of work, and what nobody knows undoes nothing', () => {
    const order = [...plan.steps.keys()];
    const ids = [...undoneBy(plan)(['a/pin-screw', 'a/nut']).keys()];
    expect(ids).toEqual(ids.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(fallen('a/gone', 'b')).toEqual({});
  });
});
