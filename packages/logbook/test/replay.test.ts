import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '@rotorwright/build';
import { entriesUpTo, lookProblem, replay, type EntryBody, type NewEntry } from '@rotorwright/logbook';
import { newEntry, signed } from './entries.ts';
import { bookOf, planOf, print, step } from './plans.ts';

const plan = planOf(
  step('clutch'),
  step('clutch/stack', { kind: 'assemble', parts: [{ id: 'clutch/bearing', title: 'Bearing', count: 1 }] }),
  step('clutch/nut', { cure: 86_400 }),
  step('clutch/screw', { ticks: ['clutch/screw.a', 'clutch/screw.b'], parts: [{ id: 'clutch/cap', title: 'Cap', count: 1 }] }),
  step('clutch/play', { kind: 'measure', measure: { unit: 'm', min: 0, max: 3e-5 } }),
  step('boom/clamp'),
);
/** After every entry that these tests write: entry numbers are minutes after midnight. */
const later = new Date('2026-03-02T12:00:00Z');
const sign = (number: number, id: string, more: Parameters<typeof signed>[2] = {}, by?: string) => signed(number, id, { fingerprint: print('a'), ...more }, by);
const after = (entries: readonly NewEntry[], of: Plan = plan, now = later) => replay(of, bookOf(entries), now);
const stateOf = (entries: readonly NewEntry[], id: string, of: Plan = plan) => after(entries, of).steps.get(id);

describe('a step', () => {
  it('is open until it is signed', () => {
    expect(stateOf([], 'clutch/nut')).toEqual({ state: 'open', history: [] });
    expect(stateOf([sign(1, 'clutch/nut')], 'clutch/nut')).toMatchObject({ state: 'signed', by: 'Maren', entry: 1, at: '2026-03-01T00:01:00Z' });
  });

  it('cures for as long as was signed for, to the second', () => {
    const book = bookOf([sign(60, 'clutch/nut', { cure: 3600 })]);
    const at = (time: string) => replay(plan, book, new Date(time)).steps.get('clutch/nut');
    expect(at('2026-03-01T01:59:59Z')).toMatchObject({ state: 'curing', until: '2026-03-01T02:00:00.000Z' });
    expect(at('2026-03-01T02:00:00Z')).toMatchObject({ state: 'signed' });
    expect(at('2026-03-01T02:00:00Z')).not.toHaveProperty('until');
  });

  it('is undone when the file says something else than was signed', () => {
    const changed = planOf(step('clutch/nut', { fingerprint: print('b') }));
    expect(stateOf([sign(1, 'clutch/nut')], 'clutch/nut', changed)).toMatchObject({ state: 'undone', by: 'Maren', reason: { why: 'changed', entry: 1, signed: print('a'), now: print('b') } });
  });

  it('stands again when it is signed anew, or when the file goes back', () => {
    const changed = planOf(step('clutch/nut', { fingerprint: print('b') }));
    expect(stateOf([sign(1, 'clutch/nut'), sign(2, 'clutch/nut', { fingerprint: print('b') })], 'clutch/nut', changed)).toMatchObject({ state: 'signed', entry: 2 });
    expect(stateOf([sign(1, 'clutch/nut')], 'clutch/nut')).toMatchObject({ state: 'signed' });
  });

  it('answers to the last signature, not to an older one that would fit', () => {
    expect(stateOf([sign(1, 'clutch/nut'), sign(2, 'clutch/nut', { fingerprint: print('b') })], 'clutch/nut')).toMatchObject({ state: 'undone', reason: { why: 'changed', entry: 2 } });
  });

  it('tells who locked it, when, with what', () => {
    const history = stateOf([sign(1, 'clutch/nut', { locks: ['medium'], torque: 1.1, note: 'cold evening' }), sign(9, 'clutch/nut', { torque: 'snug' }, 'Oda')], 'clutch/nut')?.history;
    expect(history).toMatchObject([
      { entry: 1, kind: 'signed', by: 'Maren', at: '2026-03-01T00:01:00Z', locks: ['medium'], torque: 1.1, words: 'cold evening' },
      { entry: 2, kind: 'signed', by: 'Oda', torque: 'snug' },
    ]);
  });
});

