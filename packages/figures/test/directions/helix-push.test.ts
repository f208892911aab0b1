import { describe, expect, test } from 'vitest';
import { helixPush, solveDrive } from '@rotorwright/figures';
import { onePair } from '../machines.ts';
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
    expect(solved(helical(kind, hand)).map((push) => push.words)).toEqual([driver, driven]);
  });

  // The hand that is written is that of the coupling's driver a; here power comes from b. An external mate of a right-hand
  // gear is left-hand: b, spin up, is pushed against its spin. A ring has the hand of its pinion: b is pushed along it.
  test.each([
    ['external', 'pushes up', 'pushes down'],
    ['internal', 'pushes down', 'pushes up'],
  ])('%s, right-hand, with the power passing backwards: a %s, b %s', (kind, a, b) => {
    expect(solved(helical(kind, 'right').replace('engine: {on: a', 'engine: {on: b')).map((push) => push.words)).toEqual([a, b]);
  });

  test('law: the two pushes of a pair are opposite', () => {
    const [driver, driven] = solved(helical('external', 'right'));
    driver!.towards!.forEach((each, index) => expect(each + driven!.towards![index]!).toBeCloseTo(0));
  });

  test('a straight gear does not push, and is not listed', () => {
    expect(solved(onePair('kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}'))).toEqual([]);
  });

  test('without the sense of the engine the push is unknown, and the entry named', () => {
    expect(solved(helical('external', 'right').replace(', turns: counter-clockwise from above', ''))[0]).toMatchObject({ words: 'push unknown', missing: ['power.engine.turns'] });
  });
});

test('straight bevels push away from the crossing point, whichever way they turn', () => {
  const text = onePair('kind: bevel, driver: {on: a, teeth: 20, lies: down}, driven: {on: b, teeth: 20, lies: aft}', ['up', 'aft']);
  expect(solved(text).map((push) => push.words)).toEqual(['pushes down', 'pushes aft']);
  expect(solved(text.replace(', turns: counter-clockwise from above', '')).map((push) => push.words)).toEqual(['pushes down', 'pushes aft']);
});
