import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { threadTendency } from '../../src/index.ts';

const sense = fc.constantFrom<1 | -1>(1, -1);
const hand = fc.constantFrom<'right' | 'left'>('right', 'left');
const leaves = fc.constantFrom<'threaded-part' | 'other-part'>('threaded-part', 'other-part');

describe('thread on a turning shaft', () => {
  test('a propeller nut with a right-hand thread tightens on an engine that turns anticlockwise seen from its front (common practice, no source)', () => {
    // Axis out of the engine's front, towards the viewer: anticlockwise is right-handed about it. The nut travels towards the engine.
    expect(threadTendency({ hand: 'right', goesIn: -1, turns: 1, torqueLeavesBy: 'threaded-part' })).toEqual({ driven: 'tightens', braking: 'loosens' });
  });

  test('the drag of its bearing alone loosens the left-hand thread of a bicycle pedal on the left (by hand; what tightens it is precession)', () => {
    // Seen from the left, riding forward, the crank turns anticlockwise. Axis from the frame out to the left: crank turns right-handed about it.
    // The pedal axle travels against the axis into the crank; the pedal, held level by the foot, drags the axle backwards: it lags.
    expect(threadTendency({ hand: 'left', goesIn: -1, turns: 1, torqueLeavesBy: 'threaded-part' }).driven).toBe('loosens');
  });

  test('each single reversal swaps tightening and loosening (law)', () => {
    fc.assert(
      fc.property(hand, sense, sense, leaves, (handOfThread, goesIn, turns, torqueLeavesBy) => {
        const base = { hand: handOfThread, goesIn, turns, torqueLeavesBy };
        const { driven, braking } = threadTendency(base);
        expect(braking).not.toBe(driven);
        expect(threadTendency({ ...base, hand: handOfThread === 'right' ? 'left' : 'right' }).driven).toBe(braking);
        expect(threadTendency({ ...base, goesIn: goesIn === 1 ? -1 : 1 }).driven).toBe(braking);
        expect(threadTendency({ ...base, turns: turns === 1 ? -1 : 1 }).driven).toBe(braking);
        expect(threadTendency({ ...base, torqueLeavesBy: torqueLeavesBy === 'threaded-part' ? 'other-part' : 'threaded-part' }).driven).toBe(braking);
      }),
    );
  });
});