describe('opening', () => {
  const opened = (number: number, ...things: readonly string[]) => newEntry(number, { kind: 'opened', things, reason: 'pinion out' }, 'Oda');

  it('voids the steps of the things that it names, and a later signature restores them', () => {
    const book = [sign(1, 'clutch/nut'), sign(2, 'clutch/screw'), opened(3, 'clutch/nut')];
    expect(stateOf(book, 'clutch/nut')).toMatchObject({ state: 'undone', reason: { why: 'opened', entry: 3, by: 'Oda', reason: 'pinion out' } });
    expect(stateOf(book, 'clutch/screw')).toMatchObject({ state: 'signed' });
    expect(stateOf([...book, sign(4, 'clutch/nut')], 'clutch/nut')).toMatchObject({ state: 'signed', entry: 4 });
  });

  it('of one copy voids the step of all of them', () => {
    expect(stateOf([sign(1, 'clutch/screw'), opened(2, 'clutch/screw.b')], 'clutch/screw')).toMatchObject({ state: 'undone' });
  });

  it('of a part voids every step that ties it', () => {
    const state = after([sign(1, 'clutch/screw'), sign(2, 'clutch/stack'), sign(3, 'clutch/nut'), opened(4, 'clutch/cap')]);
    expect(['clutch/screw', 'clutch/stack', 'clutch/nut'].map((id) => state.steps.get(id)?.state)).toEqual(['undone', 'signed', 'signed']);
  });

  it('of a module voids all its steps but the stripping: it is not as it came any more', () => {
    const state = after([sign(1, 'clutch'), sign(2, 'clutch/nut'), sign(3, 'boom/clamp'), opened(4, 'clutch')]);
    expect(['clutch', 'clutch/nut', 'boom/clamp'].map((id) => state.steps.get(id)?.state)).toEqual(['signed', 'undone', 'signed']);
  });

  it('of a step voids those that fall with it, and says with which', () => {
    const falling = planOf(step('clutch/nut'), step('clutch/stack', { kind: 'assemble', fallsWith: ['clutch/nut'] }), step('clutch/cap'));
    const steps = after([sign(1, 'clutch/nut'), sign(2, 'clutch/stack'), sign(3, 'clutch/cap'), opened(4, 'clutch/nut')], falling).steps;
    expect(steps.get('clutch/nut')?.reason).not.toHaveProperty('fallsWith');
    expect(steps.get('clutch/stack')).toMatchObject({ state: 'undone', reason: { why: 'opened', entry: 4, fallsWith: 'clutch/nut' } });
    expect(steps.get('clutch/cap')?.state).toBe('signed');
  });

  it('of what was never signed leaves it open', () => {
    expect(stateOf([opened(1, 'clutch/nut')], 'clutch/nut')).toMatchObject({ state: 'open' });
  });
});

describe('correcting', () => {
  const corrected = (number: number, entry: number) => newEntry(number, { kind: 'corrected', entry, reason: 'wrong screw' });

  it('takes a signature back', () => {
    expect(stateOf([sign(1, 'clutch/nut'), corrected(2, 1)], 'clutch/nut')).toMatchObject({
      state: 'undone', reason: { why: 'corrected', entry: 2, signature: 1, reason: 'wrong screw' }, history: [{ entry: 1, takenBack: 2 }, { entry: 2, words: 'wrong screw' }],
    });
  });

  it('lets the signature before stand again', () => {
    expect(stateOf([sign(1, 'clutch/nut'), sign(2, 'clutch/nut', {}, 'Oda'), corrected(3, 2)], 'clutch/nut')).toMatchObject({ state: 'signed', by: 'Maren', entry: 1 });
  });

  it('takes an opening back', () => {
    expect(stateOf([sign(1, 'clutch/nut'), newEntry(2, { kind: 'opened', things: ['clutch/nut'], reason: 'x' }), corrected(3, 2)], 'clutch/nut')).toMatchObject({ state: 'signed' });
  });

  it('can itself be corrected, and that again', () => {
    const book = [sign(1, 'clutch/nut'), corrected(2, 1), corrected(3, 2)];
    expect(stateOf(book, 'clutch/nut')).toMatchObject({ state: 'signed' });
    expect(stateOf([...book, corrected(4, 3)], 'clutch/nut')).toMatchObject({ state: 'undone' });
  });

  it('of itself or of what is to come does nothing, and ends', () => {
    expect(after([corrected(1, 1), corrected(2, 3), corrected(3, 2)]).total.open).toBe(6);
  });
});

