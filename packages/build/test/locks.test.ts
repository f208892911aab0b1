import { describe, expect, it } from 'vitest';
import { wordFinding } from '@rotorwright/machine';
import { planBuild } from '@rotorwright/build';
import { machineByHand, type RoughModule } from './by-hand.ts';

function findingsOf(joints: RoughModule['joints'], parts: RoughModule['parts'] = { base: {}, plate: {} }) {
  return planBuild(machineByHand({ modules: { a: { parts, ...(joints === undefined ? {} : { joints }) } } })).findings;
}
const codes = (joints: RoughModule['joints'], parts?: RoughModule['parts']) => findingsOf(joints, parts).map(({ code, severity }) => `${severity} ${code}`);

describe('one line of defence', () => {
  it('is a joint that has no lock and that nothing holds', () => {
    expect(codes({ screw: { locks: ['none'], torque: 1 } })).toEqual(['warning lock/one-line']);
    expect(codes({ pin: { kind: 'pin', fit: 'slide' } })).toEqual(['warning lock/one-line']);
  });

  it('is not a joint that is locked, held by another, pressed in, or of which the file does not say', () => {
    expect(codes({ screw: { locks: ['medium'] } })).toEqual([]);
    expect(codes({ pin: { kind: 'pin', fit: 'slide', locks: ['none'] }, screw: { kind: 'set-screw', holds: ['a/pin'], locks: ['medium'] } })).toEqual([]);
    expect(codes({ pin: { kind: 'pin', fit: 'press' } })).toEqual([]);
    expect(codes({ clip: { kind: 'circlip', locks: ['none'] } })).toEqual([]);
    expect(codes({ screw: {} })).toEqual([]);
  });
});

describe('forbidden locks', () => {
  it('compound on an insert nut', () => {
    expect(codes({ nut: { kind: 'nut', locks: ['insert', 'medium'] } })).toEqual(['error lock/forbidden']);
    expect(codes({ nut: { kind: 'nut', locks: ['insert', 'tab'] } })).toEqual([]);
  });

  it('compound on polycarbonate, held or seated in, also through a pin', () => {
    const parts = { base: {}, plate: { material: 'clear Polycarbonate' } };
    expect(codes({ screw: { in: 'a/base', holds: ['a/plate'], locks: ['low'] } }, parts)).toEqual(['error lock/forbidden']);
    expect(codes({ pin: { kind: 'pin', in: 'a/base', holds: ['a/plate'], fit: 'press' }, screw: { kind: 'set-screw', in: 'a/base', holds: ['a/pin'], locks: ['low'] } }, parts)).toEqual(['error lock/forbidden']);
    expect(codes({ screw: { in: 'a/base', holds: ['a/plate'], locks: ['insert'] } }, parts)).toEqual([]);
  });

  it('are told in whole sentences', () => {
    for (const finding of findingsOf({ nut: { kind: 'nut', locks: ['insert', 'medium'] }, screw: { locks: ['none'] } })) {
      expect(Object.values(wordFinding(finding)).join(' ')).not.toMatch(/[{}…]|undefined/u);
    }
  });
});
