import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNewEntry, type EntryBody } from '@rotorwright/logbook';
import { newEntry, signed } from './entries.ts';

const good = signed(1, 'tail-grip.A/retaining-screw', { torque: 'snug', locks: ['medium'], measured: { feel: 'yes' }, note: 'two lines\nof words' });

describe('an entry from outside', () => {
  it('passes when it is right', () => {
    expect(readNewEntry(good)).toEqual({ ok: true, entry: good });
    expect(readNewEntry(newEntry(2, { kind: 'opened', things: ['clutch/nut', 'tail-case/post.b'], reason: 'pinion out' })).ok).toBe(true);
    expect(readNewEntry(newEntry(3, { kind: 'corrected', entry: 2, reason: 'wrong machine' })).ok).toBe(true);
    expect(readNewEntry(newEntry(5, { kind: 'looked', step: 'clutch/nut', fingerprint: `f1:${'0'.repeat(64)}`, found: 'good' })).ok).toBe(true);
    expect(readNewEntry(newEntry(4, { kind: 'noted', note: 'warm evening' })).ok).toBe(true);
    const balanced = newEntry(7, { kind: 'balanced', version: 1, calculation: 'balance-two-plane', inputs: { initial: { amplitude1: 8, phase1: '112°' }, places: ['0°', 1.2] }, of: 'fan', note: 'as bought' });
    expect(readNewEntry(balanced)).toEqual({ ok: true, entry: balanced });
  });

  const photo = '0123456789abcdef'.repeat(4);
  it.each<EntryBody>([
    { ...good.body, photo } as EntryBody,
    { kind: 'looked', step: 'clutch/nut', fingerprint: `f1:${'0'.repeat(64)}`, found: 'good', photo },
    { kind: 'looked', step: 'clutch/nut', fingerprint: `f1:${'0'.repeat(64)}`, found: 'bad', note: 'loose', photo },
    { kind: 'noted', step: 'clutch/nut', note: 'Photo', photo },
  ])('may name a photo when it is $kind', (body) => {
    const entry = newEntry(6, body);
    expect(readNewEntry(entry)).toEqual({ ok: true, entry });
  });

  const wrong: readonly (readonly [string, unknown, RegExp])[] = [
    ['nothing', undefined, /entry must be an object, got nothing/u],
    ['a list', [], /entry must be an object, got a list/u],
    ['no id', { ...good, id: undefined }, /id is missing/u],
    ['an id with a blank', { ...good, id: 'a b c d e f g' }, /id must be 8 to 64/u],
    ['a machine that is a path', { ...good, machine: '../whimbrel' }, /machine must be the id of a machine/u],
    ['a local time', { ...good, at: '2026-03-01T18:30:00+01:00' }, /at must be a moment/u],
    ['the 31st of June', { ...good, at: '2026-06-31T18:30:00Z' }, /there is no such day/u],
    ['nobody', { ...good, by: '   ' }, /by must not be empty/u],
    ['a name with a line break', { ...good, by: 'Maren\nOda' }, /cannot be printed/u],
    ['an unknown key', { ...good, colour: 'blue' }, /colour is not known here/u],
    ['no body', { ...good, body: null }, /body must be an object/u],
    ['a kind that is not', { ...good, body: { kind: 'deleted' } }, /body\.kind must be one of signed, looked, opened/u],
    ['a kind out of the prototype', { ...good, body: { kind: 'constructor' } }, /body\.kind must be one of/u],
    ['a fingerprint cut short', { ...good, body: { ...good.body, fingerprint: 'f1:00' } }, /body\.fingerprint must be/u],
    ['a negative cure', { ...good, body: { ...good.body, cure: -1 } }, /body\.cure must be/u],
    ['a torque in words', { ...good, body: { ...good.body, torque: 'tight' } }, /body\.torque must be a torque in N·m/u],
    ['a torque that is not finite', { ...good, body: { ...good.body, torque: Number.NaN } }, /body\.torque/u],
    ['a measured value without its unit', { ...good, body: { ...good.body, measured: { value: 2 } } }, /body\.measured\.unit is missing/u],
    ['a correction of entry 0', newEntry(2, { kind: 'corrected', entry: 0, reason: 'x' }), /body\.entry must be a whole number/u],
    ['a bad find without what is bad', newEntry(2, { kind: 'looked', step: 'clutch/nut', fingerprint: `f1:${'0'.repeat(64)}`, found: 'bad' }), /body\.note is missing/u],
    ['a find in other words', newEntry(2, { kind: 'looked', step: 'clutch/nut', fingerprint: `f1:${'0'.repeat(64)}`, found: 'fine' as 'good' }), /body\.found must be one of good, bad/u],
    ['a photo by another name', newEntry(2, { kind: 'noted', note: 'x', photo: '../photo.jpg' }), /body\.photo must be the SHA-256 of a photo/u],
    ['a photo in capitals', newEntry(2, { kind: 'noted', note: 'x', photo: 'A'.repeat(64) }), /body\.photo must be the SHA-256/u],
    ['a photo of an opening', newEntry(2, { kind: 'opened', things: ['clutch/nut'], reason: 'x', photo: '0'.repeat(64) } as unknown as EntryBody), /body\.photo is not known here/u],
    ['nothing opened', newEntry(2, { kind: 'opened', things: [], reason: 'x' }), /body\.things must have 1 to 500 items/u],
    ['a note without end', newEntry(2, { kind: 'noted', note: 'x'.repeat(2001) }), /2000 characters at most/u],
    ['readings of no calculation', newEntry(2, { kind: 'balanced', version: 1, calculation: '../x', inputs: { a: 1 } }), /body\.calculation must be an id/u],
    ['readings of another version', newEntry(2, { kind: 'balanced', version: 2 as 1, calculation: 'blade-match', inputs: { a: 1 } }), /body\.version must be a whole number from 1 to 1/u],
    ['no readings', newEntry(2, { kind: 'balanced', version: 1, calculation: 'blade-match', inputs: {} }), /body\.inputs must have 1 to 60 members, got 0/u],
    ['readings by an odd name', newEntry(2, { kind: 'balanced', version: 1, calculation: 'blade-match', inputs: { 'mass 1': 1 } }), /named by letters and digits, got “mass 1”/u],
    ['a reading that is not finite', newEntry(2, { kind: 'balanced', version: 1, calculation: 'blade-match', inputs: { mass1: Number.POSITIVE_INFINITY } }), /body\.inputs\.mass1 must be a number/u],
    ['a reading that is nothing', newEntry(2, { kind: 'balanced', version: 1, calculation: 'blade-match', inputs: { mass1: null as unknown as number } }), /body\.inputs\.mass1 must be a number, a text, a list or an object/u],
    ['readings too deep', newEntry(2, { kind: 'balanced', version: 1, calculation: 'blade-match', inputs: { a: { b: { c: { d: 1 } } } } }), /body\.inputs\.a\.b\.c must be a number or a text/u],
    ['half a character', newEntry(2, { kind: 'noted', note: '\ud83d' }), /cannot be printed/u],
  ];
  it.each(wrong)('%s is refused in words', (_, json, words) => {
    const read = readNewEntry(json);
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : read.problems.join('\n')).toMatch(words);
  });

  it('all problems are told at once', () => {
    const read = readNewEntry({ ...good, by: '', at: 'yesterday', machine: '' });
    expect(read.ok ? [] : read.problems).toHaveLength(3);
  });

  it('never throws, whatever comes, and messages stay short', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.jsonValue(), fc.record({ id: fc.anything(), machine: fc.string(), at: fc.string(), by: fc.string(), body: fc.anything() })), (json) => {
        const read = readNewEntry(json);
        if (!read.ok) for (const problem of read.problems) expect(problem.length).toBeLessThan(300);
      }),
      { numRuns: 500 },
    );
  });
});