describe('a second look', () => {
  const asking = planOf(step('clutch/nut', { secondLook: true, cure: 3600 }), step('clutch/cover'));
  const looked = (number: number, by: string, more: Partial<Extract<EntryBody, { kind: 'looked' }>> = {}) => newEntry(number, { kind: 'looked', step: 'clutch/nut', fingerprint: print('a'), found: 'good', ...more }, by);
  const nut = (entries: readonly NewEntry[], now = later) => after(entries, asking, now).steps.get('clutch/nut');
  /** Signed by Maren at one o'clock. */
  const book = [sign(60, 'clutch/nut', { cure: 3600 })];

  it('is wanted where the step asks for one, and only there', () => {
    expect(nut(book)).toMatchObject({ state: 'signed', secondLook: { state: 'wanted', aloneFrom: '2026-03-01T13:00:00.000Z' } });
    expect(nut([])).not.toHaveProperty('secondLook');
    expect(after([sign(1, 'clutch/cover')], asking).steps.get('clutch/cover')).not.toHaveProperty('secondLook');
  });

  it('by another person counts at once, while the compound still cures', () => {
    expect(nut([...book, looked(70, 'Oda')], new Date('2026-03-01T01:30:00Z'))).toMatchObject({ state: 'curing', secondLook: { state: 'seen', by: 'Oda', entry: 2, alone: false } });
  });

  it.each(['Maren', ' maren ', 'MAREN'])('by the signer, %j, counts only after the pause, and says so', (by) => {
    expect(nut([...book, looked(779, by)])).toMatchObject({ secondLook: { state: 'wanted' } });
    expect(nut([...book, looked(780, by)])).toMatchObject({ secondLook: { state: 'seen', alone: true } });
    expect(nut([...book, looked(780, by), looked(790, 'Oda')])).toMatchObject({ secondLook: { state: 'seen', by: 'Oda', alone: false } });
  });

  it('is void when it came before the signature, when the step was signed anew, and when it was of something else', () => {
    expect(nut([looked(10, 'Oda'), ...book])).toMatchObject({ secondLook: { state: 'wanted' } });
    expect(nut([...book, looked(70, 'Oda'), sign(80, 'clutch/nut')])).toMatchObject({ secondLook: { state: 'wanted' } });
    expect(nut([...book, looked(70, 'Oda', { fingerprint: print('b') })])).toMatchObject({ secondLook: { state: 'wanted' } });
  });

  it('that finds it bad undoes the step, however soon and whoever looks, until it is signed again', () => {
    for (const by of ['Oda', 'Maren']) {
      const bad = [...book, looked(70, by, { found: 'bad', note: 'no compound in the thread' })];
      expect(nut(bad)).toMatchObject({ state: 'undone', reason: { why: 'found-bad', entry: 2, by, reason: 'no compound in the thread' } });
      expect(nut([...bad, looked(71, 'Ilse')])).toMatchObject({ state: 'undone' });
      expect(nut([...bad, sign(80, 'clutch/nut')])).toMatchObject({ state: 'signed', secondLook: { state: 'wanted' } });
    }
  });

  it('can be taken back; a signature that stands again has its own looks', () => {
    const correct = (number: number, entry: number) => newEntry(number, { kind: 'corrected', entry, reason: 'wrong one' });
    expect(nut([...book, looked(70, 'Oda'), correct(75, 2)])).toMatchObject({ secondLook: { state: 'wanted' } });
    expect(nut([...book, looked(70, 'Oda', { found: 'bad', note: 'x' }), correct(75, 2)])).toMatchObject({ state: 'signed' });
    expect(nut([...book, looked(70, 'Oda'), sign(80, 'clutch/nut'), correct(90, 3)])).toMatchObject({ state: 'signed', secondLook: { by: 'Oda' } });
  });

  it('that would not count is told before it is written', () => {
    const standing = nut(book);
    if (standing === undefined) throw new Error('no state');
    expect(lookProblem(standing, 'Oda', later)).toBeUndefined();
    expect(lookProblem(standing, 'maren', new Date('2026-03-01T12:59:59Z'))).toEqual({ why: 'too-soon', from: '2026-03-01T13:00:00.000Z' });
    expect(lookProblem(standing, 'Maren', new Date('2026-03-01T13:00:00Z'))).toBeUndefined();
    expect(lookProblem({ state: 'undone', history: [] }, 'Oda', later)).toEqual({ why: 'unsigned' });
  });
});

