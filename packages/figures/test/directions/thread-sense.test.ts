import { describe, expect, test } from 'vitest';
import { handOf, solveDrive, threadSense } from '@rotorwright/figures';
import { clutchStack } from '../machines.ts';
import { read } from '../read.ts';

const solved = (text: string) => {
  const machine = read(text);
  return threadSense(machine, solveDrive(machine));
};
const pinion = (text: string) => solved(text).threads.find((thread) => thread.joint === 'clutch/pinion-thread')!;

// By hand: the bell turns counter-clockwise from above, spin up. Torque comes in by the bell and leaves by the pinion,
// which resists: seen from the bell the pinion turns the other way, clockwise from above, spin down. A right-hand thread
// screwed in downwards is turned clockwise as seen from above, spin down. The two agree: drive torque tightens.
describe('a pinion that is screwed down into the bell', () => {
  test('is tightened by drive torque and loosened by braking', () => {
    expect(pinion(clutchStack())).toMatchObject({ shaft: 'bell', hand: 'right', driven: 'tightens', braking: 'loosens' });
  });

  test('carries nothing while the engine is started: the clutch is open', () => {
    expect(pinion(clutchStack()).starting).toBe('no torque');
  });

  test('says why in one sentence', () => {
    expect(pinion(clutchStack()).reason).toMatch(/^bell turns counter-clockwise from above; torque leaves by pinion.*lags behind bell.*goes in down tightens by that\.$/i);
  });

  test.each([
    ['a left-hand thread', clutchStack('M12x1 LH')],
    ['a thread that goes in upwards', clutchStack('M12x1', 'goes-in: up, ')],
    ['an engine that turns the other way', clutchStack('M12x1', 'goes-in: down, ', 'clockwise')],
  ])('%s is loosened, and found', (_, text) => {
    expect(pinion(text)).toMatchObject({ driven: 'loosens', braking: 'tightens' });
    expect(solved(text).findings).toMatchObject([{ code: 'thread/loosens', path: 'modules.clutch.joints.pinion-thread.goes-in', values: { joint: 'clutch/pinion-thread', when: 'while the machine is driven' } }]);
  });

  test('two of these at once tighten again', () => {
    expect(pinion(clutchStack('M12x1 LH', 'goes-in: up, ')).driven).toBe('tightens');
  });

  test('the thread in the pinion instead of the bell: the other part lags, and is the threaded one', () => {
    // Seat and held part change places: the bell is screwed into the pinion and pushes ahead: spin up against goes-in down.
    expect(pinion(clutchStack().replace('in: bell, holds: pinion', 'in: pinion, holds: bell')).driven).toBe('loosens');
  });

  test('without goes-in the sense is unknown, and the entry is named', () => {
    const { threads, findings } = solved(clutchStack('M12x1', ''));
    expect(threads[0]).toMatchObject({ driven: 'unknown', missing: ['modules.clutch.joints.pinion-thread.goes-in'] });
    expect(findings).toMatchObject([{ code: 'thread/sense-unknown' }]);
  });

  test('without the sense of the engine it is unknown, and the entry is named', () => {
    const { threads, findings } = solved(clutchStack().replace(', turns: counter-clockwise from above', ''));
    expect(threads[0]).toMatchObject({ driven: 'unknown', missing: ['power.engine.turns'] });
    expect(findings.map((finding) => finding.code)).toEqual(['thread/sense-unknown']);
  });

  test('a pin beside the thread takes the torque', () => {
    expect(pinion(clutchStack().replace('    joints:\n', '    joints:\n      pin: {kind: pin, in: bell, holds: pinion}\n')).driven).toBe('no torque');
  });

  test('a thread across the shaft is neither tightened nor loosened', () => {
    const thread = pinion(clutchStack('M12x1', 'goes-in: left, '));
    expect(thread).toMatchObject({ driven: 'no torque', braking: 'no torque' });
    expect(thread.reason).toContain('across the axis');
  });
});

test('a nut that closes a stack carries no drive torque', () => {
  const { threads, findings } = solved(clutchStack().replace('{kind: nut, thread: M8x0.75, on: pinion,', '{kind: nut, thread: M8x0.75, on: pinion, goes-in: up,'));
  expect(threads.find((thread) => thread.joint === 'clutch/nut')).toMatchObject({ driven: 'no torque', braking: 'no torque', starting: 'no torque' });
  expect(findings).toEqual([]);
});

describe('a starter that is screwed onto the crank', () => {
  // The starter shaft drives the crank through a one-way clutch that sits on the hub; the hub is screwed down on the crank.
  const starting = (goesIn: string): string => clutchStack()
    .replace('shafts: {', 'shafts: {starter: {axis: up, part: clutch/rod}, ')
    .replace('crank: {axis: up}', 'crank: {axis: up, part: clutch/crank}')
    .replace('drive:\n', 'drive:\n  start: {kind: one-way, driver: {on: starter}, driven: {on: crank, part: clutch/hub}}\n')
    .replace('    parts:\n', '    parts:\n      rod: {material: steel}\n      crank: {material: steel}\n      hub: {material: steel}\n')
    .replace('    joints:\n', `    joints:\n      hub-thread: {kind: threaded-end, thread: M6, in: crank, holds: hub, goes-in: ${goesIn}}\n`);

  // By hand: the hub is turned in the engine's sense, spin up, and drives the crank: it pushes ahead, spin up.
  // A right-hand thread that goes in up is turned with spin up: it tightens; one that goes in down loosens.
  test.each([['up', 'tightens'], ['down', 'loosens']])('goes in %s: starting %s it', (goesIn, tendency) => {
    const thread = solved(starting(goesIn)).threads.find((each) => each.joint === 'clutch/hub-thread')!;
    expect(thread).toMatchObject({ shaft: 'crank', driven: 'no torque', starting: tendency });
  });

  test('one that starting loosens is found, with when', () => {
    expect(solved(starting('down')).findings).toMatchObject([{ code: 'thread/loosens', values: { when: 'while the engine is started' } }]);
    expect(solved(starting('up')).findings).toEqual([]);
  });
});

test('the hand of a thread stands behind its size', () => {
  expect(['M6', 'M6 LH', 'M6x0.75-LH', 'M6 left', undefined].map(handOf)).toEqual(['right', 'left', 'left', 'left', 'right']);
});
