import { describe, expect, it } from 'vitest';
import { replay, trialsOf, type NewEntry } from '@rotorwright/logbook';
import { newEntry } from './entries.ts';
import { bookOf, planOf, step } from './plans.ts';

const read = (number: number, calculation: string, initialAmplitude: number): NewEntry => newEntry(number, { kind: 'balanced', version: 1, calculation, inputs: { initialAmplitude }, of: 'fan' });
const book = bookOf([read(1, 'balance-single-plane', 8), read(2, 'balance-four-run', 5), read(3, 'balance-single-plane', 2), newEntry(4, { kind: 'corrected', entry: 1, reason: 'wrong sensor' })]);

describe('readings in the book', () => {
  it('are told with the latest first, without those that were taken back', () => {
    expect(trialsOf(book).map(({ body }) => body.inputs)).toEqual([{ initialAmplitude: 2 }, { initialAmplitude: 5 }]);
  });

  it('are told of one calculation alone where that is asked for', () => {
    expect(trialsOf(book, 'balance-four-run').map(({ number }) => number)).toEqual([2]);
  });

  it('concern no step, and are not lost on that', () => {
    const state = replay(planOf(step('clutch/nut')), book, new Date('2026-03-02T00:00:00Z'));
    expect(state.elsewhere).toEqual([]);
    expect(state.steps.get('clutch/nut')).toEqual({ state: 'open', history: [] });
  });
});
