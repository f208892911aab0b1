import { describe, expect, it } from 'vitest';
import { readiness, readinessWords, replay, type NewEntry } from '@rotorwright/logbook';
import { newEntry, signed } from './entries.ts';
import { bookOf, planOf, print, step } from './plans.ts';

const plan = planOf(step('a/nut', { secondLook: true }), step('a/screw', { secondLook: true, cure: 3600 }), step('a/play', { kind: 'measure', fallsWith: ['a/nut'] }), step('a/cover'));
const sign = (number: number, id: string, cure = 0) => signed(number, id, { fingerprint: print('a'), cure });
const look = (number: number, id: string, by: string) => newEntry(number, { kind: 'looked', step: id, fingerprint: print('a'), found: 'good' }, by);
const at = (entries: readonly NewEntry[], time: string, of = plan) => readiness(of, replay(of, bookOf(entries), new Date(time)));
const all = [sign(1, 'a/nut'), sign(2, 'a/screw', 3600), sign(3, 'a/play'), look(4, 'a/nut', 'Oda'), look(5, 'a/screw', 'Oda')];

describe('readiness', () => {
  it('names what is open, curing or unseen, of what a crash hangs on and of what was measured there, and nothing else', () => {
    expect(at([], '2026-03-01T12:00:00Z').objections.map(({ step: id, why }) => `${id} ${why}`)).toEqual(['a/nut open', 'a/screw open', 'a/play open']);
    expect(at(all.slice(0, 3), '2026-03-01T00:30:00Z').objections).toEqual([
      { step: 'a/nut', why: 'unseen', until: '2026-03-01T12:01:00.000Z' },
      { step: 'a/screw', why: 'curing', until: '2026-03-01T01:02:00.000Z' },
    ]);
  });

  it('has nothing against it once all is signed, cured and seen', () => {
    const ready = at(all, '2026-03-01T12:00:00Z');
    expect(ready).toEqual({ assessed: true, objections: [], seenAlone: [] });
    expect(readinessWords(ready)).toMatch(/^Nothing that a crash/u);
  });

  it('has it again when something is opened', () => {
    const opened = newEntry(10, { kind: 'opened', things: ['a/nut'], reason: 'x' });
    expect(at([...all, opened], '2026-03-01T12:00:00Z').objections.map(({ step: id, why }) => `${id} ${why}`)).toEqual(['a/nut undone', 'a/play undone']);
    expect(readinessWords(at([...all, opened], '2026-03-01T12:00:00Z'))).toBe('Not to be flown: of what a crash or an injury hangs on, 2 undone.');
  });

  it('tells what the signer saw again alone', () => {
    const alone = [...all.slice(0, 4), look(900, 'a/screw', 'Maren')];
    expect(at(alone, '2026-03-02T12:00:00Z')).toEqual({ assessed: true, objections: [], seenAlone: ['a/screw'] });
  });

  it('of a machine whose hazards are not named is not assessed, and no pass', () => {
    const ready = at([], '2026-03-01T12:00:00Z', planOf(step('a/cover')));
    expect(ready.assessed).toBe(false);
    expect(readinessWords(ready)).toMatch(/^Not assessed/u);
  });
});
