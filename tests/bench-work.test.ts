import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measuredIn, scaleFor, stepped, verdictOf } from '../apps/web/src/pages/bench/measuring.ts';
import { resumeAt, type ResumeStep } from '../apps/web/src/pages/bench/resume.ts';
import { turnOf } from '../apps/web/src/pages/bench/turn-keys.ts';

const minute = 60_000;
const signed = (id: string, signedAt: number): ResumeStep => ({ id, state: 'signed', signedAt });
const open = (id: string): ResumeStep => ({ id, state: 'open' });

describe('where work goes on', () => {
  it('at the first open step while work is fresh', () => {
    expect(resumeAt([signed('a', 0), signed('b', minute), open('c'), open('d')], 5 * minute)).toEqual({ step: 'c', open: 'c', back: 0 });
  });

  it('three steps back after an interruption, and says how long it was', () => {
    // Common practice in maintenance (from memory): after an interruption go back three steps.
    const steps = [signed('a', 0), signed('b', 0), signed('c', 0), signed('d', minute), open('e')];
    expect(resumeAt(steps, 121 * minute)).toEqual({ step: 'b', open: 'e', back: 3, paused: 120 * minute });
  });

  it('never before the first step, and not back at all when nothing was done', () => {
    expect(resumeAt([signed('a', 0), open('b')], 90 * minute)).toEqual({ step: 'a', open: 'b', back: 1, paused: 90 * minute });
    expect(resumeAt([open('a'), open('b')], 90 * minute)).toEqual({ step: 'a', open: 'a', back: 0 });
  });

  it('an undone step is work to be done', () => {
    expect(resumeAt([signed('a', 0), { id: 'b', state: 'undone' }, signed('c', 0)], minute)?.open).toBe('b');
  });

  it('at what has come undone, with nothing gone back over, until work on it has begun', () => {
    const built = [signed('a', 0), signed('b', 0), signed('c', 0)];
    expect(resumeAt([...built, { id: 'd', state: 'undone', openedAt: 500 * minute }], 600 * minute)).toEqual({ step: 'd', open: 'd', back: 0 });
    expect(resumeAt([...built, { id: 'd', state: 'undone' }], 600 * minute)).toEqual({ step: 'd', open: 'd', back: 0 });
    const begun = [signed('a', 0), signed('b', 0), signed('c', 510 * minute), { id: 'd', state: 'undone' as const, openedAt: 500 * minute }];
    expect(resumeAt(begun, 600 * minute)).toEqual({ step: 'a', open: 'd', back: 3, paused: 90 * minute });
  });

  it('past what must wait to what can be done, and to what must wait when nothing can', () => {
    const steps = [signed('a', 0), open('b'), open('c')];
    expect(resumeAt(steps, minute, new Set(['c']))?.open).toBe('c');
    expect(resumeAt(steps, minute, new Set())?.open).toBe('b');
  });

  it('nowhere when all is signed or curing', () => {
    expect(resumeAt([signed('a', 0), { id: 'b', state: 'curing', signedAt: 0 }], minute)).toBeUndefined();
  });
});

describe('turning the page with a foot', () => {
  it.each([
    ['PageDown', false, 'next'], ['PageUp', false, 'back'], ['ArrowRight', false, 'next'], ['ArrowLeft', false, 'back'], [' ', false, 'next'], [' ', true, 'back'],
    ['Enter', false, undefined], ['PageDown', true, undefined], ['s', false, undefined],
  ] as const)('key “%s”, with Shift %s: %s', (key, shiftKey, turn) => {
    expect(turnOf({ key, shiftKey })).toBe(turn);
  });
});

describe('a measuring scale', () => {
  const play = scaleFor({ min: 0.00002, max: 0.00006, shown: 'mm' });

  it('a window of 0.02 to 0.06 mm is read in hundredths, with room on both sides', () => {
    // By hand: a quarter of 0.04 is 0.01; one window's width on either side, not below nothing.
    expect(play).toMatchObject({ from: 0, to: 0.1, step: 0.01, decimals: 2 });
  });

  it('both ends of the window are inside, one mark further is not', () => {
    if (!play) throw new Error('no scale');
    expect([0.01, 0.02, 0.06, 0.07].map((reading) => verdictOf(play, reading))).toEqual(['below', 'inside', 'inside', 'above']);
  });

  it('pressing + five times from nothing reads 0.04 mm', () => {
    if (!play) throw new Error('no scale');
    let reading: number | undefined;
    for (let press = 0; press < 5; press += 1) reading = stepped(play, reading, 1);
    expect(reading).toBe(0.04);
    expect(measuredIn('m', 'mm', 0.04)).toEqual({ value: expect.closeTo(0.00004, 12), unit: 'm' });
  });

  it('one end is enough, none is not', () => {
    expect(scaleFor({ max: 0.00002, shown: 'mm' })).toMatchObject({ from: 0, step: 0.005 });
    expect(scaleFor({ min: 5, shown: 'N·m' })).toMatchObject({ low: 5 });
    expect(scaleFor({ shown: 'mm' })).toBeUndefined();
  });

  it('every window can be reached by pressing, and has at least four marks', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e3, noNaN: true }), fc.double({ min: 1e-6, max: 1e3, noNaN: true }), (low, width) => {
        const scale = scaleFor({ min: low, max: low + width, shown: 'm' });
        if (!scale) throw new Error('no scale');
        expect(width / scale.step).toBeGreaterThanOrEqual(3.99);
        expect((scale.to - scale.from) / scale.step).toBeLessThan(40);
        expect(scale.from).toBeLessThanOrEqual(low + scale.step);
      }),
    );
  });
});
