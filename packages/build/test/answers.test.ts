import { describe, expect, it } from 'vitest';
import { answersFor, planBuild } from '@rotorwright/build';
import { readMachine } from '@rotorwright/machine';

const file = (measurement: string) => `
machine: {name: Turnstone, invented: true}
modules:
  grip:
    parts: {hub: {ground: true}, arm: {}}
    joints: {screw: {kind: screw, in: hub, holds: arm, thread: M3, lock: medium}}
    measurements: {free: {of: drag arm, ${measurement}}}
`;

function stepFor(measurement: string) {
  const { machine } = readMachine(file(measurement));
  return machine === undefined ? undefined : planBuild(machine).steps.get('grip/free');
}

describe('a measurement by feel', () => {
  it('takes four words, the wanted ones marked, in the order from tight to loose', () => {
    expect(answersFor({ wanted: ['snug', 'free'] }).map(({ feel, wanted }) => [feel, wanted])).toEqual([['binds', false], ['snug', true], ['free', true], ['loose', false]]);
  });

  it('says go and no-go with a go gauge, and no and yes else', () => {
    expect(answersFor({ ask: 'Does it pass?', with: 'go gauge' }).map(({ feel, word }) => [feel, word])).toEqual([['no', 'no-go'], ['yes', 'go']]);
    expect(answersFor({ ask: 'Does it pass?', with: 'gold ring' }).map(({ word }) => word)).toEqual(['no', 'yes']);
  });

  it('comes from the file: one word, or several', () => {
    expect(stepFor('ask: "How does it fall?", wanted: free')).toMatchObject({ action: 'Feel the drag of the arm.', actions: ['How does it fall?', 'Wanted: free.'], measure: { ask: 'How does it fall?', wanted: ['free'] } });
    expect(stepFor('wanted: [snug, free]')).toMatchObject({ action: 'Feel the drag of the arm.', actions: ['Wanted: snug or free.'] });
  });

  it('keeps its fingerprint when only what is wanted changes', () => {
    expect(stepFor('wanted: free')?.fingerprint).toBe(stepFor('ask: "Is it free?"')?.fingerprint);
  });

  it('refuses another word, and a window beside it', () => {
    expect(readMachine(file('wanted: easy')).findings.map(({ code }) => code)).toEqual(['type/wrong']);
    expect(readMachine(file('wanted: free, window: 0 to 1 N')).findings.map(({ code }) => code)).toEqual(['key/one-of']);
  });
});