describe('measuring', () => {
  const measured = (value: number, unit = 'm') => [sign(1, 'clutch/play', { measured: { value, unit } })];

  it('is done when the value is wanted, and undone when it is not', () => {
    expect(stateOf(measured(2e-5), 'clutch/play')).toMatchObject({ state: 'signed' });
    expect(stateOf(measured(3e-5), 'clutch/play')).toMatchObject({ state: 'signed' });
    expect(stateOf(measured(3.001e-5), 'clutch/play')).toMatchObject({ state: 'undone', reason: { why: 'failed', entry: 1 } });
    expect(stateOf(measured(-1e-6), 'clutch/play')).toMatchObject({ state: 'undone' });
  });

  it('does not take a value in another unit for one in metres', () => {
    expect(stateOf(measured(0, 'N'), 'clutch/play')).toMatchObject({ state: 'undone', reason: { why: 'failed' } });
  });

  it('by feel is done with a yes only', () => {
    expect(stateOf([sign(1, 'clutch/play', { measured: { feel: 'no' } })], 'clutch/play')).toMatchObject({ state: 'undone' });
    expect(stateOf([sign(1, 'clutch/play', { measured: { feel: 'yes' } })], 'clutch/play')).toMatchObject({ state: 'signed' });
  });

  it('by feel in four words is done with a wanted one only; a yes to the plain question before stands', () => {
    const felt = planOf(step('clutch/play', { kind: 'measure', measure: { wanted: ['snug', 'free'] } }));
    const states = (['binds', 'snug', 'free', 'loose', 'no', 'yes'] as const).map((feel) => stateOf([sign(1, 'clutch/play', { measured: { feel } })], 'clutch/play', felt)?.state);
    expect(states).toEqual(['undone', 'signed', 'signed', 'undone', 'undone', 'signed']);
    // The file no longer wants words: what was free answers no plain question.
    expect(stateOf([sign(1, 'clutch/play', { measured: { feel: 'free' } })], 'clutch/play')).toMatchObject({ state: 'undone', reason: { why: 'failed', measured: { feel: 'free' } } });
  });
});

describe('a renamed thing', () => {
  const renamed = planOf(step('clutch/ring', { was: 'clutch/nut' }));

  it('keeps its signature, and falls when it is opened by its old name', () => {
    expect(stateOf([sign(1, 'clutch/nut')], 'clutch/ring', renamed)).toMatchObject({ state: 'signed' });
    expect(stateOf([sign(1, 'clutch/nut'), newEntry(2, { kind: 'opened', things: ['clutch/nut'], reason: 'x' })], 'clutch/ring', renamed)).toMatchObject({ state: 'undone' });
  });

  it('does not inherit from a name that somebody else has now', () => {
    const taken = planOf(step('clutch/ring', { was: 'clutch/nut' }), step('clutch/nut'));
    expect(stateOf([sign(1, 'clutch/nut')], 'clutch/ring', taken)).toMatchObject({ state: 'open' });
    expect(stateOf([sign(1, 'clutch/nut')], 'clutch/nut', taken)).toMatchObject({ state: 'signed' });
  });
});

