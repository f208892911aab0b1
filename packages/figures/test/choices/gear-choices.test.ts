import { describe, expect, test } from 'vitest';
import { choicesFor, exclusionText, figures, gearChoices } from '@rotorwright/figures';
import { read } from '../read.ts';
import { onePair, wholeDrive } from '../machines.ts';

const rpm = (value: number): number => (value * Math.PI) / 30;
const withTail = wholeDrive.replace('{on: mast, teeth: 54, lies: down}', '{on: mast, teeth: 54, lies: down, choices: [{teeth: 50, code: T-50, price: 12.00 EUR}, 54]}');
const machine = read(withTail);

describe('every combination of what can be bought', () => {
  const all = gearChoices(machine);

  test('is there once: three pinions by two tail gears', () => {
    expect(all.count).toBe(6);
    expect(new Set(all.options.map((option) => JSON.stringify(option.teeth))).size).toBe(6);
    expect(all.options.map((option) => option.rank)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  test('has the speeds that the figures have with those gears', () => {
    for (const option of all.options) {
      const set = figures(machine, { teeth: option.teeth });
      expect(option.mainSpeed).toBeCloseTo(set.get('speed mast')!.value!, 9);
      expect(option.tailSpeed).toBeCloseTo(set.get('speed tail-rotor')!.value!, 9);
      expect(option.ratio).toBe(set.get('ratio mast')!.exact);
      expect(option.tailRatio).toBe(set.get('turns tail-rotor')!.exact);
    }
  });

  test('says what must be bought, with code and price', () => {
    const option = all.options.find((each) => each.teeth['drive.front.driver.teeth'] === 50 && each.teeth['drive.main.driver.teeth'] === 17)!;
    expect(option.changes).toEqual([{ coupling: 'front', side: 'driver', path: 'drive.front.driver.teeth', fitted: 54, teeth: 50, code: 'T-50', price: '12.00 EUR' }]);
  });

  test('without bands: what is fitted comes first', () => {
    expect(all.options[0]!.changes).toEqual([]);
    expect(all.excluded).toBe(0);
  });

  // By hand: a = m(z1 + z2)/2: 76.5 mm with 17 and 136 teeth of module 1, half a millimetre more for each tooth.
  test('says how the centre distance moves', () => {
    const moves = Object.fromEntries(all.options.map((option) => [option.teeth['drive.main.driver.teeth'], option.centres[0]!]));
    expect(moves[17]!.centre).toBeCloseTo(0.0765, 12);
    expect([17, 18, 19].map((teeth) => moves[teeth]!.move)).toEqual([0, 0.0005, 0.001].map((move) => expect.closeTo(move, 12)));
    expect(moves[18]!.fits).toBeUndefined();
    expect(moves[18]!.missing).toEqual(['drive.main.centre']);
  });
});

describe('bands, limits and slots', () => {
  // By hand: 14,000 rpm over 136 gives 1,750, 1,852.9 and 1,955.9 rpm with 17, 18 and 19 teeth.
  const bands = { main: { min: rpm(1800), max: rpm(1900) } };

  test('a band is met by one pinion, and it comes first although it must be bought', () => {
    const { options, excluded } = gearChoices(machine, { bands });
    expect(options[0]!.teeth).toEqual({ 'drive.main.driver.teeth': 18, 'drive.front.driver.teeth': 54 });
    expect(options.slice(0, 2).map((option) => option.ruledOut)).toEqual([[], []]);
    expect(excluded).toBe(4);
    expect(options[2]!.ruledOut).toMatchObject([{ kind: 'band', of: 'speed mast', path: 'rotors.main.wanted' }]);
  });

  test('the wanted bands of the file are taken when none are given', () => {
    const wanted = read(withTail.replace('diameter: 1500 mm,', 'diameter: 1500 mm, wanted: 1800 to 1900 rpm,'));
    expect(gearChoices(wanted).options.map((option) => option.teeth)).toEqual(gearChoices(machine, { bands }).options.map((option) => option.teeth));
  });

  test('of two that fit the one with less to buy is better; of equal ones the one nearer the middle', () => {
    const both = gearChoices(machine, { bands: { main: { min: rpm(1700), max: rpm(2000) } } });
    expect(both.excluded).toBe(0);
    expect(both.options.map((option) => option.changes.length)).toEqual([0, 1, 1, 1, 2, 2]);
    // The middle is 1,850 rpm: with one thing to buy 18 teeth (1,852.9) come before 50 tail teeth (1,750) and 19 (1,955.9).
    expect(both.options[1]!.teeth['drive.main.driver.teeth']).toBe(18);
  });

  test('a limit of the file rules out, and says by which value', () => {
    const limited = read(`${withTail}\nlimits:\n  tail: {of: tip-speed tail, at-most: 120 m/s}\n  far: {of: runout mast, at-most: 1 mm}\n`);
    const { options, excluded, notAssessed } = gearChoices(limited);
    // By hand: R = 0.13 m; with 54/11 the tail turns at 4.909 times 1,750, 1,852.9, 1,955.9 rpm: 117.0, 123.8, 130.7 m/s;
    // with 50/11 at 108.3, 114.7, 121.0 m/s.
    expect(excluded).toBe(3);
    const out = options.find((option) => option.teeth['drive.main.driver.teeth'] === 18 && option.teeth['drive.front.driver.teeth'] === 54)!;
    expect(out.ruledOut[0]!.value).toBeCloseTo(123.8, 1);
    expect(exclusionText(out.ruledOut[0]!)).toBe('tip-speed tail is 123.83 m/s; allowed is at most 120 m/s.');
    expect(notAssessed).toEqual(['runout mast']);
  });

  test('a slot rules out what it does not reach', () => {
    const slotted = read(withTail.replace('module: 1 mm,', 'module: 1 mm, centre: 76.2 to 77.1 mm,'));
    const { options } = gearChoices(slotted);
    const fits = Object.fromEntries(options.map((option) => [option.teeth['drive.main.driver.teeth'], option.centres[0]!.fits]));
    expect(fits).toEqual({ 17: true, 18: true, 19: false });
    const out = options.find((option) => option.teeth['drive.main.driver.teeth'] === 19)!;
    expect(exclusionText(out.ruledOut[0]!)).toBe('main needs a centre distance of 77.5 mm; the frame allows 76.2 mm to 77.1 mm.');
  });

  test('a frame without a slot takes only what does not move', () => {
    const fixed = read(withTail.replace('module: 1 mm,', 'module: 1 mm, centre: 76.55 mm,'));
    const fits = Object.fromEntries(gearChoices(fixed).options.map((option) => [option.teeth['drive.main.driver.teeth'], option.centres[0]!.fits]));
    expect(fits).toEqual({ 17: true, 18: false, 19: false });
  });
});

test('a second way to the same shaft rules out the counts that contradict it', () => {
  const looped = withTail.replace('  free-wheel:', '  second: {kind: external, driver: {on: bell, teeth: 18}, driven: {on: gear, teeth: 144}}\n  free-wheel:');
  const { options } = gearChoices(read(looped));
  // By hand: 18/144 = 17/136; no other pinion agrees.
  expect(new Set(options.filter((option) => option.ruledOut.length === 0).map((option) => option.teeth['drive.main.driver.teeth']))).toEqual(new Set([17]));
  expect(exclusionText(options.at(-1)!.ruledOut[0]!)).toContain('ask for different speeds');
});

test('a belt of fixed length: more teeth bring the shafts nearer', () => {
  const { options } = gearChoices(read(onePair('kind: belt, pitch: 3 mm, belt-teeth: 200, driver: {on: a, teeth: 20, choices: [20, 22]}, driven: {on: b, teeth: 20, choices: [20, 22]}')));
  // By hand: with equal pulleys L = 2C + z·p, so C = (200 − 20)·3/2 = 270 mm, and 267 mm with 22 and 22 teeth.
  const centre = (a: number, b: number) => options.find((option) => option.teeth['drive.mesh.driver.teeth'] === a && option.teeth['drive.mesh.driven.teeth'] === b)!.centres[0]!;
  expect(centre(20, 20).centre).toBeCloseTo(0.27, 12);
  expect(centre(22, 22).move).toBeCloseTo(-0.003, 12);
  expect(centre(20, 22).centre).toBeCloseTo(centre(22, 20).centre!, 12);
});

describe('which pinion gives me 1,850 rpm?', () => {
  const close = choicesFor(machine, 'main', rpm(1850));

  test('closest first, and only gears on the way to that rotor are changed', () => {
    expect(close.map((option) => option.teeth)).toEqual([18, 17, 19].map((teeth) => ({ 'drive.main.driver.teeth': teeth })));
    // By hand: 14,000 · 18/136 − 1,850 = 2.94 rpm.
    expect(close[0]!.off).toBeCloseTo(rpm((14_000 * 18) / 136 - 1850), 9);
    expect(close[0]!.changes.map((change) => change.teeth)).toEqual([18]);
  });

  test('for the tail the tail gears count as well', () => {
    expect(choicesFor(machine, 'tail', rpm(9000))).toHaveLength(6);
  });

  test('for no rotor of the machine there is no answer', () => {
    expect(choicesFor(machine, 'third', rpm(1850))).toEqual([]);
  });
});

test('a machine without choices has one combination: what is fitted', () => {
  expect(gearChoices(read(onePair('kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 60}')))).toMatchObject({ count: 1, excluded: 0, options: [{ teeth: {}, changes: [] }] });
});

test('more combinations than anybody reads are refused with their number', () => {
  const counts = Array.from({ length: 60 }, (_, index) => index + 10).join(', ');
  const wide = wholeDrive.replaceAll(/teeth: (\d+)/g, `teeth: $1, choices: [${counts}]`).replaceAll(/, choices: \[17, 18, 19\]/g, '');
  expect(gearChoices(read(wide))).toMatchObject({ options: [], tooMany: expect.any(Number) });
});
