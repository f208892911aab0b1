import { describe, expect, test } from 'vitest';
import { figures } from '@rotorwright/figures';
import { onePair, wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

const rpm = (value: number): number => (value * Math.PI) / 30;
const machine = read(wholeDrive);
const set = figures(machine);
const value = (name: string): number => set.get(name)!.value!;

describe('figures of the drive, by hand', () => {
  test('speeds: 14,000 rpm · 17/136 = 1,750 rpm; · 54/11 = 8,590.9 rpm', () => {
    expect(value('speed crank')).toBeCloseTo(rpm(14_000), 9);
    expect(value('speed mast')).toBeCloseTo(rpm(1750), 9);
    expect(value('speed tail-rotor')).toBeCloseTo(rpm((1750 * 54) / 11), 9);
    expect(set.get('speed mast')).toMatchObject({ exact: '1/8', unit: 'rad/s', shown: 'rpm', calculation: 'drive-ratio' });
  });

  test('ratios: 8 turns of the crank for one of the mast; the tail turns 54/11 for each', () => {
    expect(set.get('ratio mast')).toMatchObject({ value: 8, exact: '8' });
    expect(set.get('turns tail-rotor')).toMatchObject({ exact: '54/11' });
    expect(value('turns tail-rotor')).toBeCloseTo(54 / 11, 12);
    expect(set.get('turns crank')).toMatchObject({ value: 8, exact: '8' });
  });

  test('mesh frequency: 17 teeth · 14,000/60 turns a second', () => {
    expect(value('mesh-frequency main')).toBeCloseTo((17 * 14_000) / 60, 8);
  });

  test('hunting: 17 and 136 share 17, so the same teeth meet at every 8th turn of the pinion; 11 and 54 share nothing', () => {
    expect(value('hunting main')).toBe(8);
    expect(value('hunting front')).toBe(54);
  });

  test('blades pass 2 · 1,750/60 times a second', () => {
    expect(value('blade-passing main')).toBeCloseTo(3500 / 60, 10);
  });

  test('the sensor sees 2 magnets · 14,000/60 turns a second; the governor asks for 2 pulses and a ratio of 8', () => {
    expect(value('sensor-frequency governor')).toBeCloseTo(28_000 / 60, 9);
    expect(value('sensor-pulses governor')).toBe(2);
    expect(set.get('governor-ratio governor')).toMatchObject({ value: 8, exact: '8' });
  });

  test('belt: 60 teeth · 6,000/60 turns a second; a belt of 400 teeth comes round 15 times a second', () => {
    const belt = figures(read(onePair('kind: belt, belt-teeth: 400, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}')));
    expect(belt.get('belt-tooth-frequency mesh')!.value).toBeCloseTo(6000, 8);
    expect(belt.get('belt-frequency mesh')!.value).toBeCloseTo(15, 10);
  });
});

describe('figures of the rotor, by hand', () => {
  const omega = rpm(1750);

  test('tip speed Ω·R, and over the speed of sound of the standard atmosphere', () => {
    expect(value('tip-speed main')).toBeCloseTo(omega * 0.75, 10);
    // Published: ISO 2533:1975, speed of sound at sea level 340.294 m/s (from memory).
    expect(value('tip-mach main')).toBeCloseTo((omega * 0.75) / 340.294, 6);
  });

  test('on a warm day sound is faster: the Mach number falls with the root of the temperature', () => {
    const warm = figures(machine, { temperatureOffset: 20 });
    expect(warm.get('tip-mach main')!.value! / value('tip-mach main')).toBeCloseTo(Math.sqrt(288.15 / 308.15), 9);
  });

  test('the blade hangs on the bolt by m·(bolt radius + centre)·Ω²: 0.2 kg · 0.42 m', () => {
    expect(value('bolt-pull main')).toBeCloseTo(0.2 * 0.42 * omega ** 2, 8);
  });

  test('the thrust bearing carries the grip besides: 0.08 kg · 0.06 m', () => {
    expect(value('blade-pull main')).toBeCloseTo((0.2 * 0.42 + 0.08 * 0.06) * omega ** 2, 8);
  });

  // Linear mass from 0.1 to 0.75 m, L = 0.65 m, centre at x = 0.32/0.65 of it. With u from the bolt and s = u/L,
  // m'(s) = (m/L)(4 − 6x + (12x − 6)s): ∫u² dm = m·L²·((4 − 6x)/3 + (12x − 6)/4) = m·L²·(x − 1/6).
  // About the axis: ∫(a + u)² dm = m(a² + 2a·xL + L²(x − 1/6)).
  test('stored energy: ½·J·Ω² with mass spread linearly from bolt to tip', () => {
    const length = 0.65;
    const x = 0.32 / length;
    const blade = 0.2 * (0.1 ** 2 + 2 * 0.1 * 0.32 + length ** 2 * (x - 1 / 6));
    const inertia = 2 * (blade + 0.08 * 0.06 ** 2);
    expect(value('rotor-inertia main')).toBeCloseTo(inertia, 12);
    expect(value('stored-energy main')).toBeCloseTo((inertia * omega ** 2) / 2, 7);
    expect(set.get('rotor-inertia main')!.warnings).toEqual(['The hub is left out: the file has no hub-inertia.']);
  });

  test('law: pull and energy quadruple when the speed doubles', () => {
    const fast = figures(machine, { sourceSpeed: rpm(28_000) });
    for (const name of ['bolt-pull main', 'blade-pull main', 'stored-energy main']) expect(fast.get(name)!.value! / value(name)).toBeCloseTo(4, 10);
  });
});

describe('what cannot be known', () => {
  test('has no value, and names every entry that would make it known', () => {
    const pull = set.get('blade-pull tail')!;
    expect(pull.value).toBeUndefined();
    expect([...pull.missing].toSorted()).toEqual(['blade-centre', 'blade-mass', 'bolt-radius', 'grip-centre', 'grip-mass'].map((key) => `rotors.tail.${key}`));
  });

  test('waits for the engine speed in every figure that stands on it', () => {
    const without = figures(read(wholeDrive.replace(' speed: 14000 rpm,', '')));
    expect(without.get('tip-mach tail')!.missing).toEqual(['power.engine.speed']);
    expect(without.get('sensor-frequency governor')!.missing).toEqual(['power.engine.speed']);
    // Ratios do not.
    expect(without.get('governor-ratio governor')!.value).toBe(8);
  });

  test('without power every speed waits for it', () => {
    const without = figures(read(wholeDrive.replace(/^power:.*$/m, '')));
    expect(without.get('speed mast')!.missing).toEqual(['power']);
    expect(without.get('tip-speed main')!.missing).toEqual(['power']);
  });

  test('a tooth count that is missing is named by all that lies behind it', () => {
    const without = figures(read(wholeDrive.replace('{on: gear, teeth: 136}', '{on: gear}')));
    for (const name of ['speed mast', 'tip-speed main', 'mesh-frequency rear', 'turns crank']) expect(without.get(name)).toMatchObject({ missing: ['drive.main.driven.teeth'] });
    expect(without.get('mesh-frequency main')!.value).toBeCloseTo((17 * 14_000) / 60, 8);
  });

  test('no figure holds a number that is not finite', () => {
    for (const state of ['driven', 'clutch-open', 'autorotation'] as const) {
      for (const sourceSpeed of [0, 1e-300, 1e200, rpm(14_000)]) {
        for (const figure of figures(machine, { state, sourceSpeed }).all) expect(figure.value === undefined || Number.isFinite(figure.value), `${state} ${figure.name}`).toBe(true);
      }
    }
  });
});

describe('states', () => {
  test('with the clutch open the crank idles and the rest stands', () => {
    const open = figures(machine, { state: 'clutch-open' });
    expect(open.get('speed crank')!.value).toBeCloseTo(rpm(3500), 9);
    expect(open.get('speed mast')!.value).toBe(0);
    expect(open.get('blade-passing main')!.value).toBe(0);
  });

  test('autorotation starts at the driven rotor speed, or at the one that is asked for', () => {
    expect(figures(machine, { state: 'autorotation' }).get('speed mast')!.value).toBeCloseTo(rpm(1750), 9);
    const slow = figures(machine, { state: 'autorotation', rotorSpeed: rpm(1100) });
    expect(slow.get('speed tail-rotor')!.value).toBeCloseTo(rpm((1100 * 54) / 11), 9);
    expect(slow.get('speed bell')!.value).toBe(0);
  });
});

describe('other tooth counts', () => {
  test('change every figure behind them', () => {
    expect(figures(machine, { teeth: { 'drive.main.driver.teeth': 19 } }).get('speed mast')!.value! / value('speed mast')).toBeCloseTo(19 / 17, 12);
  });

  test('that cannot mesh are found and leave no number', () => {
    for (const teeth of [0, -5, 2.5, 3, Number.NaN, Number.POSITIVE_INFINITY]) {
      const tried = figures(machine, { teeth: { 'drive.main.driver.teeth': teeth } });
      expect(tried.findings.map((finding) => [finding.code, finding.path])).toEqual([['gear/impossible', 'drive.main.driver.teeth']]);
      expect(tried.get('speed mast')!.value).toBeUndefined();
    }
  });

  test('of an entry that is none are found and change nothing', () => {
    const tried = figures(machine, { teeth: { 'drive.maim.driver.teeth': 19 } });
    expect(tried.findings.map((finding) => finding.code)).toEqual(['ref/unknown']);
    expect(tried.get('speed mast')!.value).toBe(value('speed mast'));
  });
});

test('a limit that is not kept is found, with value and limit as read', () => {
  const limited = figures(read(`${wholeDrive}\nlimits:\n  bell: {of: speed bell, at-most: 13000 rpm, source: invented}\n  mast: {of: speed mast, at-most: 2000 rpm}\n`));
  expect(limited.findings).toMatchObject([{ code: 'limit/exceeded', path: 'limits.bell', values: { value: '14,000 rpm', limit: '13,000 rpm' } }]);
});

test('every figure has a name of its own, a title and a source', () => {
  expect(new Set(set.all.map((figure) => figure.name)).size).toBe(set.all.length);
  for (const figure of set.all) expect([figure.title, figure.source].every((words) => words.length > 2), figure.name).toBe(true);
});
