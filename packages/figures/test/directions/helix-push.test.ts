import { describe, expect, test } from 'vitest';
import { helixPush, solveDrive } from '@rotorwright/figures';
import { clutchStack, onePair } from '../machines.ts';
import { read } from '../read.ts';

const solved = (text: string) => {
  const machine = read(text);
  return helixPush(machine, solveDrive(machine));
};
const helical = (kind: string, hand: string): string => onePair(`kind: ${kind}, module: 1 mm, helix: 15 ° ${hand}, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}`);

// By hand: a right-hand tooth leans with the rotation as it rises. The mate resists, so the force on the driving tooth is
// square to it, against the motion and upwards: along the spin vector of a driving right-hand gear.
describe('helical gears; the driver turns with spin up', () => {
  test.each([
    ['external', 'right', 'pushes up', 'pushes down'],
    ['external', 'left', 'pushes down', 'pushes up'],
    ['internal', 'right', 'pushes up', 'pushes down'],
    ['internal', 'left', 'pushes down', 'pushes up'],
  ])('%s, driver %s-hand: driver %s, driven %s', (kind, hand, driver, driven) => {
    expect(solved(helical(kind, hand)).pushes.map((push) => push.words)).toEqual([driver, driven]);
  });

  // The hand that is written is that of the coupling's driver a; here power comes from b. An external mate of a right-hand
  // gear is left-hand: b, spin up, is pushed against its spin. A ring has the hand of its pinion: b is pushed along it.
  test.each([
    ['external', 'pushes up', 'pushes down'],
    ['internal', 'pushes down', 'pushes up'],
  ])('%s, right-hand, with the power passing backwards: a %s, b %s', (kind, a, b) => {
    expect(solved(helical(kind, 'right').replace('engine: {on: a', 'engine: {on: b')).pushes.map((push) => push.words)).toEqual([a, b]);
  });

  test('law: the two pushes of a pair are opposite', () => {
    const [driver, driven] = solved(helical('external', 'right')).pushes;
    driver!.towards!.forEach((each, index) => expect(each + driven!.towards![index]!).toBeCloseTo(0));
  });

  test('a straight gear does not push, and is not listed', () => {
    expect(solved(onePair('kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}')).pushes).toEqual([]);
  });

  test('without the sense of the engine the push is unknown, and the entry named', () => {
    expect(solved(helical('external', 'right').replace(', turns: counter-clockwise from above', '')).pushes[0]).toMatchObject({ words: 'push unknown', missing: ['power.engine.turns'] });
  });
});

test('straight bevels push away from the crossing point, whichever way they turn', () => {
  const text = onePair('kind: bevel, driver: {on: a, teeth: 20, lies: down}, driven: {on: b, teeth: 20, lies: aft}', ['up', 'aft']);
  expect(solved(text).pushes.map((push) => push.words)).toEqual(['pushes down', 'pushes aft']);
  expect(solved(text.replace(', turns: counter-clockwise from above', '')).pushes.map((push) => push.words)).toEqual(['pushes down', 'pushes aft']);
});

// By hand: spin up, left-hand driver: the pinion is pushed down. Its nut, above the upper bearing, presses that bearing
// down onto the shoulder of the mount: the upper bearing takes it. The lower one lies between a shoulder of the pinion
// below, which moves away from it, and the mount.
describe('the bearing that takes the push of the pinion', () => {
  const push = (text: string) => solved(text).pushes.find((each) => each.shaft === 'bell')!;

  test('is the upper one for a push down', () => {
    expect(push(clutchStack())).toMatchObject({ words: 'pushes down', stack: 'clutch/main', bearings: ['clutch/high'] });
  });

  test('is the lower one for a push up', () => {
    expect(push(clutchStack().replace('12 ° left', '12 ° right'))).toMatchObject({ words: 'pushes up', bearings: ['clutch/low'] });
  });

  test('with the stack written from its other end it is the same one', () => {
    const turned = clutchStack().replace('ends: [down, up]', 'ends: [up, down]').replace('order: [{shoulder: pinion}, low, {shoulder: mount}, high, nut]', 'order: [nut, high, {shoulder: mount}, low, {shoulder: pinion}]');
    expect(push(turned).bearings).toEqual(['clutch/high']);
  });

  test('without the nut nothing takes it, and that is found', () => {
    const { pushes, findings } = solved(clutchStack().replace('high, nut]', 'high]'));
    expect(pushes.find((each) => each.shaft === 'bell')!.bearings).toEqual([]);
    expect(findings).toMatchObject([{ code: 'stack/no-load-path', path: 'modules.clutch.stacks.main.loads', values: { stack: 'clutch/main', towards: 'down' } }]);
  });

  test('with a loose spacer whose side is not said the answer waits for it', () => {
    const text = clutchStack().replace('    parts:\n', '    parts:\n      spacer: {kind: washer}\n').replace('high, nut]', 'high, spacer]');
    expect(solved(text).findings).toMatchObject([{ code: 'stack/side-unknown', values: { part: 'clutch/spacer' } }]);
  });

  test('a spacer that turns with the pinion stands for the nut', () => {
    const text = clutchStack().replace('    parts:\n', '    parts:\n      spacer: {kind: washer, turns-with: pinion}\n').replace('high, nut]', 'high, spacer]');
    expect(solved(text)).toMatchObject({ findings: [] });
    expect(push(text).bearings).toEqual(['clutch/high']);
  });

  test('a stack that is not tied to either gear says so', () => {
    const text = clutchStack().replace('driver: {on: bell, teeth: 17, part: clutch/pinion}', 'driver: {on: bell, teeth: 17}').replace('driven: {on: bell, part: clutch/bell}', 'driven: {on: bell}');
    expect(solved(text).findings.map((finding) => finding.code)).toEqual(['stack/side-unknown']);
  });

  test('a push across the ends of its stack is found', () => {
    expect(solved(clutchStack().replace('ends: [down, up]', 'ends: [fore, aft]')).findings).toMatchObject([{ code: 'load/end' }]);
  });
});
