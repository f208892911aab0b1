import { describe, expect, test } from 'vitest';
import { oneWayFacing, senseWords, solveDrive, turning } from '@rotorwright/figures';
import { wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

// By hand: right-handed about a vector that points at the viewer is counter-clockwise for him.
// About left, the top of a wheel (up) moves along left × up = fore: y × z = x.
test.each([
  [[0, 0, 1], 'counter-clockwise from above'],
  [[0, 0, -1], 'clockwise from above'],
  [[1, 0, 0], 'clockwise from behind'],
  [[-1, 0, 0], 'counter-clockwise from behind'],
  [[0, 1, 0], 'top towards the nose'],
  [[0, -1, 0], 'top towards the tail'],
] as const)('spin %j is %s', (spin, words) => {
  expect(senseWords(spin)).toMatchObject({ words, leaning: false });
});

test('a leaning shaft is named by the nearest viewer, and said to lean', () => {
  const lean = Math.PI / 18;
  expect(senseWords([Math.sin(lean), 0, Math.cos(lean)])).toMatchObject({ words: 'counter-clockwise from above', leaning: true });
});

const whole = read(wholeDrive);

test('every shaft is told in words, in the order of the file', () => {
  expect(turning(whole, solveDrive(whole)).map((each) => each.words)).toEqual([
    'counter-clockwise from above', 'counter-clockwise from above', 'clockwise from above', 'clockwise from above', 'clockwise from behind', 'top towards the nose',
  ]);
  expect(turning(whole, solveDrive(whole), 'clutch-open').map((each) => each.words)).toEqual(['counter-clockwise from above', ...Array.from({ length: 5 }, () => 'stands')]);
});

describe('a one-way clutch', () => {
  const [facing] = oneWayFacing(whole, solveDrive(whole));

  test('locks in the sense in which its driver turns', () => {
    facing!.locks!.forEach((each, index) => expect(each).toBeCloseTo([0, 0, -1][index]!));
    expect(facing!.words).toBe('locks when the gear turns clockwise from above against the mast; lets the mast run on clockwise from above when the gear slows');
  });

  test('is proved by hand: with the driver held the driven side turns on freely, and not back', () => {
    expect(facing!.test).toBe('Hold the gear. Look from above. The mast must turn freely clockwise from above and lock counter-clockwise from above.');
  });

  test('whose sense is unknown says which entry is missing', () => {
    const blind = read(wholeDrive.replace(', turns: counter-clockwise from above', ''));
    expect(oneWayFacing(blind, solveDrive(blind))[0]).toMatchObject({ missing: ['power.engine.turns'] });
  });
});
