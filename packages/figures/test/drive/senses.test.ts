import { describe, expect, test } from 'vitest';
import { solveDrive, turning } from '@rotorwright/figures';
import { onePair } from '../machines.ts';
import { read } from '../read.ts';

const solved = (text: string) => {
  const machine = read(text);
  const drive = solveDrive(machine);
  return { b: drive.states.get('driven')!.motions.get('b')!, findings: drive.findings, words: turning(machine, drive).at(-1)!.words };
};

describe('parallel gears, by hand: pitch circles roll on each other', () => {
  test('external gears turn opposite ways', () => {
    const { b, words } = solved(onePair('kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}'));
    expect([b.exact, b.sense, words]).toEqual(['1/3', -1, 'clockwise from above']);
  });

  test('a pinion inside a ring turns the ring the same way', () => {
    const { b, words } = solved(onePair('kind: internal, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}'));
    expect([b.exact, b.sense, words]).toEqual(['1/3', 1, 'counter-clockwise from above']);
  });

  test('an axis that points the other way changes the sign, not the words', () => {
    const { b, words } = solved(onePair('kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}', ['up', 'down']));
    expect([b.sense, words]).toEqual([1, 'clockwise from above']);
  });
});

describe('belts, by hand', () => {
  test('a flat belt keeps the sense', () => {
    expect(solved(onePair('kind: belt, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 50}')).b).toMatchObject({ exact: '2/5', sense: 1 });
  });

  test('a crossed belt turns it', () => {
    expect(solved(onePair('kind: belt, twist: 180 °, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 50}')).b.sense).toBe(-1);
  });

  // Spin +z, turned right-handed by 90° about aft (−x): z goes to y, left (−x × z = y). The pulley's spin is left.
  test('a quarter twist carries the spin vector round: top towards the nose', () => {
    const { b, words } = solved(onePair('kind: belt, runs: aft, twist: 90 °, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left']));
    expect([b.exact, b.sense, words]).toEqual(['5', 1, 'top towards the nose']);
  });

  test('the other quarter twist turns the pulley the other way', () => {
    const { words } = solved(onePair('kind: belt, runs: aft, twist: -90 °, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left']));
    expect(words).toBe('top towards the tail');
  });

  test('without its twist the sense is unknown and the speed is not', () => {
    const { b, findings, words } = solved(onePair('kind: belt, runs: aft, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left']));
    expect(b.exact).toBe('5');
    expect(b.sense).toBeUndefined();
    expect(findings.map((finding) => [finding.code, finding.path])).toEqual([['drive/twist', 'drive.mesh.twist']]);
    expect(words).toBe('sense unknown: drive.mesh.twist missing');
  });

  test('a twist that does not bring the pulleys into line is refused', () => {
    const { findings } = solved(onePair('kind: belt, runs: aft, twist: 30 °, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left']));
    expect(findings.map((finding) => [finding.code, finding.path])).toEqual([['drive/twist', 'drive.mesh.twist']]);
    expect(findings[0]!.values['reason']).toContain('30°');
  });
});

describe('bevels, by hand: both gears turn opposite ways about the directions in which they lie', () => {
  test.each([
    // Spin of a: up. Gear a lies up: turns along its side, so gear b turns against its own: it lies aft, spin fore.
    ['up', 'aft', 'clockwise from behind'],
    ['up', 'fore', 'counter-clockwise from behind'],
    ['down', 'aft', 'counter-clockwise from behind'],
    ['down', 'fore', 'clockwise from behind'],
  ])('driver %s, driven %s: %s', (driver, driven, expected) => {
    const { words } = solved(onePair(`kind: bevel, driver: {on: a, teeth: 20, lies: ${driver}}, driven: {on: b, teeth: 20, lies: ${driven}}`, ['up', 'aft']));
    expect(words).toBe(expected);
  });

  test('a gear that is said to lie off its axis is refused', () => {
    const { findings } = solved(onePair('kind: bevel, driver: {on: a, teeth: 20, lies: left}, driven: {on: b, teeth: 20, lies: aft}', ['up', 'aft']));
    expect(findings[0]).toMatchObject({ code: 'drive/side', path: 'drive.mesh.driver.lies' });
  });
});

describe('gears that cannot be', () => {
  test.each([
    ['a spur mesh between crossing axes', 'kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 20}', ['up', 'left'], 'drive.mesh'],
    ['a bevel between parallel axes', 'kind: bevel, driver: {on: a, teeth: 20, lies: up}, driven: {on: b, teeth: 20, lies: up}', ['up', 'up'], 'drive.mesh'],
    ['three teeth', 'kind: external, driver: {on: a, teeth: 3}, driven: {on: b, teeth: 20}', ['up', 'up'], 'drive.mesh.driver.teeth'],
    ['a ring as large as its pinion', 'kind: internal, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 20}', ['up', 'up'], 'drive.mesh'],
  ] as const)('%s', (_, body, axes, path) => {
    const { findings } = solved(onePair(body, axes));
    expect(findings.map((finding) => [finding.code, finding.path])).toEqual([['gear/impossible', path]]);
  });

  test('a rigid joint between crossing axes', () => {
    const { findings } = solved(onePair('kind: rigid, driver: {on: a}, driven: {on: b}', ['up', 'left']));
    expect(findings.map((finding) => finding.code)).toEqual(['drive/axis']);
  });
});

test('an engine that turns about a line across its shaft is refused', () => {
  const { findings } = solved(onePair('kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}').replace('from above', 'from behind'));
  expect(findings[0]).toMatchObject({ code: 'drive/axis', path: 'power.engine.turns' });
});