describe('the whole machine', () => {
  it('counts by module and in all, and each step once', () => {
    const state = after([sign(1, 'clutch'), sign(2, 'clutch/nut', { cure: 1e6 }), sign(3, 'clutch/screw', { fingerprint: print('b') }), sign(4, 'boom/clamp')]);
    expect(state.modules.get('clutch')).toEqual({ open: 2, signed: 1, undone: 1, curing: 1, total: 5 });
    expect(state.total).toEqual({ open: 2, signed: 2, undone: 1, curing: 1, total: 6 });
  });

  it('lists entries about steps that the file does not have', () => {
    expect(after([sign(1, 'clutch/nut'), sign(2, 'clutch/gone'), newEntry(3, { kind: 'noted', note: 'rain' })]).elsewhere).toEqual([2]);
  });

  it('has a past: the state of a moment is that of the book up to it', () => {
    const book = bookOf([sign(60, 'clutch/nut'), newEntry(120, { kind: 'opened', things: ['clutch/nut'], reason: 'x' }), sign(180, 'clutch/nut')]);
    const then = (time: string) => replay(plan, entriesUpTo(book, new Date(time)), new Date(time)).steps.get('clutch/nut')?.state;
    expect(['00:59', '01:00', '02:00', '03:00'].map((time) => then(`2026-03-01T${time}:00Z`))).toEqual(['open', 'signed', 'undone', 'signed']);
  });
});

const anyBody = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('signed' as const), step: fc.constantFrom(...plan.steps.keys()), fingerprint: fc.constantFrom(print('a'), print('b')), cure: fc.constantFrom(0, 1e6) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('opened' as const), things: fc.subarray([...plan.steps.keys()], { minLength: 1 }), reason: fc.constant('x') }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('looked' as const), step: fc.constantFrom(...plan.steps.keys()), fingerprint: fc.constantFrom(print('a'), print('b')), found: fc.constantFrom('good' as const, 'bad' as const), note: fc.constant('x') }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('corrected' as const), entry: fc.integer({ min: 1, max: 30 }), reason: fc.constant('x') }) },
);
const anyBook = fc.array(anyBody, { maxLength: 30 }).map((bodies) => bodies.map((body, at) => newEntry(at + 1, body)));

describe('laws', () => {
  it('the order in which entries are handed over does not matter', () => {
    fc.assert(fc.property(anyBook, fc.infiniteStream(fc.double({ noNaN: true })), (entries, random) => {
      const book = bookOf(entries);
      const keys = new Map(book.map((entry) => [entry.number, random.next().value]));
      const shuffled = book.toSorted((a, b) => (keys.get(a.number) ?? 0) - (keys.get(b.number) ?? 0));
      expect(replay(plan, shuffled, later)).toEqual(replay(plan, book, later));
    }));
  });

  it('what a bench without network hands in late counts from when it was done', () => {
    fc.assert(fc.property(anyBook.map((entries) => entries.filter(({ body }) => body.kind !== 'corrected')), (entries) => {
      const inTime = bookOf(entries);
      // The same work, but every second entry reaches the store only on the next day.
      const late = [...entries.filter((_, at) => at % 2 === 0), ...entries.filter((_, at) => at % 2 === 1)];
      const afterwards = bookOf(late, () => '2026-03-02T08:00:00.000Z');
      const states = (book: typeof inTime) => [...replay(plan, book, later).steps].map(([id, state]) => [id, state.state, state.at]);
      expect(states(afterwards)).toEqual(states(inTime));
    }));
  });

  it('an entry about one step leaves the others as they were', () => {
    fc.assert(fc.property(anyBook, fc.constantFrom(...plan.steps.keys()), (entries, id) => {
      const before = after(entries).steps;
      const now = after([...entries, sign(1000, id)]).steps;
      for (const [other, state] of before) if (other !== id) expect(now.get(other)).toEqual(state);
      expect(now.get(id)?.state).toBe('signed');
    }));
  });

  it('every step has exactly one state, and counts add up', () => {
    fc.assert(fc.property(anyBook, (entries) => {
      const { total, modules } = after(entries);
      expect(total.open + total.signed + total.undone + total.curing).toBe(plan.steps.size);
      expect([...modules.values()].reduce((sum, each) => sum + each.signed, 0)).toBe(total.signed);
    }));
  });

  it('a clock that runs ahead cannot date a signature after its arrival', () => {
    const ahead = { ...sign(1, 'clutch/nut', { cure: 3600 }), at: '2030-01-01T00:00:00Z' };
    const book = bookOf([ahead, newEntry(2, { kind: 'opened', things: ['clutch/nut'], reason: 'x' })], () => '2026-03-01T00:01:30.000Z');
    expect(replay(plan, book, later).steps.get('clutch/nut')?.state).toBe('undone');
  });
});
